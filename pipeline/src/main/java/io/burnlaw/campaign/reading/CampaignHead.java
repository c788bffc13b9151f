package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Campaign.FitSettings;
import io.burnlaw.campaign.Campaign.ReductionSettings;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.campaign.Plausible;
import io.burnlaw.campaign.PressureErrors;
import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.campaign.reading.YamlDocument.YamlNode;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Spelling;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What campaign.yaml says.
 *
 * @param ambientPressure      [Pa, absolute]; empty where nobody stated it
 * @param referenceTemperature [K]
 * @param formulations         in the order of the file
 * @param trace                how traces are read
 * @param hardware             what the case can stand
 */
record CampaignHead(
        String title,
        Optional<String> preparedBy,
        Optional<String> licence,
        Optional<String> note,
        OptionalDouble ambientPressure,
        OptionalDouble referenceTemperature,
        List<Formulation> formulations,
        TraceSettings trace,
        Hardware hardware,
        ReductionSettings reduction,
        FitSettings fit) {

    /** Standard atmosphere [Pa, absolute]: ISO 2533:1975. */
    static final double STANDARD_ATMOSPHERE = 101_325;

    double ambient() {
        return ambientPressure.orElse(STANDARD_ATMOSPHERE);
    }

    /** Of what could not be read. */
    static CampaignHead unstated() {
        // stated, so that nobody is asked for what may well stand in the file that could not be read
        return bare("", List.of(), TraceSettings.unstated().of(PressureKind.GAUGE));
    }

    /** A head that says no more than this. */
    static CampaignHead bare(String title, List<Formulation> formulations, TraceSettings trace) {
        return new CampaignHead(
                title,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                formulations,
                trace,
                new Hardware(OptionalDouble.empty(), 1.5),
                ReductionSettings.defaults(),
                FitSettings.defaults());
    }

    /**
     * Reads the mapping at the root of campaign.yaml.
     *
     * @param problems where what is wrong is added
     * @return what it says; what is wrong is left unstated
     */
    static CampaignHead read(String file, YamlNode.Mapping root, List<Problem> problems) {
        Block block = new Block(file, "", root, CampaignKeys.CAMPAIGN, problems);
        block.format(CampaignKeys.FORMAT);
        return new CampaignHead(
                block.required("title", "write   title: and a name for the campaign"),
                block.text("prepared_by"),
                block.text("licence"),
                block.text("note"),
                ambient(block),
                Place.value(block.positive("reference_temperature", Dimension.TEMPERATURE)),
                formulations(block, file, problems),
                trace(block.block("trace", CampaignKeys.TRACE)),
                hardware(block.block("hardware", CampaignKeys.HARDWARE)),
                reduction(block.block("reduction", CampaignKeys.REDUCTION)),
                fit(block.block("fit", CampaignKeys.FIT)));
    }

    private static OptionalDouble ambient(Block block) {
        Optional<Measured> ambient = block.positivePressure("ambient_pressure", PressureKind.ABSOLUTE);
        ambient.ifPresent(value -> block.plausible(
                "ambient_pressure",
                Plausible.AMBIENT_PRESSURE,
                value,
                "check its unit; a pressure reduced to sea level is not what the barometer reads"));
        return Place.value(ambient);
    }

    private static List<Formulation> formulations(Block block, String file, List<Problem> problems) {
        YamlNode.Mapping mapping = block.mapping("formulations");
        if (mapping.entries().isEmpty()) {
            block.wrong(
                    "formulations",
                    "no formulation is described",
                    "",
                    "at least one",
                    "write   formulations: and below it an id with title and density");
        }
        Map<String, Formulation> read = new LinkedHashMap<>();
        block.blocks("formulations", CampaignKeys.FORMULATION)
                .forEach((id, inner) -> read.put(id, formulation(id, inner)));
        read.forEach((id, formulation) -> formulation
                .compareWith()
                .filter(other -> !read.containsKey(other) || other.equals(id))
                .ifPresent(other -> problems.add(notToCompareWith(
                        file,
                        mapping.entries().get(id).line(),
                        id,
                        other,
                        read.keySet().stream().filter(each -> !each.equals(id)).toList()))));
        return new ArrayList<>(read.values());
    }

    private static Problem notToCompareWith(String file, int line, String id, String other, List<String> others) {
        return new Problem(
                file,
                line,
                "formulations." + id + ".compare_with",
                other.equals(id)
                        ? "a formulation cannot be compared with itself"
                        : "there is no other formulation with this name",
                other,
                others.isEmpty() ? "the id of a second formulation" : "one of " + String.join(", ", others),
                Spelling.nearest(other, others)
                        .map(near -> "write   compare_with: " + near)
                        .orElse(
                                others.isEmpty()
                                        ? "describe the second formulation, or delete the line"
                                        : "write the id of the baseline"));
    }

    private static Formulation formulation(String id, Block block) {
        Optional<Measured> density = block.positive("density", Dimension.DENSITY);
        doubted(block, "density", density, Plausible.DENSITY);
        Optional<Measured> velocity = block.positive("characteristic_velocity", Dimension.SPEED);
        doubted(block, "characteristic_velocity", velocity, Plausible.VELOCITY);
        return new Formulation(
                id,
                block.text("title").orElse(id),
                density,
                block.flag("baseline", false),
                block.text("compare_with"),
                block.text("additive"),
                block.share("additive_fraction", 0, 1),
                block.number("specific_heat_ratio", 1.01, 1.67),
                velocity);
    }

    private static void doubted(Block block, String key, Optional<Measured> value, Plausible bounds) {
        value.ifPresent(found -> block.plausible(key, bounds, found, "check its unit"));
    }

    private static TraceSettings trace(Block block) {
        Optional<SensorClass> sensor = block.sensor();
        return new TraceSettings(
                block.text("time"),
                sampling(block),
                block.text("pressure"),
                block.text("thrust"),
                block.choice("pressure_kind", PressureKind.class),
                calibration(block),
                sensor.map(SensorClass::std).map(OptionalDouble::of).orElseGet(OptionalDouble::empty),
                sensor.map(SensorClass::fullScale).orElseGet(OptionalDouble::empty));
    }

    private static OptionalDouble sampling(Block block) {
        Optional<String> text = block.text("sampling");
        Optional<SamplingInterval.Reading> reading = text.map(SamplingInterval::read);
        reading.flatMap(SamplingInterval.Reading::fault)
                .ifPresent(what -> block.wrong(
                        "sampling",
                        what,
                        text.orElse(""),
                        SamplingInterval.Reading.EXPECTED,
                        "write   sampling: 2 kHz"));
        return reading.map(SamplingInterval.Reading::interval).orElseGet(OptionalDouble::empty);
    }

    private static List<TraceSettings.CalibrationPoint> calibration(Block block) {
        YamlNode.Mapping mapping = block.mapping("calibration");
        if (mapping.entries().isEmpty()) {
            return List.of();
        }
        Calibration.Reading reading = Calibration.read(mapping.entries().entrySet().stream()
                .map(pair -> new Calibration.Pair(
                        pair.getKey(), pair.getValue().value() instanceof YamlNode.Scalar scalar ? scalar.text() : ""))
                .toList());
        reading.fault()
                .ifPresent(fault ->
                        block.wrong("calibration", fault.what(), fault.found(), fault.expected(), fault.mend()));
        return reading.points();
    }

    private static Hardware hardware(Block block) {
        Optional<Measured> limit = block.positivePressure("case_pressure_limit", PressureKind.GAUGE);
        doubted(block, "case_pressure_limit", limit, Plausible.CASE_LIMIT);
        limit.filter(found -> found.std().isPresent())
                .ifPresent(vague -> block.wrong(
                        "case_pressure_limit",
                        "a limit cannot have an uncertainty",
                        "one pressure",
                        "write the lowest pressure at which such a case may fail"));
        return new Hardware(
                Place.value(limit),
                block.number("safety_factor", 1, 20).orElse(1.5),
                block.positive("igniter_mass", Dimension.MASS),
                block.measured("igniter_gas_fraction", Dimension.FRACTION).orElse(Hardware.USUAL_GAS_FRACTION));
    }

    private static ReductionSettings reduction(Block block) {
        ReductionSettings usual = ReductionSettings.defaults();
        return new ReductionSettings(
                block.choice("method", ReductionSettings.Method.class).orElse(usual.method()),
                block.choice("burnout_event", ReductionSettings.BurnoutEvent.class)
                        .orElse(usual.burnoutEvent()),
                block.share("ignition_threshold", 0.01, 0.5).orElse(usual.ignitionThreshold()),
                block.share("end_threshold", 0.01, 0.5).orElse(usual.endThreshold()));
    }

    private static FitSettings fit(Block block) {
        FitSettings usual = FitSettings.defaults();
        OptionalDouble seed = block.number("seed", 0, 1e15);
        if (seed.isPresent() && seed.getAsDouble() != Math.rint(seed.getAsDouble())) {
            block.wrong("seed", "this is not a whole number", "such as 20260101", "correct it");
        }
        return new FitSettings(
                block.share("confidence", 0.5, 0.999).orElse(usual.confidence()),
                (long) seed.orElse(usual.seed()),
                block.choice("weighting", Weighting.class).orElse(usual.weighting()),
                block.choice("pressure_errors", PressureErrors.class).orElse(usual.pressure()),
                block.flag("robust", usual.robust()));
    }
}
