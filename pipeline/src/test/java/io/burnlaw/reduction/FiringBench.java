package io.burnlaw.reduction;

import io.burnlaw.ballistics.ForwardSimulation;
import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Ignition;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.ballistics.SimulatedFiring;
import io.burnlaw.ballistics.SimulationSettings;
import io.burnlaw.campaign.Campaign.ReductionSettings;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.grain.Bates;
import io.burnlaw.grain.Grain;
import io.burnlaw.grain.Tube;
import io.burnlaw.quantity.Measured;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.trace.Trace;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.function.DoubleUnaryOperator;

/**
 * Firings with a known truth: a motor is simulated, its record disturbed, and the log written with what calipers and
 * scale would have read.
 */
final class FiringBench {

    static final double AMBIENT = 98_600;
    static final double DENSITY = 1790;
    static final double CSTAR = 880;
    static final double RATIO = 1.135;

    private FiringBench() {}

    /** A motor to be fired, and what happens to its record; each change makes another case. */
    static final class Case {

        /** Grain as it burns. */
        private Grain burns;
        /** Grain as the log has it. */
        private final Grain measured;

        private final double throat;
        private double throatAfter;
        /** Around the new grain [m3]; the log does not state it. */
        private double freeVolume;
        /** Standard deviation over highest pressure [1]. */
        private double noise = 0.002;
        /** Between samples [s]. */
        private double interval = 1e-3;
        /** Empty for a usual igniter. */
        private Optional<Ignition> ignition = Optional.empty();

        private Case(Grain burns, Grain measured, double throat) {
            this.burns = burns;
            this.measured = measured;
            this.throat = throat;
            this.throatAfter = throat;
            this.freeVolume = Motor.freeVolume(measured, 0);
        }

        static Case of(Grain burns, Grain measured, double throat) {
            return new Case(burns, measured, throat);
        }

        static Case bates(int segments, double outer, double core, double length, double throat) {
            Bates grain = new Bates(segments, Measured.of(outer), Measured.of(core), Measured.of(length));
            return of(grain, grain, throat);
        }

        static Case tube(double outer, double core, double length, double throat) {
            Tube grain = new Tube(Measured.of(outer), Measured.of(core), Measured.of(length), 0);
            return of(grain, grain, throat);
        }

        private Case with(Consumer<Case> change) {
            Case other = new Case(burns, measured, throat);
            other.throatAfter = throatAfter;
            other.freeVolume = freeVolume;
            other.noise = noise;
            other.interval = interval;
            other.ignition = ignition;
            change.accept(other);
            return other;
        }

        Case offset(double core) {
            return with(other -> other.burns = measured instanceof Bates bates
                    ? bates.withCoreOffset(core)
                    : ((Tube) measured).withCoreOffset(core));
        }

        Case noise(double share) {
            return with(other -> other.noise = share);
        }

        Case eroding(double after) {
            return with(other -> other.throatAfter = after);
        }

        Case freeVolume(double volume) {
            return with(other -> other.freeVolume = volume);
        }

        Case each(double seconds) {
            return with(other -> other.interval = seconds);
        }

        Case ignited(Ignition by) {
            return with(other -> other.ignition = Optional.of(by));
        }

        Grain burns() {
            return burns;
        }

        double freeVolume() {
            return freeVolume;
        }
    }

    /**
     * A fired case.
     *
     * @param firing   row of the log
     * @param trace    record
     * @param measured grain of the log
     * @param truth    what the simulation did
     */
    record Fired(Firing firing, Trace trace, Grain measured, SimulatedFiring truth) {

        Reduction reduce(ReductionSettings settings) {
            return FiringReducer.reduce(
                    firing,
                    formulation(),
                    settings,
                    new Hardware(OptionalDouble.empty(), 1.5),
                    measured,
                    trace,
                    List.of());
        }

        Reduction.Reduced reduced(ReductionSettings.Method method) {
            ReductionSettings settings =
                    new ReductionSettings(method, ReductionSettings.BurnoutEvent.MEAN_WEB, 0.10, 0.10);
            return reduce(settings).match(r -> r, rejected -> {
                throw new AssertionError(rejected.findings());
            });
        }
    }

    static Formulation formulation() {
        return new Formulation(
                "p",
                "Invented",
                Optional.of(Measured.of(DENSITY, 10)),
                true,
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
    }

    static DoubleUnaryOperator law(double millimetresPerSecondAtOneMegapascal, double exponent) {
        return p -> millimetresPerSecondAtOneMegapascal * 1e-3 * StrictMath.pow(p / 1e6, exponent);
    }

    static Fired fire(Case that, DoubleUnaryOperator law, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Gas gas = new Gas(CSTAR, RATIO);
        Nozzle nozzle = new Nozzle(that.throat, that.throatAfter, OptionalDouble.empty());
        Motor motor = new Motor(that.burns, DENSITY, gas, nozzle, that.freeVolume, AMBIENT);
        SimulationSettings settings = SimulationSettings.of(that.ignition.orElse(Ignition.usual(motor)))
                .sampledEach(that.interval);
        SimulatedFiring truth = ForwardSimulation.run(motor, law, settings);
        double top = truth.maximumPressure() - AMBIENT;
        double end = truth.time(truth.size() - 1);
        int before = (int) (0.25 * end / that.interval) + 60;
        int after = (int) (0.3 * end / that.interval) + 60;
        int n = before + truth.size() + after;
        double[] time = new double[n];
        double[] pressure = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = (i - before) * that.interval + 3.7;
            int k = i - before;
            double p = k < 0 || k >= truth.size() ? AMBIENT : truth.pressure(k);
            pressure[i] = p + that.noise * top * random.nextGaussian();
        }
        double mass = that.burns.volume(0) * DENSITY;
        Firing firing = new Firing(
                "f",
                "p",
                Optional.of("traces/f.csv"),
                Optional.empty(),
                false,
                new GrainDescription("bates", 1, Map.of(), List.of(), Optional.empty()),
                Measured.of(that.throat),
                that.throatAfter == that.throat ? Optional.empty() : Optional.of(Measured.of(that.throatAfter)),
                Optional.empty(),
                Optional.of(Measured.of(mass)),
                Optional.empty(),
                OptionalDouble.of(294),
                AMBIENT,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                TraceSettings.unstated(),
                2);
        return new Fired(firing, Trace.of("f", time, Optional.of(pressure), Optional.empty()), that.measured, truth);
    }

    /**
     * Error of a firing's rate against the law at the point's own rate-averaged pressure.
     *
     * @param reduced  result
     * @param law      truth
     * @param exponent of the truth
     * @return relative [1]
     */
    static double error(Reduction.Reduced reduced, DoubleUnaryOperator law, double exponent) {
        RatePoint point = reduced.points().get(0);
        return point.rate() / law.applyAsDouble(point.pressures().powerMean(exponent)) - 1;
    }
}
