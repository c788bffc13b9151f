package io.burnlaw.reduction;

import io.burnlaw.ballistics.BurningFaults;
import io.burnlaw.ballistics.Fault;
import io.burnlaw.ballistics.Ignition;
import io.burnlaw.ballistics.Ignitions;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.ballistics.RecordFaults;
import io.burnlaw.ballistics.SimulationSettings.Disturbance;
import io.burnlaw.campaign.Campaign.ReductionSettings;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.grain.Bates;
import io.burnlaw.trace.Trace;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;

/** Every fault that a finding is for, at three strengths, to be put into a clean simulated firing. */
final class FaultMatrix {

    private FaultMatrix() {}

    /** Makes the findings of a firing with the fault at a strength. */
    @FunctionalInterface
    interface Injection {
        List<Finding> into(CleanFiring clean, int strength, RandomGenerator random);
    }

    /**
     * A fault.
     *
     * @param code      which finding must tell it
     * @param what      how it was made
     * @param strengths three, weak to strong, in words
     * @param injection makes it
     */
    record InjectedFault(FindingCode code, String what, List<String> strengths, Injection injection) {
        List<Finding> inject(CleanFiring clean, int strength, RandomGenerator random) {
            return injection.into(clean, strength, random);
        }
    }

    static final List<InjectedFault> FAULTS = List.of(
            record(
                    FindingCode.ZERO_OFFSET,
                    "offset, of the peak",
                    List.of("1 %", "3 %", "10 %"),
                    (clean, k, random) ->
                            RecordFaults.zeroOffset(sign(random) * pick(k, 0.01, 0.03, 0.1) * clean.peak())),
            record(
                    FindingCode.BASELINE_DRIFT,
                    "drift over the record, of the peak",
                    List.of("1 %", "3 %", "8 %"),
                    (clean, k, random) -> RecordFaults.drift(sign(random) * pick(k, 0.01, 0.03, 0.08) * clean.peak())),
            new InjectedFault(
                    FindingCode.SATURATION,
                    "clipped at, of the peak",
                    List.of("98 %", "90 %", "75 %"),
                    (clean, k, random) -> findings(
                            clean,
                            clean.with(
                                    RecordFaults.clipping(
                                            CleanFiring.AMBIENT + pick(k, 0.98, 0.9, 0.75) * clean.peak()),
                                    clean.pressureTrace()))),
            record(
                    FindingCode.SPIKES,
                    "three single samples off, of the peak",
                    List.of("5 %", "20 %", "60 %"),
                    (clean, k, random) -> RecordFaults.spikes(3, pick(k, 0.05, 0.2, 0.6) * clean.peak())),
            record(
                    FindingCode.DROPPED_SAMPLES,
                    "samples lost",
                    List.of("0.2 %", "1 %", "4 %"),
                    (clean, k, random) -> RecordFaults.lostSamples(pick(k, 0.002, 0.01, 0.04))),
            record(
                    FindingCode.UNEVEN_SAMPLING,
                    "intervals off by up to",
                    List.of("10 %", "25 %", "45 %"),
                    (clean, k, random) -> RecordFaults.unevenSampling(pick(k, 0.1, 0.25, 0.45))),
            record(
                    FindingCode.REPEATED_TIMESTAMP,
                    "samples written twice",
                    List.of("1", "10", "60"),
                    (clean, k, random) -> RecordFaults.repeatedSamples((int) pick(k, 1, 10, 60))),
            record(
                    FindingCode.BACKWARD_TIME,
                    "clock set back in the burn, by",
                    List.of("10 ms", "100 ms", "1 s"),
                    (clean, k, random) -> RecordFaults.clockSetBack(
                            clean.ignition() + 0.5 * clean.plain().meanBurnout(), pick(k, 0.01, 0.1, 1))),
            record(
                    FindingCode.COARSE_SAMPLING,
                    "samples left in the burn",
                    List.of("about 90", "about 50", "about 20"),
                    (clean, k, random) -> RecordFaults.coarseSampling((int) Math.round(
                            clean.plain().meanBurnout() * clean.recorder().sampleRate() / pick(k, 85, 50, 20)))),
            record(
                    FindingCode.MAINS_HUM,
                    "50 Hz or 60 Hz, amplitude of the peak",
                    List.of("0.3 %", "1 %", "3 %"),
                    (clean, k, random) -> RecordFaults.hum(
                            pick(k, 0.003, 0.01, 0.03) * clean.peak(), random.nextBoolean() ? 50 : 60)),
            record(
                    FindingCode.EXCESS_NOISE,
                    "white noise, of the peak",
                    List.of("1 %", "2 %", "5 %"),
                    (clean, k, random) -> RecordFaults.noise(pick(k, 0.01, 0.02, 0.05) * clean.peak())),
            record(
                    FindingCode.TRUNCATED,
                    "record ends at, of the burn time",
                    List.of("97 %", "80 %", "40 %"),
                    (clean, k, random) -> RecordFaults.truncation(clean.ignition()
                            + pick(k, 0.97, 0.8, 0.4) * clean.plain().meanBurnout())),
            new InjectedFault(
                    FindingCode.NO_QUIET_PART,
                    "record begins after ignition, of the burn time",
                    List.of("0 %", "1 %", "5 %"),
                    (clean, k, random) -> {
                        double from = clean.ignition()
                                + pick(k, 0, 0.01, 0.05) * clean.plain().meanBurnout();
                        Trace trace = clean.pressureTrace();
                        int first = 0;
                        while (trace.time(first) < from) {
                            first++;
                        }
                        return findings(
                                clean,
                                Trace.of(
                                        "F1",
                                        Arrays.copyOfRange(trace.times(), first, trace.size()),
                                        Optional.of(Arrays.copyOfRange(trace.pressures(), first, trace.size())),
                                        Optional.empty()));
                    }),
            record(
                    FindingCode.NO_IGNITION,
                    "no burn, offset of the peak",
                    List.of("0 %", "1 %", "5 %"),
                    (clean, k, random) -> BurningFaults.noIgnition(CleanFiring.AMBIENT)
                            .then(RecordFaults.zeroOffset(pick(k, 0, 0.01, 0.05) * clean.peak()))),
            record(
                    FindingCode.HANG_FIRE,
                    "igniter's pulse of 15 % of the peak, then a wait of",
                    List.of("0.3 s", "0.8 s", "3 s"),
                    (clean, k, random) -> BurningFaults.longer(pick(k, 0.3, 0.8, 3), CleanFiring.AMBIENT)
                            .then(BurningFaults.hangFire(
                                    0.15 * clean.peak(), clean.ignition(), pick(k, 0.3, 0.8, 3), CleanFiring.AMBIENT))),
            new InjectedFault(
                    FindingCode.SMOULDER,
                    "a sixth of the surface burns first, for",
                    List.of("0.25 s", "0.6 s", "2 s"),
                    (clean, k, random) -> findings(
                            clean,
                            clean.noisy(clean.noiseless(clean.again(
                                    clean.motor(),
                                    Ignition.usual(clean.motor()).withDwell(pick(k, 0.25, 0.6, 2), 1.0 / 6),
                                    Disturbance.none()))))),
            new InjectedFault(
                    FindingCode.SLOW_BURNING,
                    "throat so wide that the peak is, gauge",
                    List.of("0.2 MPa", "0.12 MPa", "0.06 MPa"),
                    (clean, k, random) -> slow(clean, pick(k, 0.2e6, 0.12e6, 0.06e6))),
            record(
                    FindingCode.CHUFFING,
                    "pulses",
                    List.of("3 at 8 Hz", "6 at 4 Hz", "15 at 2 Hz"),
                    (clean, k, random) -> BurningFaults.longer(8, CleanFiring.AMBIENT)
                            .then(BurningFaults.chuffing(
                                    pick(k, 8, 4, 2),
                                    clean.ignition(),
                                    (int) pick(k, 3, 6, 15),
                                    0.4 * clean.peak(),
                                    CleanFiring.AMBIENT))),
            new InjectedFault(
                    FindingCode.PRESSURE_COLLAPSE,
                    "opening suddenly larger at half of the burn, times",
                    List.of("3", "8", "30"),
                    (clean, k, random) -> disturbed(
                            clean, Disturbance.burst(0.5 * clean.plain().meanBurnout(), pick(k, 3, 8, 30)))),
            new InjectedFault(
                    FindingCode.BLOCKAGE,
                    "60 ms in the middle of the burn, of the throat covered",
                    List.of("4 %", "12 %", "35 %"),
                    (clean, k, random) -> disturbed(
                            clean,
                            Disturbance.blockage(
                                    random.nextDouble(0.4, 0.6) * clean.plain().meanBurnout(),
                                    0.06,
                                    pick(k, 0.04, 0.12, 0.35)))),
            new InjectedFault(
                    FindingCode.UNEVEN_WEB,
                    "core off its axis by, of the web",
                    List.of("1 %", "3 %", "6 %"),
                    (clean, k, random) -> fired(
                            clean,
                            ofGrain(
                                    clean,
                                    ((Bates) clean.motor().grain())
                                            .withCoreOffset(pick(k, 0.01, 0.03, 0.06)
                                                    * clean.grain().web().value())),
                            Disturbance.none())),
            new InjectedFault(
                    FindingCode.THROAT_EROSION,
                    "throat grew and was not measured, area",
                    List.of("2 %", "5 %", "15 %"),
                    (clean, k, random) ->
                            fired(clean, eroding(clean, Math.sqrt(pick(k, 1.02, 1.05, 1.15))), Disturbance.none())),
            new InjectedFault(
                    FindingCode.THROAT_EROSION,
                    "deposit in the throat, not measured, area",
                    List.of("-2 %", "-5 %", "-15 %"),
                    (clean, k, random) ->
                            fired(clean, eroding(clean, Math.sqrt(pick(k, 0.98, 0.95, 0.85))), Disturbance.none())),
            new InjectedFault(
                    FindingCode.THROAT_EROSION,
                    "throat grew and was measured, area",
                    List.of("2 %", "8 %", "15 %"),
                    (clean, k, random) -> {
                        double growth = Math.sqrt(pick(k, 1.02, 1.08, 1.15));
                        Motor motor = eroding(clean, growth);
                        return findings(
                                clean,
                                FaultyRow.of(clean.firing())
                                        .throatAfter(
                                                clean.firing().throatDiameter().value() * growth)
                                        .row(),
                                CleanFiring.NO_LIMIT,
                                record(clean, motor, Disturbance.none()));
                    }),
            new InjectedFault(
                    FindingCode.EROSIVE_BURNING,
                    "first of the web burns faster, fading with a tenth of it, by",
                    List.of("5 %", "12 %", "40 %"),
                    (clean, k, random) -> fired(
                            clean,
                            clean.motor(),
                            Disturbance.erosiveStart(
                                    pick(k, 0.05, 0.12, 0.4),
                                    0.1 * clean.grain().web().value()))),
            new InjectedFault(
                    FindingCode.GRAIN_MASS,
                    "mass misread, of the right one",
                    List.of("93 %", "88 %", "50 %"),
                    (clean, k, random) -> misreadMass(clean, pick(k, 0.93, 0.88, 0.5))),
            new InjectedFault(
                    FindingCode.IMPLAUSIBLE_CSTAR,
                    "mass misread, of the right one",
                    List.of("93 %", "88 %", "50 %"),
                    (clean, k, random) -> misreadMass(clean, pick(k, 0.93, 0.88, 0.5))),
            new InjectedFault(
                    FindingCode.IMPLAUSIBLE_CSTAR,
                    "throat misread, diameter of the right one",
                    List.of("96 %", "90 %", "80 %"),
                    (clean, k, random) -> misread(
                            clean,
                            FaultyRow.of(clean.firing())
                                    .throat(clean.firing().throatDiameter().value() * pick(k, 0.96, 0.9, 0.8)))),
            new InjectedFault(
                    FindingCode.IMPLAUSIBLE_CSTAR,
                    "pressure read times",
                    List.of("1.1", "1.25", "14.5"),
                    (clean, k, random) -> findings(
                            clean,
                            clean.with(
                                    RecordFaults.gain(pick(k, 1.1, 1.25, 14.5), CleanFiring.AMBIENT),
                                    clean.pressureTrace()))),
            new InjectedFault(
                    FindingCode.IMPLAUSIBLE_BURN_TIME,
                    "time column read times",
                    List.of("0.02", "0.001", "1000"),
                    (clean, k, random) -> {
                        Trace trace = clean.pressureTrace();
                        double[] time = trace.times();
                        for (int i = 0; i < time.length; i++) {
                            time[i] *= pick(k, 0.02, 0.001, 1000);
                        }
                        return findings(clean, Trace.of("F1", time, Optional.of(trace.pressures()), Optional.empty()));
                    }),
            new InjectedFault(
                    FindingCode.THRUST_DERIVED,
                    "no pressure, thrust with noise, of its peak",
                    List.of("0.2 %", "1 %", "2 %"),
                    (clean, k, random) -> findings(
                            clean,
                            RecordFaults.noise(pick(k, 0.002, 0.01, 0.02) * highestThrust(clean))
                                    .apply(clean.thrustTrace(), random))),
            new InjectedFault(
                    FindingCode.ABOVE_CASE_LIMIT,
                    "limit of the case, of the peak",
                    List.of("98 %", "90 %", "60 %"),
                    (clean, k, random) -> findings(
                            clean,
                            clean.firing(),
                            new Hardware(OptionalDouble.of(pick(k, 0.98, 0.9, 0.6) * clean.peak()), 1.5),
                            clean.pressureTrace())));

