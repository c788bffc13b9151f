package io.burnlaw.report.chart;

import static io.burnlaw.report.document.Unit.MM_PER_S;
import static io.burnlaw.report.document.Unit.MPA;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Point;
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
     * @return axes that hold them all
     */
    public static Scales of(Characterization document) {
        List<Double> pressures = new ArrayList<>();
        List<Double> rates = new ArrayList<>();
        for (Formulation formulation : document.formulations()) {
            for (Point point : formulation.points()) {
                pressures.add(MPA.value(point.pressure()));
                rates.add(MM_PER_S.value(point.rate()));
            }
        }
        return new Scales(Axis.logarithmic(PRESSURE_TITLE, pressures), Axis.logarithmic(RATE_TITLE, rates));
    }
}
