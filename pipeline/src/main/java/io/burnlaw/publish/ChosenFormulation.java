package io.burnlaw.publish;

import io.burnlaw.report.document.Formulation;

/**
 * A formulation that takes part in a comparison.
 *
 * @param source      that it stands in
 * @param formulation as published
 * @param id          under which it is compared; ids of two documents may be the same
 */
record ChosenFormulation(PublishedSource source, Formulation formulation, String id) {

    ChosenFormulation called(String other) {
        return new ChosenFormulation(source, formulation, other);
    }
}
