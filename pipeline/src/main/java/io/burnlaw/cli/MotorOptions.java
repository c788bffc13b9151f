package io.burnlaw.cli;

import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.campaign.Plausible;
import io.burnlaw.grain.Grain;
import io.burnlaw.grain.Grains;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** The motor and its case, as typed; what is not typed comes from the campaign. */
final class MotorOptions {

    /** Burning surface over throat area of the throat that stands in until one is planned [1]. */
    private static final double STAND_IN_RATIO = 250;

    /** [Pa, gauge]; as wide. */
    private static final double LEAST_LIMIT = 0.1e6;

    private static final double MOST_LIMIT = 100e6;

    /** Options that mean nothing without a grain beside them. */
    static final List<String> OF_A_GRAIN = List.of(
            "--segments",
            "--inhibited-ends",
            "--outer-diameter",
            "--core-diameter",
            "--rod-diameter",
            "--segment-length",
            "--chamber-volume",
            "--density",
            "--characteristic-velocity",
            "--specific-heat-ratio",
            "--ambient-pressure");

    /** Options that mean nothing beside a campaign. */
    static final List<String> OF_A_GUESS = List.of("--ambient-pressure");

    @Option(
            names = "--grain",
            paramLabel = "KIND",
            description =
                    "bates, tube, tube-both-sides, rod, rod-and-tube or end-burner, as in the firing log; with its"
                            + " dimensions. If absent, the grain that was fired last")
    private Optional<String> grain;

    @Option(names = "--segments", paramLabel = "N", defaultValue = "1", description = "of the grain; 1 if absent")
    private int segments;

    @Option(
            names = "--inhibited-ends",
            paramLabel = "N",
            defaultValue = "0",
            description = "end faces of all segments of a bates grain that do not burn; 0 if absent")
    private int inhibitedEnds;

    @Option(names = "--outer-diameter", paramLabel = "LENGTH", description = "of the grain")
    private Optional<String> outerDiameter;

    @Option(names = "--core-diameter", paramLabel = "LENGTH", description = "of the grain")
    private Optional<String> coreDiameter;

    @Option(names = "--rod-diameter", paramLabel = "LENGTH", description = "of the rod in a rod-and-tube grain")
    private Optional<String> rodDiameter;

    @Option(names = "--segment-length", paramLabel = "LENGTH", description = "of each segment")
    private Optional<String> segmentLength;

    @Option(
            names = "--chamber-volume",
            paramLabel = "VOLUME",
            description = "of the empty case; usual for the grain if absent")
    private Optional<String> chamberVolume;

    @Option(names = "--density", paramLabel = "DENSITY", description = "of the propellant, such as \"1.78 g/cm3\"")
    private Optional<String> density;

    @Option(
            names = "--characteristic-velocity",
            paramLabel = "SPEED",
            description = "c* as delivered, such as \"890 m/s\"")
    private Optional<String> velocity;

    @Option(
            names = "--specific-heat-ratio",
            paramLabel = "K",
            description = "of the gas; ${DEFAULT-VALUE} if absent",
            defaultValue = "" + Formulation.USUAL_SPECIFIC_HEAT_RATIO)
    private double specificHeatRatio;

    @Option(
            names = "--ambient-pressure",
            paramLabel = "PRESSURE",
            defaultValue = "101.325 kPa",
            description = "absolute; \"${DEFAULT-VALUE}\" if absent")
    private String ambientPressure;

    @Option(
            names = "--case-limit",
            paramLabel = "PRESSURE",
            description = "what the case can stand, gauge; that of the campaign if absent")
    private Optional<String> caseLimit;

    @Option(
            names = "--safety-factor",
            paramLabel = "S",
            description = "by which planned pressures stay below the limit, at least 1; that of the campaign if absent,"
                    + " beside a --case-limit of your own at least 1.5")
    private Optional<Double> safetyFactor;

    /** Where nobody states one; common practice, no source. */
    private static final double USUAL_SAFETY_FACTOR = 1.5;

    /** Reads all that was typed, to say what is wrong with it. */
    void check(TypedQuantity typed) {
        hardware(typed, new Hardware(OptionalDouble.empty(), 1));
        double nominal = density(typed).map(Measured::value).orElse(1800.0);
        double speed = velocity(typed).map(Measured::value).orElse(900.0);
        double ambient = ambientPressure(typed);
        if (grainTyped()) {
            motor(typed, nominal, speed, ambient);
        }
    }

