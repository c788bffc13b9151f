package io.burnlaw.report.chart;

import static io.burnlaw.report.document.Unit.MM_PER_S;
import static io.burnlaw.report.document.Unit.MPA;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.document.Unit;
import java.util.ArrayList;
import java.util.List;

/**
 * The axes that all pictures of one document share, so that two propellants can be compared by eye.
 *
 * @param pressure absolute, MPa, logarithmic
 * @param rate mm/s, logarithmic
 */
public record Scales(Axis pressure, Axis rate) {

    static final String PRESSURE_TITLE = "absolute pressure, MPa";
    static final String RATE_TITLE = "burning rate, mm/s";

    /**
     * The axes of a document.
     *
     * @param document whose points are to be shown
     * @return axes that hold all points that a law rests on, with their bars; of the others those that lie so near that
     *     they do not squeeze the rest
     */
    public static Scales of(Characterization document) {
        List<Point> all = document.formulations().stream()
                .flatMap(formulation -> formulation.points().stream())
                .toList();
        List<Point> used = all.stream().filter(Point::used).toList();
        List<Point> shown = new ArrayList<>(used);
        if (used.isEmpty()) {
            shown.addAll(all);
        } else {
            Scales near = holding(used).wider();
            all.stream().filter(point -> !point.used() && near.hold(point)).forEach(shown::add);
        }
        return holding(shown);
    }

    /** Whether a point lies on the sheet. */
    boolean hold(Point point) {
        return pressure.holds(MPA.value(point.pressure())) && rate.holds(MM_PER_S.value(point.rate()));
    }

    /** Half as long again to each side. */
    private Scales wider() {
        return new Scales(wider(pressure), wider(rate));
    }

    private static Axis wider(Axis axis) {
        double more = Math.sqrt(axis.high() / axis.low());
        return new Axis(axis.title(), axis.low() / more, axis.high() * more, true);
    }

    private static Scales holding(List<Point> points) {
        List<Double> pressures = new ArrayList<>();
        List<Double> rates = new ArrayList<>();
        for (Point point : points) {
            for (int side = -1; side <= 1; side++) {
                pressures.add(end(MPA, point.pressure(), side));
                rates.add(end(MM_PER_S, point.rate(), side));
            }
        }
        return new Scales(Axis.logarithmic(PRESSURE_TITLE, pressures), Axis.logarithmic(RATE_TITLE, rates));
    }

    /** A bar longer than a factor of two says that nothing is known well enough where it is cut. */
    private static double end(Unit unit, Quantity quantity, int side) {
        double value = unit.value(quantity);
        return Math.max(value / 2, Math.min(value * 2, PointMarks.end(unit, quantity, side)));
    }
}
