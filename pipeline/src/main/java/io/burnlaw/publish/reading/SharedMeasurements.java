package io.burnlaw.publish.reading;

import io.burnlaw.campaign.Problem;
import io.burnlaw.publish.reading.FormulationChoice.ChosenFormulation;
import io.burnlaw.report.document.Characterization.Input;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Point;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Whether two formulations rest on the same measurements. Then a comparison means nothing: its tests take for granted
 * that what was measured on one tells nothing of the errors of the other.
 */
final class SharedMeasurements {

    private static final int SHOWN = 5;

    private SharedMeasurements() {}

    /** The problem, if any two of the formulations have a measurement in common. */
    static Optional<Problem> among(List<ChosenFormulation> formulations) {
        for (int second = 1; second < formulations.size(); second++) {
            for (int first = 0; first < second; first++) {
                Optional<Problem> found = between(formulations.get(first), formulations.get(second));
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    private static Optional<Problem> between(ChosenFormulation first, ChosenFormulation second) {
        Map<String, String> of = measurements(second);
        of.keySet().retainAll(measurements(first).keySet());
        List<String> shared = of.values().stream().distinct().toList();
        boolean sameLaw = second.formulation().points().isEmpty()
                && second.formulation().singleLaw() != null
                && second.formulation().singleLaw().equals(first.formulation().singleLaw());
        if (shared.isEmpty() && !sameLaw) {
            return Optional.empty();
        }
        return Optional.of(new Problem(
                second.source().file().path(),
                0,
                second.id(),
                "its measurements are those of " + first.id() + " in "
                        + first.source().file().path(),
                sameLaw
                        ? "the same law"
                        : shared.size() + " in common: "
                                + shared.stream().limit(SHOWN).collect(Collectors.joining(", "))
                                + (shared.size() > SHOWN ? ", …" : ""),
                "firings or points that only one of the two was fitted to",
                "name another document or another --candidate"));
    }

    /** What makes a measurement recognizable, to the id of its point: the record's checksum, or the numbers. */
    private static Map<String, String> measurements(ChosenFormulation chosen) {
        Map<String, String> checksums = chosen.source().document().inputs().stream()
                .collect(Collectors.toMap(Input::path, Input::sha256, (one, same) -> one));
        Map<String, String> records = chosen.source().document().firings().stream()
                .filter(firing -> firing.trace() != null && checksums.containsKey(firing.trace()))
                .collect(Collectors.toMap(Firing::id, firing -> checksums.get(firing.trace()), (one, same) -> one));
        Map<String, String> found = new LinkedHashMap<>();
        for (Point point : chosen.formulation().points()) {
            if (point.used()) {
                String firing = point.firing();
                if (firing != null && records.containsKey(firing)) {
                    found.put(records.get(firing), point.id());
                }
                found.put(point.id() + " " + point.pressure() + " " + point.rate(), point.id());
            }
        }
        return found;
    }
}
