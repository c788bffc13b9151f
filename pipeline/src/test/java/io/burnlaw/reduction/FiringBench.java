package io.burnlaw.reduction;

import io.burnlaw.ballistics.ForwardSimulation;
import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Ignition;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.ballistics.SimulatedFiring;
import io.burnlaw.ballistics.SimulationSettings;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.campaign.ReductionSettings;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.grain.Bates;
import io.burnlaw.grain.Grain;
import io.burnlaw.grain.Tube;
import io.burnlaw.quantity.Measured;
import io.burnlaw.trace.Trace;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
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

    /**
     * A motor to be fired and what happens to its record.
     *
     * @param burns       grain as it burns
     * @param measured    grain as the log has it
     * @param throat      before [m]
     * @param throatAfter after [m]
     * @param freeVolume  around the new grain [m3]
     * @param volumeKnown whether the log states the chamber's volume
     * @param noise       standard deviation over highest pressure [1]
     * @param hum         amplitude over highest pressure [1]
     * @param zero        offset [Pa]
     * @param interval    between samples [s]
     * @param ignition    how it begins; empty for a usual igniter
     */
    record Case(
            Grain burns,
            Grain measured,
            double throat,
            double throatAfter,
            double freeVolume,
            boolean volumeKnown,
            double noise,
            double hum,
            double zero,
            double interval,
            Optional<Ignition> ignition) {

        static Case bates(int segments, double outer, double core, double length, double throat) {
            Bates grain = new Bates(segments, Measured.of(outer), Measured.of(core), Measured.of(length));
            return of(grain, grain, throat);
        }

        static Case tube(double outer, double core, double length, double throat) {
            Tube grain = new Tube(Measured.of(outer), Measured.of(core), Measured.of(length), 0);
            return of(grain, grain, throat);
        }

        static Case of(Grain burns, Grain measured, double throat) {
            double free = Motor.freeVolume(measured, 0);
            return new Case(burns, measured, throat, throat, free, false, 0.002, 0, 0, 1e-3, Optional.empty());
        }

        Case offset(double core) {
            Grain other = measured instanceof Bates b ? b.withCoreOffset(core) : ((Tube) measured).withCoreOffset(core);
            return new Case(
                    other,
                    measured,
                    throat,
                    throatAfter,
                    freeVolume,
                    volumeKnown,
                    noise,
                    hum,
                    zero,
                    interval,
                    ignition);
        }

        Case noise(double other) {
            return new Case(
                    burns,
                    measured,
                    throat,
                    throatAfter,
                    freeVolume,
                    volumeKnown,
                    other,
                    hum,
                    zero,
                    interval,
                    ignition);
        }

        Case measured(Grain other) {
            return new Case(
                    burns, other, throat, throatAfter, freeVolume, volumeKnown, noise, hum, zero, interval, ignition);
        }

        Case hum(double other) {
            return new Case(
                    burns,
                    measured,
                    throat,
                    throatAfter,
                    freeVolume,
                    volumeKnown,
                    noise,
                    other,
                    zero,
                    interval,
                    ignition);
        }

        Case zero(double other) {
            return new Case(
                    burns,
                    measured,
                    throat,
                    throatAfter,
                    freeVolume,
                    volumeKnown,
                    noise,
                    hum,
                    other,
                    interval,
                    ignition);
        }

        Case eroding(double after) {
            return new Case(
                    burns, measured, throat, after, freeVolume, volumeKnown, noise, hum, zero, interval, ignition);
        }

        Case freeVolume(double other, boolean known) {
            return new Case(burns, measured, throat, throatAfter, other, known, noise, hum, zero, interval, ignition);
        }

        Case each(double other) {
            return new Case(
                    burns, measured, throat, throatAfter, freeVolume, volumeKnown, noise, hum, zero, other, ignition);
        }

        Case ignited(Ignition other) {
            return new Case(
                    burns,
                    measured,
                    throat,
                    throatAfter,
                    freeVolume,
                    volumeKnown,
                    noise,
                    hum,
                    zero,
                    interval,
                    Optional.of(other));
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
        double phase = random.nextDouble() * 2 * Math.PI;
        for (int i = 0; i < n; i++) {
            time[i] = (i - before) * that.interval + 3.7;
            int k = i - before;
            double p = k < 0 || k >= truth.size() ? AMBIENT : truth.pressure(k);
            pressure[i] = p
                    + that.zero
                    + that.noise * top * gaussian(random)
                    + that.hum * top * Math.sin(2 * Math.PI * 50 * time[i] + phase);
        }
        double mass = that.burns.volume(0) * DENSITY;
        Firing firing = new Firing(
                "f",
                "p",
                "traces/f.csv",
                new GrainDescription("bates", 1, Map.of(), List.of(), Optional.empty()),
                Measured.of(that.throat),
                that.throatAfter == that.throat ? Optional.empty() : Optional.of(Measured.of(that.throatAfter)),
                Optional.empty(),
                Optional.of(Measured.of(mass)),
                OptionalDouble.of(294),
                AMBIENT,
                that.volumeKnown ? Optional.of(Measured.of(that.freeVolume + that.burns.volume(0))) : Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                TraceSettings.unstated(),
                2);
        return new Fired(firing, Trace.of("f", time, Optional.of(pressure), Optional.empty()), that.measured, truth);
    }

    private static double gaussian(SplittableRandom random) {
        return Math.sqrt(-2 * StrictMath.log(1 - random.nextDouble()))
                * StrictMath.cos(2 * Math.PI * random.nextDouble());
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
