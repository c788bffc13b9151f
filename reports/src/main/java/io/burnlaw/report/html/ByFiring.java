package io.burnlaw.report.html;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Closure.ClosureRow;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Point;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;

/**
 * What a propellant holds of each of its firings.
 *
 * @param points      by the id of their firing, or their own
 * @param predictions by the id of the firing
 */
record ByFiring(Formulation formulation, Map<String, List<Point>> points, Map<String, ClosureRow> predictions) {

    /** By the id of the propellant. */
    static Map<String, ByFiring> of(Characterization document) {
        Map<String, ByFiring> propellants = new HashMap<>();
        document.formulations().forEach(each -> propellants.putIfAbsent(each.id(), of(each)));
        return propellants;
    }

    private static ByFiring of(Formulation formulation) {
        Map<String, List<Point>> points = new HashMap<>();
        for (Point point : formulation.points()) {
            Stream.of(point.id(), point.firing())
                    .filter(Objects::nonNull)
                    .distinct()
                    .forEach(id -> points.computeIfAbsent(id, none -> new ArrayList<>())
                            .add(point));
        }
        Map<String, ClosureRow> predictions = new HashMap<>();
        if (formulation.closure() != null) {
            formulation.closure().rows().forEach(row -> predictions.putIfAbsent(row.firing(), row));
        }
        return new ByFiring(formulation, points, predictions);
    }
}