    private static InjectedFault record(FindingCode code, String what, List<String> strengths, RecordFault fault) {
        // What the sensor adds comes last, except that a limit comes after the noise.
        return new InjectedFault(
                code,
                what,
                strengths,
                (clean, k, random) -> findings(
                        clean, clean.noisy(fault.of(clean, k, random).apply(clean.noiseless(clean.plain()), random))));
    }

    @FunctionalInterface
    private interface RecordFault {
        Fault of(CleanFiring clean, int strength, RandomGenerator random);
    }

    private static List<Finding> disturbed(CleanFiring clean, Disturbance disturbance) {
        return fired(clean, clean.motor(), disturbance);
    }

    private static List<Finding> fired(CleanFiring clean, Motor motor, Disturbance disturbance) {
        return findings(clean, record(clean, motor, disturbance));
    }

    private static Trace record(CleanFiring clean, Motor motor, Disturbance disturbance) {
        return clean.noisy(clean.noiseless(clean.again(motor, Ignition.usual(motor), disturbance)));
    }

    private static Motor ofGrain(CleanFiring clean, Bates grain) {
        Motor motor = clean.motor();
        return new Motor(
                grain, motor.density(), motor.gas(), motor.nozzle(), motor.freeVolume(), motor.ambientPressure());
    }

