package io.burnlaw.simulation;

import io.burnlaw.ballistics.BurningFaults;
import io.burnlaw.ballistics.ForwardSimulation;
import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Ignition;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.ballistics.Recorder;
import io.burnlaw.ballistics.SimulatedFiring;
import io.burnlaw.ballistics.SimulationSettings;
import io.burnlaw.ballistics.SimulationSettings.Disturbance;
import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.grain.Bates;
import io.burnlaw.grain.Grain;
import io.burnlaw.grain.Grains;
import io.burnlaw.grain.Stack;
import io.burnlaw.grain.Tube;
import io.burnlaw.quantity.Measured;
import io.burnlaw.trace.Trace;
import java.util.Map;
import java.util.TreeMap;

/**
 * One firing as it truly was: the grain as cast, the motor, and what it did.
 *
 * @param description            the grain's true dimensions
 * @param coreOffset             of the core's axis [m]
 * @param rateFactor             of this firing against the law [1]
 * @param characteristicVelocity of this firing [m/s]
 * @param motor                  ready to be fired
 */
record TrueFiring(
        Scenario.PlannedFiring plan,
        GrainDescription description,
        Grain grain,
        double coreOffset,
        double rateFactor,
        double characteristicVelocity,
        Motor motor,
        SimulatedFiring fired) {

    static TrueFiring of(Scenario scenario, Scenario.PlannedFiring plan) {
        Randomness random = Randomness.of(scenario.seed(), "cast " + plan.id());
        GrainDescription description = cast(plan.grain(), scenario.instruments().casting(), random);
        double drawn = Math.sqrt(square(random.nextGaussian()) + square(random.nextGaussian()))
                * scenario.instruments().coreOffset();
        Grain even = Grains.of(description).orElseThrow();
        double offset =
                Math.min(plan.coreOffset().orElse(drawn), 0.5 * even.web().value());
        Grain grain = offset > 0 ? offCentre(even, offset) : even;
        Scenario.Propellant propellant = plan.propellant();
        double rateFactor = StrictMath.exp(propellant.rateScatter() * random.nextGaussian())
                * propellant.batchFactor()
                * temperatureFactor(scenario, propellant, plan.temperature().orElse(Double.NaN));
        double velocity = propellant.characteristicVelocity()
                * StrictMath.exp(propellant.velocityScatter() * random.nextGaussian());
        Motor motor = new Motor(
                grain,
                propellant.density(),
                new Gas(velocity, propellant.specificHeatRatio()),
                new Nozzle(plan.throat(), plan.throatAfter().orElse(plan.throat()), plan.exit()),
                Motor.freeVolume(grain, scenario.hardware().volume().orElse(Double.NaN)),
                scenario.ambientPressure());
        SimulatedFiring fired = ForwardSimulation.run(
                motor, p -> rateFactor * propellant.law().applyAsDouble(p), settings(scenario, plan, motor));
        return new TrueFiring(plan, description, grain, offset, rateFactor, velocity, motor, fired);
    }

    /** The rate against the law's because of the temperature; 1 where no temperature is known. */
    static double temperatureFactor(Scenario scenario, Scenario.Propellant propellant, double temperature) {
        double difference = temperature - scenario.referenceTemperature().orElse(Double.NaN);
        return Double.isNaN(difference) ? 1 : StrictMath.exp(propellant.temperatureSensitivity() * difference);
    }

    /** {@return the record of a perfect logger} */
    Trace record(Scenario scenario) {
        Scenario.Logger logger = scenario.logger();
        Recorder recorder = new Recorder(
                1 / interval(scenario, plan),
                logger.quietBefore(),
                logger.quietAfter(),
                plan.sensors().orElse(logger.sensors()));
        Trace trace = recorder.record(plan.id(), fired, scenario.ambientPressure());
        return plan.faults().containsKey(FaultKey.NO_IGNITION)
                ? BurningFaults.noIgnition(trace.hasPressure() ? scenario.ambientPressure() : 0)
                        .apply(trace, Randomness.of(scenario.seed(), "nothing"))
                : trace;
    }

    private static double interval(Scenario scenario, Scenario.PlannedFiring plan) {
        return plan.interval().orElse(scenario.logger().interval());
    }

    private static SimulationSettings settings(Scenario scenario, Scenario.PlannedFiring plan, Motor motor) {
        Map<FaultKey, Double> faults = plan.faults();
        Ignition usual = Ignition.usual(motor);
        double ofGas = 0.6 + 0.1 * Randomness.of(scenario.seed(), "igniter gas").nextGaussian();
        Ignition ignition = plan.starter()
                .map(starter -> new Ignition(ofGas * starter.mass(), starter.time(), starter.spread(), 0, 0))
                .orElse(new Ignition(
                        plan.igniter() * usual.igniterMass(), usual.igniterDuration(), usual.spreadTime(), 0, 0))
                .withDwell(faults.getOrDefault(FaultKey.DWELL, 0.0), faults.getOrDefault(FaultKey.DWELL_SHARE, 0.2));
        if (faults.containsKey(FaultKey.LATE_RISE)) {
            ignition = ignition.withPartAhead(
                    faults.get(FaultKey.LATE_RISE), faults.getOrDefault(FaultKey.LATE_RISE_SHARE, 0.05));
        }
        Disturbance disturbance = Disturbance.none();
        if (faults.containsKey(FaultKey.BLOCKAGE)) {
            disturbance = disturbance.and(Disturbance.blockage(
                    faults.getOrDefault(FaultKey.BLOCKAGE_AT, 0.5),
                    faults.get(FaultKey.BLOCKAGE),
                    faults.getOrDefault(FaultKey.BLOCKAGE_SHARE, 0.2)));
        }
        if (faults.containsKey(FaultKey.BURST_AT)) {
            disturbance = disturbance.and(Disturbance.burst(faults.get(FaultKey.BURST_AT), 40));
        }
        if (faults.containsKey(FaultKey.EROSIVE_START)) {
            disturbance = disturbance.and(Disturbance.erosiveStart(
                    faults.get(FaultKey.EROSIVE_START), motor.grain().web().value() / 10));
        }
        double pulses = faults.getOrDefault(FaultKey.CHUFFING, Double.POSITIVE_INFINITY);
        double chuffs = (pulses + 1) * faults.getOrDefault(FaultKey.CHUFFING_PERIOD, 0.4);
        return SimulationSettings.of(ignition)
                .sampledEach(interval(scenario, plan))
                .withTimeLimit(Math.min(scenario.logger().longest(), chuffs))
                .disturbedBy(disturbance);
    }

    private static GrainDescription cast(GrainDescription plan, double casting, Randomness random) {
        Map<String, Measured> dimensions = new TreeMap<>();
        plan.dimensions()
                .forEach((name, value) ->
                        dimensions.put(name, Measured.of(value.value() + casting * random.nextGaussian())));
        return new GrainDescription(
                plan.kind(), plan.segments(), plan.inhibitedEnds(), dimensions, plan.surface(), plan.tableName());
    }

    private static Grain offCentre(Grain grain, double offset) {
        if (grain instanceof Bates bates) {
            return bates.withCoreOffset(offset);
        }
        if (grain instanceof Tube tube) {
            return tube.withCoreOffset(offset);
        }
        if (grain instanceof Stack stack) {
            return new Stack(stack.pieces().stream()
                    .map(piece -> offCentre(piece, offset))
                    .toList());
        }
        return grain;
    }

    private static double square(double x) {
        return x * x;
    }
}
