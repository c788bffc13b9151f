package io.burnlaw.simulation;

import io.burnlaw.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A strand in a closed vessel: the pressure rises with the length burned, and falls back as the gas cools.
 *
 * @param wireTimes when the wires at both ends of the timed length broke [s]; empty without wires
 * @param rate      mean over the timed length [m/s]
 * @param pressure  mean over it [Pa, absolute]
 */
record Vessel(Trace trace, List<Double> wireTimes, double rate, double pressure) {

    /** Burned before the first wire and behind the second one, as a share of the timed length. */
    private static final double LEAD = 0.15;

    /** In which the gas cools by e [s], and how much of the rise stays. */
    private static final double COOLING = 1.5;

    private static final double STAYS = 0.35;

    static Vessel of(Scenario scenario, Scenario.PlannedStrand strand) {
        Randomness random = Randomness.of(scenario.seed(), "strand " + strand.id());
        Scenario.Propellant propellant = strand.propellant();
        double factor = StrictMath.exp(propellant.rateScatter() * random.nextGaussian())
                * propellant.batchFactor()
                * TrueFiring.temperatureFactor(
                        scenario, propellant, strand.temperature().orElse(Double.NaN));
        double lead = strand.wires() ? LEAD * strand.length() : 0;
        double whole = strand.length() + 2 * lead;
        double step = scenario.logger().interval() / 10;
        double burned = 0;
        double time = 0;
        double first = 0;
        double integral = 0;
        double second = 0;
        double end = 0;
        List<Double> pressures = new ArrayList<>();
        for (long i = 0; end == 0 || time < end + COOLING; i++) {
            double pressure = end == 0
                    ? strand.pressure() + strand.rise() * burned / whole
                    : strand.pressure()
                            + strand.rise() * (STAYS + (1 - STAYS) * StrictMath.exp(-(time - end) / COOLING));
            if (i % 10 == 0) {
                pressures.add(pressure);
            }
            double before = burned;
            burned = Math.min(whole, burned + step * factor * propellant.law().applyAsDouble(pressure));
            time += step;
            if (before < lead + strand.length() && burned > lead) {
                integral += pressure * step;
            }
            first = first == 0 && burned > lead ? time : first;
            second = second == 0 && burned >= lead + strand.length() ? time : second;
            end = end == 0 && burned >= whole ? time : end;
        }
        double quiet = scenario.logger().quietBefore();
        return new Vessel(
                trace(scenario, strand, pressures),
                strand.wires() ? List.of(quiet + first, quiet + second) : List.of(),
                strand.length() / (second - first),
                integral / (second - first));
    }

    private static Trace trace(Scenario scenario, Scenario.PlannedStrand strand, List<Double> pressures) {
        double interval = scenario.logger().interval();
        int before = (int) Math.round(scenario.logger().quietBefore() / interval);
        double[] time = new double[before + pressures.size()];
        double[] pressure = new double[time.length];
        for (int i = 0; i < time.length; i++) {
            time[i] = i * interval;
            pressure[i] = i < before ? strand.pressure() : pressures.get(i - before);
        }
        return Trace.of(strand.id(), time, Optional.of(pressure), Optional.empty());
    }
}
