package io.burnlaw.cli;

import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.grain.Grain;
import io.burnlaw.grain.Grains;
import io.burnlaw.quantity.Measured;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** The motor and its case, as typed; what is not typed comes from the campaign. */
final class MotorOptions {

    /** Burning surface over throat area of the throat that stands in until one is planned [1]. */
    private static final double STAND_IN_RATIO = 250;

    /** Options that mean nothing without a grain beside them. */
    static final List<String> OF_A_GRAIN =
            List.of(("--segments --inhibited-ends --outer-diameter --core-diameter --rod-diameter "
                            + "--segment-length --chamber-volume --density --characteristic-velocity --specific-heat-ratio "
                            + "--ambient-pressure")
                    .split(" "));

    /** Options that mean nothing beside a campaign. */
    static final List<String> OF_A_GUESS = List.of("--ambient-pressure");

    @Option(
            names = "--grain",
            paramLabel = "KIND",
            description =
                    "grain: bates, tube, tube-both-sides, rod, rod-and-tube or end-burner, as in the firing log, with its"
                            + " dimensions; if absent, the grain that was fired last")
    private Optional<String> grain;

    @Option(
            names = "--segments",
            paramLabel = "N",
            defaultValue = "1",
            description = "number of segments of the grain; 1 if absent")
    private int segments;

    @Option(
            names = "--inhibited-ends",
            paramLabel = "N",
            defaultValue = "0",
            description = "number of end faces that do not burn, of all segments of a bates grain; 0 if absent")
    private int inhibitedEnds;

    @Option(
            names = "--outer-diameter",
            paramLabel = "LENGTH",
            converter = OptionTypes.Length.class,
            description = "outer diameter of the grain")
    private Optional<Measured> outerDiameter;

    @Option(
            names = "--core-diameter",
            paramLabel = "LENGTH",
            converter = OptionTypes.Length.class,
            description = "core diameter of the grain")
    private Optional<Measured> coreDiameter;

    @Option(
            names = "--rod-diameter",
            paramLabel = "LENGTH",
            converter = OptionTypes.Length.class,
            description = "diameter of the rod in a rod-and-tube grain")
    private Optional<Measured> rodDiameter;

    @Option(
            names = "--segment-length",
            paramLabel = "LENGTH",
            converter = OptionTypes.Length.class,
            description = "length of each segment")
    private Optional<Measured> segmentLength;

    @Option(
            names = "--chamber-volume",
            paramLabel = "VOLUME",
            converter = OptionTypes.Volume.class,
            description = "volume of the empty case; if absent, usual for the grain")
    private Optional<Measured> chamberVolume;

    @Option(
            names = "--density",
            paramLabel = "DENSITY",
            converter = OptionTypes.Density.class,
            description = "density of the propellant, such as \"1.78 g/cm3\"")
    private Optional<Measured> density;

    @Option(
            names = "--characteristic-velocity",
            paramLabel = "SPEED",
            converter = OptionTypes.Velocity.class,
            description = "c* as delivered, such as \"890 m/s\"")
    private Optional<Measured> velocity;

    @Option(
            names = "--specific-heat-ratio",
            paramLabel = "K",
            description = "ratio of specific heats of the gas; ${DEFAULT-VALUE} if absent",
            defaultValue = "" + Formulation.USUAL_SPECIFIC_HEAT_RATIO)
    private double specificHeatRatio;

    @Option(
            names = "--ambient-pressure",
            paramLabel = "PRESSURE",
            converter = OptionTypes.Pressure.class,
            defaultValue = "101.325 kPa",
            description = "ambient pressure, absolute; \"${DEFAULT-VALUE}\" if absent")
    private Measured ambientPressure;

    @Option(
            names = "--case-limit",
            paramLabel = "PRESSURE",
            converter = OptionTypes.CaseLimit.class,
            description = "pressure that the case can stand, gauge; if absent, that of the campaign")
    private Optional<Measured> caseLimit;

