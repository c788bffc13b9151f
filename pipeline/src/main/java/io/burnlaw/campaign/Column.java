package io.burnlaw.campaign;

import io.burnlaw.quantity.Dimension;
import java.util.Optional;

/**
 * A column that a table may have.
 *
 * @param name      without unit
 * @param dimension of its values; empty for text and bare numbers
 * @param required  whether the table is of no use without it
 */
record Column(String name, Optional<Dimension> dimension, boolean required) {

    static Column text(String name) {
        return new Column(name, Optional.empty(), false);
    }

    static Column of(String name, Dimension dimension) {
        return new Column(name, Optional.of(dimension), false);
    }

    Column needed() {
        return new Column(name, dimension, true);
    }

    /** As it should be written. */
    String heading() {
        return dimension
                .map(d -> name + " [" + d.usual().ucum().replace("Cel", "degC") + "]")
                .orElse(name);
    }
}
