package io.burnlaw.reduction;

import io.burnlaw.ballistics.Fault;
import io.burnlaw.ballistics.ForwardSimulation;
import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Ignition;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.ballistics.RecordFaults;
import io.burnlaw.ballistics.Recorder;
import io.burnlaw.ballistics.SimulatedFiring;
import io.burnlaw.ballistics.SimulationSettings;
import io.burnlaw.ballistics.SimulationSettings.Disturbance;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.grain.Bates;
import io.burnlaw.grain.Grains;
import io.burnlaw.quantity.Measured;
import io.burnlaw.trace.Trace;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;

/**
 * A firing as the forward simulation gives it, with a quiet part before and after, sampled by a logger with a little
 * white noise; its log as calipers and a scale would have read it; and the means to fire the same motor again with
 * something wrong. All figures are invented: a sugar-like gas and random small motors.
 *
 * @param firing      the row of its log
 * @param formulation its propellant
 * @param grain       its geometry, as read
 * @param motor       as it was simulated
 * @param coefficient a of r = a·P^n [m/s at 1 MPa]
 * @param exponent    n [1]
 * @param recorder    its logger
 * @param noise       of the logger [Pa]
 * @param plain       what the motor did when nothing was wrong
 * @param seed        of its noise
 */
public record CleanFiring(
        Firing firing,
        Formulation formulation,
        Bates grain,
        Motor motor,
        double coefficient,
        double exponent,
        Recorder recorder,
        double noise,
        SimulatedFiring plain,
        long seed) {

    public static final double AMBIENT = 98.6e3;
    static final double EFFICIENCY = 0.92;
    static final Hardware NO_LIMIT = new Hardware(OptionalDouble.empty(), 1.5);

    /** Of one reading with calipers [m]. */
    private static final double CALIPER_STD = 0.02e-3;

    private static final double[] SAMPLE_RATES = {500, 1000, 2000, 5000};

    /** A random motor with a random propellant. */
    public static CleanFiring random(long seed) {
        return random(seed, seed);
    }

    /** A random motor; firings of one propellant seed share law, density and gas. */
    public static CleanFiring random(long seed, long propellantSeed) {
        SplittableRandom propellant = new SplittableRandom(propellantSeed ^ 0x9e3779b9L);
        double exponent = propellant.nextDouble(0.15, 0.55);
        double coefficient = propellant.nextDouble(3e-3, 7e-3);
        double density = propellant.nextDouble(1700, 1850);
        Gas gas = new Gas(propellant.nextDouble(850, 940), 1.135);
        SplittableRandom random = new SplittableRandom(seed);
        double target = random.nextDouble(1.2e6, 7e6);
        double outer = random.nextDouble(25e-3, 60e-3);
        double core = outer * random.nextDouble(0.28, 0.42);
        double length = (3 * outer + core) / 2 * random.nextDouble(0.9, 1.15);
        int segments = random.nextInt(1, 5);
        Bates grain = bates(description(segments, outer, core, length));
        double rateAtTarget = coefficient * Math.pow(target / 1e6, exponent);
        double area = grain.surface(0.4 * grain.web().value())
                * density
                * rateAtTarget
                * gas.characteristicVelocity()
                / target;
        double throat = Math.sqrt(4 / Math.PI * area);
        double exit = throat * Math.sqrt(random.nextDouble(3, 8));
        Motor motor = new Motor(
                grain,
                density,
                gas,
                new Nozzle(throat, throat, OptionalDouble.of(exit)),
                Motor.freeVolume(grain, Double.NaN),
                AMBIENT);
        Recorder recorder = new Recorder(
                SAMPLE_RATES[random.nextInt(SAMPLE_RATES.length)],
                random.nextDouble(0.2, 0.6),
                random.nextDouble(0.3, 1.2),
                Recorder.Sensors.PRESSURE_AND_THRUST);
        double share = random.nextDouble(0.0005, 0.004);
        SimulatedFiring plain =
                simulate(motor, coefficient, exponent, recorder, Ignition.usual(motor), Disturbance.none());
        double noise = share * (plain.maximumPressure() - AMBIENT);
        GrainDescription read = description(
                segments,
                outer + CALIPER_STD * random.nextGaussian(),
                core + CALIPER_STD * random.nextGaussian(),
                length + CALIPER_STD * random.nextGaussian());
        return new CleanFiring(
                row(read, motor, random),
                formulation(motor),
                bates(read),
                motor,
                coefficient,
                exponent,
                recorder,
                noise,
                plain,
                seed);
    }

    private static GrainDescription description(int segments, double outer, double core, double length) {
        return new GrainDescription(
                "bates",
                segments,
                Map.of(
                        "outer_diameter", Measured.of(outer, CALIPER_STD),
                        "core_diameter", Measured.of(core, CALIPER_STD),
                        "segment_length", Measured.of(length, CALIPER_STD)),
                List.of(),
                Optional.empty());
    }

    private static Bates bates(GrainDescription description) {
        return (Bates) Grains.of(description).orElseThrow();
    }

    private static SimulatedFiring simulate(
            Motor motor,
            double coefficient,
            double exponent,
            Recorder recorder,
            Ignition ignition,
            Disturbance disturbance) {
        return ForwardSimulation.run(
                motor,
                p -> coefficient * StrictMath.pow(p / 1e6, exponent),
                SimulationSettings.of(ignition).sampledEach(recorder.interval()).disturbedBy(disturbance));
    }

    /** The motor, or one like it, fired again. */
    SimulatedFiring again(Motor other, Ignition ignition, Disturbance disturbance) {
        return simulate(other, coefficient, exponent, recorder, ignition, disturbance);
    }

    private static Firing row(GrainDescription description, Motor motor, RandomGenerator random) {
        double mass = motor.density() * motor.grain().volume(0) * (1 + 0.002 * random.nextGaussian());
        return new Firing(
                "F1",
                "plain",
                Optional.of("traces/F1.csv"),
                Optional.empty(),
                false,
                description,
                Measured.of(motor.nozzle().throatDiameter() + CALIPER_STD * random.nextGaussian(), CALIPER_STD),
                Optional.empty(),
                motor.nozzle().exitDiameter().stream().mapToObj(Measured::of).findFirst(),
                Optional.of(Measured.of(mass, 0.002 * mass)),
                Optional.empty(),
                OptionalDouble.empty(),
                AMBIENT,
                Optional.of(Measured.of(motor.freeVolume() + motor.grain().volume(0))),
                Optional.empty(),
                Optional.empty(),
                TraceSettings.unstated(),
                2);
    }

    private static Formulation formulation(Motor motor) {
        return new Formulation(
                "plain",
                "Plain",
                Optional.of(Measured.of(motor.density(), 10)),
                true,
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(motor.gas().specificHeatRatio()),
                Optional.of(Measured.of(motor.gas().characteristicVelocity(), 15)));
    }

    /** Highest gauge pressure [Pa]. */
    double peak() {
        return plain.maximumPressure() - AMBIENT;
    }

    /** When the igniter is lit, on the record's axis [s]. */
    double ignition() {
        return recorder.quietBefore();
    }

    /** When the mean web is gone, on the record's axis [s]. */
    double burnout() {
        return recorder.quietBefore() + plain.meanBurnout();
    }

    /** Pressure without noise. */
    Trace noiseless(SimulatedFiring fired) {
        Trace both = recorder.record("F1", fired, AMBIENT);
        return Trace.of("F1", both.times(), Optional.of(both.pressures()), Optional.empty());
    }

    /** Pressure with the logger's noise. */
    Trace pressureTrace() {
        return noisy(noiseless(plain));
    }

    Trace noisy(Trace trace) {
        return with(RecordFaults.noise(noise), trace);
    }

    Trace with(Fault fault, Trace trace) {
        return fault.apply(trace, new SplittableRandom(seed ^ 0x0f0f0f0fL));
    }

    /** Thrust of a nozzle with losses, with noise of the same share. */
    Trace thrustTrace() {
        double[] thrust = recorder.record("F1", plain, AMBIENT).thrusts();
        double highest = 0;
        for (int i = 0; i < thrust.length; i++) {
            thrust[i] *= EFFICIENCY;
            highest = Math.max(highest, thrust[i]);
        }
        Trace trace =
                Trace.of("F1", recorder.record("F1", plain, AMBIENT).times(), Optional.empty(), Optional.of(thrust));
        return with(RecordFaults.noise(noise / peak() * highest), trace);
    }

    /** The law at a pressure [Pa, absolute]. */
    double rateAt(double pressureAbsolute) {
        return coefficient * StrictMath.pow(pressureAbsolute / 1e6, exponent);
    }
}