    @Option(
            names = "--safety-factor",
            paramLabel = "S",
            description =
                    "planned pressures stay below the limit by this factor, at least 1; if absent, that of the campaign,"
                            + " and at least 1.5 with a --case-limit of your own")
    private Optional<Double> safetyFactor;

    /** Where nobody states one; common practice, no source. */
    private static final double USUAL_SAFETY_FACTOR = 1.5;

    /** Looks at what does not go together, before anything is read or printed. */
    void check(CommandLine line) {
        safetyFactor.filter(factor -> !(factor >= 1 && factor < 100)).ifPresent(factor -> {
            throw OptionTypes.wrong(line, "--safety-factor", "it must be at least 1, such as 1.5");
        });
        if (grainTyped()) {
            motor(
                    line,
                    density.map(Measured::value).orElse(1800.0),
                    velocity.map(Measured::value).orElse(900.0),
                    ambientPressure());
        }
    }

    boolean grainTyped() {
        return grain.isPresent();
    }

    /** {@return the grain in words} */
    String words() {
        return description().inWords();
    }

    /** {@return as typed [kg/m³]; else as known otherwise} */
    Measured neededDensity(CommandLine line, Optional<Measured> otherwise) {
        return needed(density.or(() -> otherwise), line, "--density", "1.78 g/cm3");
    }

    /** {@return characteristic velocity as typed [m/s]; else as known otherwise} */
    Measured neededVelocity(CommandLine line, Optional<Measured> otherwise) {
        return needed(velocity.or(() -> otherwise), line, "--characteristic-velocity", "880 m/s");
    }

    private static Measured needed(Optional<Measured> value, CommandLine line, String option, String example) {
        return value.orElseThrow(() -> new ParameterException(
                line, option + " is missing: the plan needs it, such as " + option + " \"" + example + "\""));
    }

    /** {@return [Pa, absolute]} */
    double ambientPressure() {
        return ambientPressure.value();
    }

    /** The motor of the grain as typed, with a throat that stands in. */
    Motor motor(CommandLine line, double density, double velocity, double ambient) {
        if (!(specificHeatRatio > 1 && specificHeatRatio < 2)) {
            throw OptionTypes.wrong(line, "--specific-heat-ratio", "it must be between 1 and 2");
        }
        Grain built = Grains.of(description()).match(Function.identity(), impossible -> {
            throw OptionTypes.wrong(
                    line, "--grain", String.join("; ", impossible).replace('_', '-'));
        });
        double chamber = chamberVolume.map(Measured::value).orElse(0.0);
        if (chamber > 0 && !(chamber > built.volume(0))) {
            throw OptionTypes.wrong(line, "--chamber-volume", "this is smaller than the grain");
        }
        double area = built.surface(0) / STAND_IN_RATIO;
        return new Motor(
                built,
                density,
                new Gas(velocity, specificHeatRatio),
                new Nozzle(Math.sqrt(4 * area / Math.PI)),
                Motor.freeVolume(built, chamber),
                ambient);
    }

    private GrainDescription description() {
        Map<String, Measured> dimensions = new LinkedHashMap<>();
        outerDiameter.ifPresent(length -> dimensions.put("outer_diameter", length));
        coreDiameter.ifPresent(length -> dimensions.put("core_diameter", length));
        rodDiameter.ifPresent(length -> dimensions.put("rod_diameter", length));
        segmentLength.ifPresent(length -> dimensions.put("segment_length", length));
        return new GrainDescription(grain.orElse(""), segments, inhibitedEnds, dimensions, List.of(), Optional.empty());
    }

    /** The case as typed; of the campaign's where nothing is. */
    Hardware hardware(Hardware ofCampaign) {
        double cautious = Math.max(USUAL_SAFETY_FACTOR, ofCampaign.safetyFactor());
        return caseLimit
                .map(found -> new Hardware(OptionalDouble.of(found.value()), safetyFactor.orElse(cautious)))
                .orElseGet(() ->
                        new Hardware(ofCampaign.casePressureLimit(), safetyFactor.orElse(ofCampaign.safetyFactor())));
    }
}