    boolean grainTyped() {
        return grain.isPresent();
    }

    /** {@return the grain in words} */
    String words(TypedQuantity typed) {
        return description(typed).inWords();
    }

    Optional<Measured> density(TypedQuantity typed) {
        return typed.positive("--density", density, Dimension.DENSITY);
    }

    Optional<Measured> velocity(TypedQuantity typed) {
        Optional<Measured> value = typed.positive("--characteristic-velocity", velocity, Dimension.SPEED);
        value.ifPresent(found -> typed.within(
                "--characteristic-velocity",
                velocity.orElse(""),
                found.value(),
                Plausible.VELOCITY.low(),
                Plausible.VELOCITY.high()));
        return value;
    }

    double ambientPressure(TypedQuantity typed) {
        return typed.positive("--ambient-pressure", ambientPressure, Dimension.PRESSURE)
                .value();
    }

    /** The motor of the grain as typed, with a throat that stands in. */
    Motor motor(TypedQuantity typed, double density, double velocity, double ambient) {
        if (!(specificHeatRatio > 1 && specificHeatRatio < 2)) {
            throw typed.wrong("--specific-heat-ratio", "" + specificHeatRatio, "it lies between 1 and 2");
        }
        return motor(typed, density, new Gas(velocity, specificHeatRatio), ambient);
    }

    private Motor motor(TypedQuantity typed, double density, Gas gas, double ambient) {
        Grain built = Grains.of(description(typed)).match(found -> found.grain(), impossible -> {
            throw new ParameterException(
                    typed.line(),
                    "--grain " + grain.orElse("") + ": "
                            + String.join("; ", impossible.reasons()).replace('_', '-'));
        });
        double chamber = typed.positive("--chamber-volume", chamberVolume, Dimension.VOLUME)
                .map(Measured::value)
                .orElse(0.0);
        if (chamber > 0 && !(chamber > built.volume(0))) {
            throw typed.wrong("--chamber-volume", chamberVolume.orElse(""), "the grain alone is larger");
        }
        double area = built.surface(0) / STAND_IN_RATIO;
        return new Motor(
                built,
                density,
                gas,
                new Nozzle(Math.sqrt(4 * area / Math.PI)),
                Motor.freeVolume(built, chamber),
                ambient);
    }

    private GrainDescription description(TypedQuantity typed) {
        Map<String, Measured> dimensions = new LinkedHashMap<>();
        put(typed, dimensions, "--outer-diameter", outerDiameter);
        put(typed, dimensions, "--core-diameter", coreDiameter);
        put(typed, dimensions, "--rod-diameter", rodDiameter);
        put(typed, dimensions, "--segment-length", segmentLength);
        return new GrainDescription(grain.orElse(""), segments, inhibitedEnds, dimensions, List.of(), Optional.empty());
    }

    private static void put(
            TypedQuantity typed, Map<String, Measured> dimensions, String option, Optional<String> text) {
        typed.positive(option, text, Dimension.LENGTH)
                .ifPresent(length -> dimensions.put(option.substring(2).replace('-', '_'), length));
    }

    /** The case as typed; of the campaign's where nothing is. */
    Hardware hardware(TypedQuantity typed, Hardware ofCampaign) {
        safetyFactor.filter(factor -> !(factor >= 1 && factor < 100)).ifPresent(factor -> {
            throw typed.wrong("--safety-factor", "" + factor, "it is at least 1, such as 1.5");
        });
        Optional<Measured> limit = typed.positive("--case-limit", caseLimit, Dimension.PRESSURE);
        limit.filter(found -> found.std().isPresent()).ifPresent(vague -> {
            throw typed.wrong(
                    "--case-limit",
                    caseLimit.orElse(""),
                    "a limit has no uncertainty; write the lowest pressure at which such a case may fail");
        });
        limit.ifPresent(
                found -> typed.within("--case-limit", caseLimit.orElse(""), found.value(), LEAST_LIMIT, MOST_LIMIT));
        double cautious = Math.max(USUAL_SAFETY_FACTOR, ofCampaign.safetyFactor());
        return limit.map(found -> new Hardware(OptionalDouble.of(found.value()), safetyFactor.orElse(cautious)))
                .orElseGet(() ->
                        new Hardware(ofCampaign.casePressureLimit(), safetyFactor.orElse(ofCampaign.safetyFactor())));
    }
}
