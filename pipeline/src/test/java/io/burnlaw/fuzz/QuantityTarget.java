package io.burnlaw.fuzz;

import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Quantity;
import io.burnlaw.quantity.Quantity.QuantityReading;
import java.nio.charset.StandardCharsets;

/** One cell: a number, a unit, an uncertainty. The first byte chooses the dimension. */
public final class QuantityTarget {

    private static final Dimension[] DIMENSIONS = Dimension.values();

    private QuantityTarget() {}

    /**
     * Reads the bytes.
     *
     * @param data any
     */
    public static void fuzzerTestOneInput(byte[] data) {
        if (data.length == 0) {
            return;
        }
        Dimension dimension = DIMENSIONS[(data[0] & 0xff) % DIMENSIONS.length];
        String text = new String(data, 1, data.length - 1, StandardCharsets.UTF_8);
        if (Quantity.read(text, dimension) instanceof QuantityReading.Read read) {
            Quantity quantity = read.quantity();
            boolean sound = Double.isFinite(quantity.unit().toSi(quantity.value()))
                    && quantity.unit().dimension() == dimension
                    && quantity.std().orElse(0) >= 0;
            if (!sound) {
                throw new IllegalStateException("read as " + quantity);
            }
        }
    }
}
