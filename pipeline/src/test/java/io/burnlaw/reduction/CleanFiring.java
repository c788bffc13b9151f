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
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.grain.Grain;
import io.burnlaw.grain.GrainBuilding;
import io.burnlaw.grain.Grains;
import io.burnlaw.quantity.Measured;
import io.burnlaw.trace.Trace;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/**
 * A firing as the forward simulation gives it, with a quiet part before and after, sampled by a logger with a little
 * white noise. All figures are invented: a sugar-like gas and a random small motor.
 *
 * @param firing      the row of its log
 * @param formulation its propellant
 * @param grain       its geometry
 * @param motor       as it was simulated
 * @param coefficient a of r = a·P^n [m/s at 1 MPa]
 * @param exponent    n [1]
 * @param time        [s]
 * @param pressure    [Pa, absolute]
 * @param thrust      [N]
 * @param ignition    when the igniter was lit [s]
 * @param burnout     when the mean web was gone [s]
 * @param peak        highest pressure [Pa, gauge]
 * @param rate        web over the time from ignition to burnout [m/s]
 */
record CleanFiring(
        Firing firing,
        Formulation formulation,
        Grain grain,
        Motor motor,
        double coefficient,
        double exponent,
        double[] time,
        double[] pressure,
        double[] thrust,
        double ignition,
        double burnout,
        double peak,
        double rate) {

    static final double AMBIENT = 98.6e3;
    static final Hardware NO_LIMIT = new Hardware(OptionalDouble.empty(), 1.5);

    /** What may be chosen of a firing; the rest is random. */
    record Choice(double samplesPerSecond, double noiseShare, double efficiency, Optional<Ignition> ignition) {
        static Choice usual(SplittableRandom random) {
            double[] rates = {500, 1000, 2000, 5000};
            return new Choice(
                    rates[random.nextInt(rates.length)], random.nextDouble(0.0005, 0.004), 0.92, Optional.empty());
        }
    }

    static CleanFiring random(long seed) {
        return random(seed, Choice.usual(new SplittableRandom(seed ^ 0x5eed)));
    }

    static CleanFiring random(long seed, Choice choice) {
        SplittableRandom random = new SplittableRandom(seed);
        double exponent = random.nextDouble(0.15, 0.55);
        double coefficient = random.nextDouble(3e-3, 7e-3);
        double target = random.nextDouble(1.2e6, 7e6);
        double outer = random.nextDouble(25e-3, 60e-3);
        double core = outer * random.nextDouble(0.28, 0.42);
        double length = (3 * outer + core) / 2 * random.nextDouble(0.9, 1.15);
        GrainDescription description = new GrainDescription(
                "bates",
                random.nextInt(1, 5),
                Map.of(
                        "outer_diameter", Measured.of(outer, 0.03e-3),
                        "core_diameter", Measured.of(core, 0.03e-3),
                        "segment_length", Measured.of(length, 0.03e-3)),
                List.of(),
                Optional.empty());
        Grain grain = ((GrainBuilding.Built) Grains.of(description)).grain();
        double density = random.nextDouble(1700, 1850);
        double cstar = random.nextDouble(850, 940);
        Gas gas = new Gas(cstar, 1.135);
        double rateAtTarget = coefficient * Math.pow(target / 1e6, exponent);
        double area = grain.surface(0.4 * grain.web().value()) * density * rateAtTarget * cstar / target;
        double throat = Math.sqrt(4 / Math.PI * area);
        double exit = throat * Math.sqrt(random.nextDouble(3, 8));
        Motor motor = new Motor(
                grain,
                density,
                gas,
                new Nozzle(throat, throat, OptionalDouble.of(exit)),
                Motor.freeVolume(grain, Double.NaN),
                AMBIENT);
        return fire(random, choice, description, motor, coefficient, exponent);
    }

    private static CleanFiring fire(
            SplittableRandom random,
            Choice choice,
            GrainDescription description,
            Motor motor,
            double coefficient,
            double exponent) {
        double step = 1 / choice.samplesPerSecond();
        SimulatedFiring simulated = ForwardSimulation.run(
                motor,
                p -> coefficient * Math.pow(p / 1e6, exponent),
                SimulationSettings.of(choice.ignition().orElse(Ignition.usual(motor)))
                        .sampledEach(step));
        double burn = simulated.time(simulated.size() - 1);
        int before = (int) (random.nextDouble(0.2, 0.6) / step);
        int after = (int) (random.nextDouble(0.3, 0.8) * Math.max(1, burn) / step);
        int n = before + simulated.size() + after;
        double[] time = new double[n];
        double[] pressure = new double[n];
        double[] thrust = new double[n];
        double peak = simulated.maximumPressure() - AMBIENT;
        double highest = java.util.Arrays.stream(simulated.thrusts()).max().orElseThrow();
        double start = random.nextDouble(0, 5);
        for (int i = 0; i < n; i++) {
            int at = i - before;
            boolean burning = at >= 0 && at < simulated.size();
            time[i] = start + i * step;
            pressure[i] =
                    (burning ? simulated.pressure(at) : AMBIENT) + choice.noiseShare() * peak * random.nextGaussian();
            thrust[i] = (burning ? choice.efficiency() * simulated.thrust(at) : 0)
                    + choice.noiseShare() * highest * random.nextGaussian();
        }
        Grain grain = motor.grain();
        double ignition = start + before * step;
        double burnTime = simulated.meanBurnout();
        double mass = motor.density() * grain.volume(0);
        Firing firing = new Firing(
                "F1",
                "plain",
                "traces/F1.csv",
                description,
                Measured.of(motor.nozzle().throatDiameter(), 0.02e-3),
                Optional.empty(),
                motor.nozzle().exitDiameter().stream().mapToObj(Measured::of).findFirst(),
                Optional.of(Measured.of(mass, 0.002 * mass)),
                OptionalDouble.empty(),
                AMBIENT,
                Optional.of(Measured.of(motor.freeVolume() + grain.volume(0))),
                Optional.empty(),
                Optional.empty(),
                TraceSettings.unstated(),
                2);
        Formulation formulation = new Formulation(
                "plain",
                "Plain",
                Optional.of(Measured.of(motor.density(), 10)),
                true,
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(motor.gas().specificHeatRatio()),
                Optional.of(Measured.of(motor.gas().characteristicVelocity(), 15)));
        return new CleanFiring(
                firing,
                formulation,
                grain,
                motor,
                coefficient,
                exponent,
                time,
                pressure,
                thrust,
                ignition,
                ignition + burnTime,
                peak,
                grain.web().value() / burnTime);
    }

    Trace pressureTrace() {
        return Trace.of("F1", time, Optional.of(pressure), Optional.empty());
    }

    Trace thrustTrace() {
        return Trace.of("F1", time, Optional.empty(), Optional.of(thrust));
    }

    /** The law at a pressure [Pa, absolute]. */
    double rateAt(double pressureAbsolute) {
        return coefficient * Math.pow(pressureAbsolute / 1e6, exponent);
    }
}
