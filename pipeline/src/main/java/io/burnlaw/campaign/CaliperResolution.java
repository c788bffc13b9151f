package io.burnlaw.campaign;

import io.burnlaw.quantity.Measured;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * How finely the lengths of a log were read, where nobody stated it: lengths of one column that are all multiples of 0.1, 0.5
 * or 1 mm (or of 1/16 or 1/32 in) were read in such steps, and each has the standard uncertainty of its step over the root of
 * 12 (JCGM 100:2008, 4.3.7 and F.2.2.1). Finer steps are below what is usual for calipers and are left to that.
 */
final class CaliperResolution {

    /** Coarse to fine [m]. */
    private static final double[] STEPS = {1e-3, 25.4e-3 / 16, 25.4e-3 / 32, 0.5e-3, 0.1e-3};

    /** With fewer readings, multiples of a step are no wonder. */
    private static final int FEWEST = 4;

    /** What a decimal number leaves [1]. */
    private static final double ROUNDING = 1e-6;

    private CaliperResolution() {}

    /**
     * Gives the lengths of firings the uncertainty of their reading, where none is stated.
     *
     * @param firings rows of one log
     * @return the same, in their order
     */
    static List<Firing> of(List<Firing> firings) {
        Map<String, List<Measured>> columns = new TreeMap<>();
        for (Firing firing : firings) {
            lengths(firing)
                    .forEach((name, value) -> columns.computeIfAbsent(name, n -> new ArrayList<>())
                            .add(value));
        }
        Map<String, Double> std = new TreeMap<>();
        columns.forEach((name, values) -> step(values).ifPresent(step -> std.put(name, step / Math.sqrt(12))));
        return std.isEmpty()
                ? firings
                : firings.stream().map(each -> read(each, std)).toList();
    }

    private static Map<String, Measured> lengths(Firing firing) {
        Map<String, Measured> lengths = new TreeMap<>(firing.grain().dimensions());
        lengths.put("throat_diameter", firing.throatDiameter());
        firing.throatDiameterAfter().ifPresent(value -> lengths.put("throat_diameter_after", value));
        firing.exitDiameter().ifPresent(value -> lengths.put("exit_diameter", value));
        return lengths;
    }

    /** The coarsest step of which all are multiples; readings that are all alike may be a drill or a mould. */
    private static Optional<Double> step(List<Measured> values) {
        boolean unstated = values.stream().allMatch(value -> value.std().isEmpty());
        if (!unstated || values.stream().mapToDouble(Measured::value).distinct().count() < FEWEST) {
            return Optional.empty();
        }
        for (double step : STEPS) {
            if (values.stream().allMatch(value -> multiple(value.value(), step))) {
                return Optional.of(step);
            }
        }
        return Optional.empty();
    }

    private static boolean multiple(double value, double step) {
        double count = value / step;
        return Math.abs(count - Math.rint(count)) < ROUNDING * Math.max(1, count);
    }

    private static Firing read(Firing firing, Map<String, Double> std) {
        Function<Map.Entry<String, Measured>, Measured> with = length -> std.containsKey(length.getKey())
                ? Measured.of(length.getValue().value(), std.get(length.getKey()))
                : length.getValue();
        Map<String, Measured> dimensions = new TreeMap<>();
        firing.grain().dimensions().entrySet().forEach(each -> dimensions.put(each.getKey(), with.apply(each)));
        return firing.withLengths(
                firing.grain().withDimensions(dimensions),
                with.apply(Map.entry("throat_diameter", firing.throatDiameter())),
                firing.throatDiameterAfter().map(value -> with.apply(Map.entry("throat_diameter_after", value))),
                firing.exitDiameter().map(value -> with.apply(Map.entry("exit_diameter", value))));
    }
}