    private static Motor eroding(CleanFiring clean, double growth) {
        Nozzle nozzle = clean.motor().nozzle();
        return clean.motor().withNozzle(nozzle.withThroat(nozzle.throatDiameter(), nozzle.throatDiameter() * growth));
    }

    private static List<Finding> misreadMass(CleanFiring clean, double share) {
        double mass = clean.firing().propellantMass().orElseThrow().value();
        return misread(clean, FaultyRow.of(clean.firing()).mass(share * mass));
    }

    private static List<Finding> misread(CleanFiring clean, FaultyRow row) {
        return findings(clean, row.row(), CleanFiring.NO_LIMIT, clean.pressureTrace());
    }

    private static double highestThrust(CleanFiring clean) {
        return Arrays.stream(clean.thrustTrace().thrusts()).max().orElseThrow();
    }

    /** The same motor with a wider throat. */
    private static List<Finding> slow(CleanFiring clean, double gauge) {
        double absolute = gauge + CleanFiring.AMBIENT;
        double n = clean.exponent();
        double widening = Math.pow((clean.peak() + CleanFiring.AMBIENT) / absolute, (1 - n) / 2);
        double throat = clean.motor().nozzle().throatDiameter() * widening;
        Motor wide = clean.motor().withNozzle(new Nozzle(throat, throat, OptionalDouble.empty()));
        CleanFiring quiet = new CleanFiring(
                clean.firing(),
                clean.formulation(),
                clean.grain(),
                wide,
                clean.coefficient(),
                n,
                clean.recorder(),
                1e3,
                clean.plain(),
                clean.seed());
        Trace trace = quiet.noisy(quiet.noiseless(quiet.again(wide, Ignitions.instantaneous(), Disturbance.none())));
        return findings(quiet, FaultyRow.of(clean.firing()).throat(throat).row(), CleanFiring.NO_LIMIT, trace);
    }

    static List<Finding> findings(CleanFiring clean, Trace trace) {
        return findings(clean, clean.firing(), CleanFiring.NO_LIMIT, trace);
    }

    static List<Finding> findings(CleanFiring clean, Firing row, Hardware hardware, Trace trace) {
        return reduce(clean, row, hardware, trace).findings();
    }

    static Reduction reduce(CleanFiring clean, Firing row, Hardware hardware, Trace trace) {
        return FiringReducer.reduce(
                row, clean.formulation(), ReductionSettings.defaults(), hardware, clean.grain(), trace, List.of());
    }

    private static double pick(int strength, double... values) {
        return values[strength];
    }

    private static double sign(RandomGenerator random) {
        return random.nextBoolean() ? 1 : -1;
    }
}
