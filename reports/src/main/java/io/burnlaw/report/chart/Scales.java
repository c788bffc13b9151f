package io.burnlaw.report.chart;

import static io.burnlaw.report.document.Unit.MM_PER_S;
import static io.burnlaw.report.document.Unit.MPA;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Formulation;
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
     * @return axes that hold them all with their bars, but for bars so long that they would squeeze the rest
     */
    public static Scales of(Characterization document) {
        List<Double> pressures = new ArrayList<>();
        List<Double> rates = new ArrayList<>();
        for (Formulation formulation : document.formulations()) {
            for (Point point : formulation.points()) {
                for (int side = -1; side <= 1; side++) {
                    pressures.add(end(MPA, point.pressure(), side));
                    rates.add(end(MM_PER_S, point.rate(), side));
                }
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
