package io.burnlaw.planning;

import io.burnlaw.planning.PlannedThroat.Predicted;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/**
 * Predictions for the throats of a range. The rows are so close that linear interpolation in the logarithms is never
 * wrong by more than {@link #TOLERANCE}. Where a figure jumps, the rows on both sides are closer than {@link #CLOSEST}.
 * No row has an upper prediction of the peak above the allowed pressure.
 *
 * @param rows    from the smallest throat to the largest
 * @param remarks what else must be known of a part of the range
 * @param smaller why there is no smaller throat, a sentence
 * @param larger  why there is no larger one, a sentence
 */
public record ThroatTable(List<Row> rows, List<Remark> remarks, String smaller, String larger) {

    /** Of the interpolation, seen at the middle between two rows [1]; a tenth of what three digits show. */
    public static final double TOLERANCE = 5e-4;

    /** Rows are not closer than this, in ln of the diameter. */
    public static final double CLOSEST = 1e-4;

    /** Of the range before its rows are brought closer: a bend is not wider than such a step. */
    private static final int STEPS = 12;

    /**
     * A throat.
     *
     * @param diameter     [m]
     * @param meanPressure over the burn time [Pa, absolute]
     * @param maxPressure  over the whole burn [Pa, absolute]
     * @param burnTime     [s]
     */
    public record Row(double diameter, Predicted meanPressure, Predicted maxPressure, double burnTime) {}

    /**
     * Words on a part of the range.
     *
     * @param from first throat [m]
     * @param to   last throat [m]
     */
    public record Remark(double from, double to, String text) {}

    private static final List<ToDoubleFunction<Row>> FIGURES = List.of(
            Row::burnTime,
            row -> row.meanPressure().value(),
            row -> row.meanPressure().low(),
            row -> row.meanPressure().high(),
            row -> row.maxPressure().value(),
            row -> row.maxPressure().low(),
            row -> row.maxPressure().high());

    public ThroatTable {
        rows = List.copyOf(rows);
        remarks = List.copyOf(remarks);
    }

    private record Tried(Row row, Optional<String> remark) {}

    /**
     * Makes the table; it ends where the motor would not burn out.
     *
     * @param at       what a diameter [m] would do; empty where the motor would not burn out
     * @param smallest throat [m]
     * @param largest  throat [m], above it
     * @param smaller  why there is no smaller one, a sentence
     * @param larger   why there is no larger one, a sentence
     */
    static ThroatTable of(
            Function<Double, Optional<PlannedThroat>> at,
            double smallest,
            double largest,
            String smaller,
            String larger) {
        Function<Double, Optional<Tried>> tried = ln -> at.apply(StrictMath.exp(ln))
                .map(throat -> new Tried(
                        new Row(
                                throat.diameter(),
                                throat.meanPressure(),
                                throat.maxPressure(),
                                throat.burnTime().orElseThrow()),
                        throat.remark()));
        double from = StrictMath.log(smallest);
        double step = (StrictMath.log(largest) - from) / STEPS;
        List<Tried> all = new ArrayList<>();
        tried.apply(from).ifPresent(all::add);
        boolean out = false;
        for (int i = 1; i <= STEPS && !all.isEmpty() && !out; i++) {
            Optional<Tried> next = tried.apply(from + i * step);
            out = next.isEmpty();
            if (out) {
                next = lastThatBurns(tried, from + (i - 1) * step, from + i * step);
            }
            next.ifPresent(each -> between(tried, all, each));
        }
        return new ThroatTable(
                all.stream().map(Tried::row).toList(),
                remarks(all),
                smaller,
                out ? "With a larger throat this motor would not burn out within minutes; it would smoulder." : larger);
    }

    private static Optional<Tried> lastThatBurns(
            Function<Double, Optional<Tried>> tried, double burning, double smouldering) {
        double low = burning;
        double high = smouldering;
        while (high - low > CLOSEST) {
            double middle = (low + high) / 2;
            if (tried.apply(middle).isPresent()) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low > burning ? tried.apply(low) : Optional.empty();
    }

    /** Adds the rows between the last one and another, and that one. */
    private static void between(Function<Double, Optional<Tried>> tried, List<Tried> all, Tried to) {
        Tried from = all.get(all.size() - 1);
        double low = StrictMath.log(from.row().diameter());
        double high = StrictMath.log(to.row().diameter());
        if (high - low > CLOSEST) {
            Optional<Tried> middle = tried.apply((low + high) / 2);
            if (middle.isPresent() && !straight(from, middle.orElseThrow(), to)) {
                between(tried, all, middle.orElseThrow());
                between(tried, all, to);
                return;
            }
        }
        all.add(to);
    }

    private static boolean straight(Tried from, Tried middle, Tried to) {
        return from.remark().equals(middle.remark())
                && to.remark().equals(middle.remark())
                && FIGURES.stream().allMatch(figure -> {
                    double between = Math.sqrt(figure.applyAsDouble(from.row()) * figure.applyAsDouble(to.row()));
                    return Math.abs(figure.applyAsDouble(middle.row()) / between - 1) <= TOLERANCE;
                });
    }

    private static List<Remark> remarks(List<Tried> all) {
        List<Remark> remarks = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            int last = i;
            Optional<String> text = all.get(i).remark();
            while (last + 1 < all.size() && all.get(last + 1).remark().equals(text)) {
                last++;
            }
            if (text.isPresent()) {
                remarks.add(new Remark(
                        all.get(i).row().diameter(), all.get(last).row().diameter(), text.orElseThrow()));
            }
            i = last;
        }
        return remarks;
    }
}
