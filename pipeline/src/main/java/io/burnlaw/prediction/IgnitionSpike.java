package io.burnlaw.prediction;

import io.burnlaw.reduction.Reduction;
import io.burnlaw.reduction.point.InstantaneousRate;
import io.burnlaw.reduction.point.TraceHistory;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * How far the ignition peak is above the burn that follows, measured in the firings so far. The forward simulation has
 * only a usual igniter, but a case must stand the real one.
 *
 * <pre>
 *     F = ( highest P before the flame is everywhere - P there ) A_t      of one firing, none below 0      [N]
 *     P_peak = P_start + F / A_t                                          of the next                      [Pa]
 * </pre>
 *
 * <p>F is c* times what the igniter gives a second, which is the same through any throat. <b>Valid</b> for the igniter that
 * was fired; one that fills the chamber before the nozzle lets it out raises the pressure by the same amount through any
 * throat, and a smaller throat is then predicted too high.
 *
 * <p><b>Source.</b> Conservation of mass, lumped chamber; derived.
 *
 * @param mean of the next firing [N]
 * @param std  standard deviation of the next firing about it [N]
 */
public record IgnitionSpike(double mean, double std) {

    /** Nothing was measured. */
    public static final IgnitionSpike NONE = new IgnitionSpike(0, 0);

    /** Scatter from firing to firing, and for how many firings it counts; common practice, no source. */
    private static final double USUAL_SCATTER = 0.3;

    private static final int USUAL_COUNTS_FOR = 3;

    public IgnitionSpike {
        if (!(mean >= 0 && std >= 0)) {
            throw new IllegalArgumentException("spike of " + mean + " N, " + std + " N");
        }
    }

    /**
     * What a firing shows.
     *
     * @param firing reduced, with its record
     * @return [N]; empty where it was timed, or too little is left of its burn
     */
    public static OptionalDouble of(Reduction.Reduced firing) {
        if (firing.along().isEmpty() || firing.history().isEmpty()) {
            return OptionalDouble.empty();
        }
        InstantaneousRate settled = firing.along().samples().get(0);
        TraceHistory.Samples record = firing.history().orElseThrow().samples();
        double highest = settled.pressure();
        for (int i = 0; i < record.time().length && record.time()[i] < settled.time(); i++) {
            highest = record.time()[i] < firing.events().start() ? highest : Math.max(highest, record.pressure()[i]);
        }
        double throat = Math.PI / 4 * firing.throatBefore() * firing.throatBefore();
        return OptionalDouble.of((Math.min(highest, firing.maxPressure()) - settled.pressure()) * throat);
    }

    /**
     * What the next firing has to expect.
     *
     * @param firings spikes of those so far [N]
     * @return none where there are none
     */
    public static IgnitionSpike of(List<Double> firings) {
        int count = firings.size();
        if (count == 0) {
            return NONE;
        }
        double mean =
                Math.max(0, firings.stream().mapToDouble(each -> each).average().orElseThrow());
        double usual = USUAL_SCATTER * mean;
        double squares = USUAL_COUNTS_FOR * usual * usual;
        for (double each : firings) {
            squares += (each - mean) * (each - mean);
        }
        return new IgnitionSpike(
                mean, Math.sqrt(squares / Math.max(1, USUAL_COUNTS_FOR + count - 1) * (1 + 1.0 / count)));
    }

    /**
     * An end of the prediction.
     *
     * @param level of the interval, such as 0.95
     * @return its upper end [N]
     */
    public double high(double level) {
        return mean + quantile(level) * std;
    }

    /**
     * An end of the prediction.
     *
     * @param level of the interval, such as 0.95
     * @return its lower end, none below 0 [N]
     */
    public double low(double level) {
        return Math.max(0, mean - quantile(level) * std);
    }

    private static double quantile(double level) {
        return NormalDistribution.of(0, 1).inverseCumulativeProbability(0.5 + level / 2);
    }
}
