package io.burnlaw.simulation;

import io.burnlaw.ballistics.Recorder;
import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.campaign.PressureKind;
import io.burnlaw.quantity.Unit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * An invented campaign: true propellants, hardware, instruments with their errors, and the firings.
 *
 * @param note                 what was invented, and why
 * @param preparedBy           who made it up
 * @param seed                 of all random numbers
 * @param ambientPressure      [Pa, absolute]
 * @param referenceTemperature at which the laws hold [K]
 * @param propellants          in the order of the file
 * @param instruments          what measures grains, masses and times, and how well
 * @param points               strands and burns that are timed by hand
 * @param strands              strands whose vessel is recorded
 */
public record Scenario(
        String title,
        Optional<String> note,
        Optional<String> preparedBy,
        Optional<String> licence,
        long seed,
        double ambientPressure,
        OptionalDouble referenceTemperature,
        List<Propellant> propellants,
        MotorCase hardware,
        Instruments instruments,
        Logger logger,
        List<PlannedFiring> firings,
        List<PlannedPoint> points,
        List<PlannedStrand> strands) {

    public Scenario {
        propellants = List.copyOf(propellants);
        firings = List.copyOf(firings);
        points = List.copyOf(points);
        strands = List.copyOf(strands);
    }

    /**
     * The true propellant.
     *
     * @param id                             the name in the tables
     * @param density                        [kg/m3]
     * @param characteristicVelocity         as delivered [m/s]
     * @param expectedCharacteristicVelocity as the campaign states it, where it does [m/s]
     * @param specificHeatRatio              [1]
     * @param law                            rate by pressure at the reference temperature
     * @param rateScatter                    relative standard deviation of the rate between firings [1]
     * @param batchScatter                   the same between batches [1]
     * @param batch                          the casting that this one comes from
     * @param batchFactor                    rate of that casting over the law's [1]
     * @param velocityScatter                the same of c* [1]
     * @param temperatureSensitivity         relative change of the rate [1/K]
     * @param baseline                       whether others are compared with it
     * @param compareWith                    id of the propellant that it is compared with
     * @param additiveFraction               by mass [1]
     */
    public record Propellant(
            String id,
            String title,
            double density,
            double characteristicVelocity,
            OptionalDouble expectedCharacteristicVelocity,
            double specificHeatRatio,
            TrueLaw law,
            double rateScatter,
            double batchScatter,
            Optional<String> batch,
            double batchFactor,
            double velocityScatter,
            double temperatureSensitivity,
            boolean baseline,
            Optional<String> compareWith,
            Optional<String> additive,
            OptionalDouble additiveFraction) {

        /** {@return the propellant with the rate of one casting of it} */
        Propellant ofBatch(String name, long seed) {
            return new Propellant(
                    id,
                    title,
                    density,
                    characteristicVelocity,
                    expectedCharacteristicVelocity,
                    specificHeatRatio,
                    law,
                    rateScatter,
                    batchScatter,
                    Optional.of(name),
                    StrictMath.exp(batchScatter
                            * Randomness.of(seed, "batch " + id + " " + name).nextGaussian()),
                    velocityScatter,
                    temperatureSensitivity,
                    baseline,
                    compareWith,
                    additive,
                    additiveFraction);
        }
    }

    /**
     * The case.
     *
     * @param pressureLimit [Pa, gauge]
     * @param safetyFactor  [1]
     * @param volume        of the empty chamber [m3]
     */
    public record MotorCase(OptionalDouble pressureLimit, OptionalDouble safetyFactor, OptionalDouble volume) {}

    /**
     * The instruments and their errors. All are standard deviations.
     *
     * @param caliper [m]
     * @param scale   [kg]
     * @param density [kg/m3]
     * @param timer   of a burn timed by hand [s]
     * @param casting by which the dimensions of grains differ from the plan [m]
     * @param coreOffset of the core's axis in each of two directions [m]
     * @param stated  whether the tables say the uncertainties of calipers and scale
     * @param step    to which lengths are read [m]
     * @param unlogged columns that nobody wrote down
     */
    public record Instruments(
            double caliper,
            double scale,
            double density,
            double timer,
            double casting,
            double coreOffset,
            boolean stated,
            double step,
            List<String> unlogged) {}

    /**
     * The data logger.
     *
     * @param interval         between two samples [s]
     * @param quietBefore      [s]
     * @param quietAfter       [s]
     * @param longest          after which a firing is no longer recorded [s]
     * @param timeUnit         as written
     * @param pressureUnit     as written
     * @param thrustUnit       as written
     * @param pressureKind     as written
     * @param noise            standard deviation [Pa]
     * @param thrustNoise      standard deviation [N]
     * @param zeroOffset       standard deviation of the zero between firings [Pa]
     * @param gainError        standard deviation of the sensor's scale, drawn once [1]
     * @param resolution       step of the converter [Pa]; 0 for none
     * @param thrustEfficiency of the nozzle against the ideal one [1]
     * @param thrustResolution step of the load cell's converter [N]; 0 for none
     * @param standPeriod      in which the stand swings on its load cell [s]; 0 for a rigid one
     * @param standDamping     of that swing, of the critical one [1]
     * @param sensorClass      as the campaign states it
     * @param semicolons       whether fields are separated by semicolons, with a decimal comma
     * @param preamble         whether the records begin with lines of the logger
     */
    public record Logger(
            double interval,
            double quietBefore,
            double quietAfter,
            double longest,
            Recorder.Sensors sensors,
            Unit timeUnit,
            Unit pressureUnit,
            Unit thrustUnit,
            PressureKind pressureKind,
            double noise,
            double thrustNoise,
            double zeroOffset,
            double gainError,
            double resolution,
            double thrustEfficiency,
            double thrustResolution,
            double standPeriod,
            double standDamping,
            Optional<String> sensorClass,
            boolean semicolons,
            boolean preamble) {}

    /**
     * The igniter.
     *
     * @param mass   of the charge [kg]
     * @param time   in which it burns [s]
     * @param spread in which the flame runs over the grain [s]
     * @param logged whether the log states its mass
     */
    public record Starter(double mass, double time, double spread, boolean logged) {}

    /**
     * One firing.
     *
     * @param throat      diameter [m]
     * @param throatAfter diameter [m]
     * @param exit        diameter [m]
     * @param temperature of the grain [K]
     * @param igniter     strength against the usual igniter [1]
     * @param starter     charge, its time and the spread of the flame, where they are not the usual ones
     * @param coreOffset  of the core's axis [m]; drawn where empty
     * @param interval    between two samples, where it differs from the logger's [s]
     * @param sensors     where they differ from the logger's
     * @param timed       relative standard deviation of its burn time by video or stopwatch [1]; empty where it is recorded
     * @param faults      what goes wrong, in SI
     * @param logged      what the log says of the grain where that is wrong
     * @param use         cell of the log
     * @param note        cell of the log
     */
    public record PlannedFiring(
            String id,
            Propellant propellant,
            GrainDescription grain,
            double throat,
            OptionalDouble throatAfter,
            OptionalDouble exit,
            OptionalDouble temperature,
            double igniter,
            Optional<Starter> starter,
            OptionalDouble coreOffset,
            OptionalDouble interval,
            Optional<Recorder.Sensors> sensors,
            OptionalDouble timed,
            Map<FaultKey, Double> faults,
            WrittenGrain logged,
            Optional<String> use,
            Optional<String> note) {

        public PlannedFiring {
            faults = Map.copyOf(faults);
        }
    }

    /**
     * How the grain in the log differs from the true one.
     *
     * @param counts     segments and inhibited ends, by column
     * @param dimensions by column [m]
     */
    public record WrittenGrain(Optional<String> kind, Map<String, Integer> counts, Map<String, Double> dimensions) {

        public WrittenGrain {
            counts = Map.copyOf(counts);
            dimensions = Map.copyOf(dimensions);
        }
    }

    /**
     * A burn that is timed by hand at one pressure.
     *
     * @param pressure    [Pa, absolute]
     * @param length      that burns [m]
     * @param temperature of the sample [K]
     * @param note        cell of the table
     */
    public record PlannedPoint(
            String id,
            Propellant propellant,
            double pressure,
            double length,
            OptionalDouble temperature,
            Optional<String> note) {}

    /**
     * A strand in a closed vessel that is recorded.
     *
     * @param pressure    at which it is lit [Pa, absolute]
     * @param length      that is timed [m]
     * @param rise        of the vessel's pressure over the burn [Pa]
     * @param wires       whether break wires time it
     * @param temperature of the strand [K]
     * @param note        cell of the table
     */
    public record PlannedStrand(
            String id,
            Propellant propellant,
            double pressure,
            double length,
            double rise,
            boolean wires,
            OptionalDouble temperature,
            Optional<String> note) {}
}
