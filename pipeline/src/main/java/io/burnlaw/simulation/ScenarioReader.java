package io.burnlaw.simulation;

import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.reading.Block;
import io.burnlaw.campaign.reading.CampaignFolder;
import io.burnlaw.campaign.reading.YamlDocument;
import io.burnlaw.campaign.reading.YamlDocument.YamlNode;
import io.burnlaw.finding.Outcome;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Spelling;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads a scenario file. */
public final class ScenarioReader {

    private static final double STANDARD_ATMOSPHERE = 101_325;

    private final List<Problem> problems = new ArrayList<>();
    private final String file;
    private final Path folder;

    private ScenarioReader(Path path) {
        this.file = path.toString();
        this.folder = path.toAbsolutePath().getParent();
    }

    /** {@return the scenario, or every problem of the file} */
    public static Outcome<Scenario, Problem> read(Path path) {
        ScenarioReader reader = new ScenarioReader(path);
        Optional<YamlNode.Mapping> root = YamlDocument.read(path, reader.problems);
        Optional<Scenario> scenario = root.map(reader::scenario);
        return reader.problems.isEmpty()
                ? new Outcome.Given<>(scenario.orElseThrow())
                : new Outcome.Refused<>(reader.problems.stream().distinct().toList());
    }

    private Scenario scenario(YamlNode.Mapping root) {
        Block block = new Block(file, "", root, ScenarioKeys.SCENARIO, problems);
        block.format(ScenarioKeys.FORMAT);
        OptionalDouble reference = value(block.positive("reference_temperature", Dimension.TEMPERATURE));
        Map<String, Scenario.Propellant> propellants = propellants(block);
        FiringPlans plans = new FiringPlans(
                propellants,
                seed(block),
                block.block("grain", ScenarioKeys.GRAIN),
                new CampaignFolder(folder),
                problems);
        double ambient = block.positivePressure("ambient_pressure", PressureKind.ABSOLUTE)
                .map(Measured::value)
                .orElse(STANDARD_ATMOSPHERE);
        List<Scenario.PlannedFiring> firings = new ArrayList<>();
        block.blocks("firings", ScenarioKeys.FIRING)
                .forEach((id, firing) -> plans.firing(id, firing).ifPresent(firings::add));
        List<Scenario.PlannedPoint> points = new ArrayList<>();
        block.blocks("points", ScenarioKeys.POINT)
                .forEach((id, point) -> plans.point(id, point).ifPresent(points::add));
        List<Scenario.PlannedStrand> strands = new ArrayList<>();
        block.blocks("strands", ScenarioKeys.STRAND)
                .forEach((id, strand) -> plans.strand(id, strand).ifPresent(strands::add));
        if (!block.has("firings") && !block.has("points") && !block.has("strands")) {
            block.wrong(
                    "firings",
                    "the scenario has no firings, points or strands",
                    "",
                    "firings, points or strands",
                    "add one of the three");
        }
        return new Scenario(
                block.required("title", "write   title: and a name for the campaign"),
                block.text("note"),
                block.text("prepared_by"),
                block.text("licence"),
                seed(block),
                ambient,
                reference,
                List.copyOf(propellants.values()),
                hardware(block.block("hardware", ScenarioKeys.HARDWARE)),
                Equipment.instruments(block.block("instruments", ScenarioKeys.INSTRUMENTS)),
                Equipment.logger(block.block("logger", ScenarioKeys.LOGGER)),
                firings,
                points,
                strands);
    }

    private static long seed(Block block) {
        if (!block.has("seed")) {
            block.wrong("seed", "the key is missing", "", "a whole number", "write   seed: 20260101");
        }
        double seed = block.number("seed", 0, 1e15).orElse(0);
        if (seed != Math.rint(seed)) {
            block.wrong("seed", "this is not a whole number", "such as 20260101", "correct it");
        }
        return (long) seed;
    }

    private static Scenario.MotorCase hardware(Block block) {
        return new Scenario.MotorCase(
                value(block.positivePressure("case_pressure_limit", PressureKind.GAUGE)),
                block.number("safety_factor", 1, 10),
                value(block.positive("chamber_volume", Dimension.VOLUME)));
    }

    private Map<String, Scenario.Propellant> propellants(Block block) {
        Map<String, Scenario.Propellant> propellants = new LinkedHashMap<>();
        Map<String, Block> blocks = block.blocks("formulations", ScenarioKeys.FORMULATION);
        if (blocks.isEmpty()) {
            block.wrong("formulations", "no formulation is described", "", "at least one", "see docs/formats.md");
        }
        blocks.forEach((id, inner) -> propellants.put(id, propellant(id, inner)));
        blocks.forEach((id, inner) -> inner.text("compare_with")
                .filter(other -> !propellants.containsKey(other) || other.equals(id))
                .ifPresent(other -> inner.wrong(
                        "compare_with",
                        "there is no other formulation with this name",
                        other,
                        "one of " + String.join(", ", propellants.keySet()),
                        Spelling.nearest(other, propellants.keySet())
                                .map(near -> "write   compare_with: " + near)
                                .orElse("write the id of the baseline"))));
        return propellants;
    }

    private static Scenario.Propellant propellant(String id, Block block) {
        return new Scenario.Propellant(
                id,
                block.text("title").orElse(id),
                needed(block, "density", Dimension.DENSITY, "1.80 g/cm3"),
                needed(block, "characteristic_velocity", Dimension.SPEED, "900 m/s"),
                value(block.positive("expected_characteristic_velocity", Dimension.SPEED)),
                block.number("specific_heat_ratio", 1.01, 1.67).orElse(1.13),
                law(block),
                block.share("rate_scatter", 0, 0.5).orElse(0),
                block.share("batch_scatter", 0, 0.5).orElse(0),
                Optional.empty(),
                1,
                block.share("velocity_scatter", 0, 0.5).orElse(0),
                block.share("rate_change_per_10_kelvin", -0.5, 0.5).orElse(0) / 10,
                block.flag("baseline", false),
                block.text("compare_with"),
                block.text("additive"),
                block.share("additive_fraction", 0, 1));
    }

    private static TrueLaw law(Block block) {
        List<TrueLaw.Piece> pieces = new ArrayList<>();
        block.blocks("law", ScenarioKeys.LAW).forEach((name, piece) -> {
            OptionalDouble exponent = piece.number("exponent", -3, 3);
            if (exponent.isEmpty()) {
                missing(piece, "exponent", "a number", "0.35");
            }
            double from =
                    value(piece.positivePressure("from", PressureKind.ABSOLUTE)).orElse(0);
            boolean first = pieces.isEmpty();
            if (first == piece.has("from")) {
                piece.wrong(
                        "from",
                        first ? "the first piece begins at vacuum" : "the key is missing",
                        "",
                        first ? "no such key in this place" : "the pressure at which this piece begins",
                        first ? "delete the key" : "write   from: 1 MPa");
            }
            if (!first && !(from > pieces.get(pieces.size() - 1).from())) {
                piece.wrong("from", "the pieces do not rise", "", "a pressure above the piece before", "sort them");
            }
            double rate;
            double at;
            if (first || piece.has("rate") || piece.has("at")) {
                rate = needed(piece, "rate", Dimension.SPEED, "5.0 mm/s");
                at = needed(piece, "at", Dimension.PRESSURE, "1 MPa");
            } else {
                // joins the piece before it
                at = Math.max(from, 1);
                rate = pieces.get(pieces.size() - 1).rate(at);
            }
            pieces.add(new TrueLaw.Piece(name, from, rate, at, exponent.orElse(0)));
        });
        if (pieces.isEmpty()) {
            missing(block, "law", "pieces of a power law", "then   main: {rate: 5 mm/s, at: 1 MPa, exponent: 0.3}");
            pieces.add(new TrueLaw.Piece("none", 0, 1, 1, 0));
        }
        return new TrueLaw(pieces);
    }

    /** A quantity above zero that must be there; 1 where it is not, so that reading can go on to the next problem. */
    static double needed(Block block, String key, Dimension dimension, String example) {
        Optional<Measured> value = block.positive(key, dimension);
        if (!block.has(key)) {
            missing(block, key, dimension.noun() + " with its unit", example);
        }
        return value.map(Measured::value).orElse(1.0);
    }

    static void missing(Block block, String key, String expected, String example) {
        if (!block.has(key)) {
            block.wrong(key, "the key is missing", "", expected, "write   " + key + ": " + example);
        }
    }

    static OptionalDouble value(Optional<Measured> measured) {
        return measured.map(m -> OptionalDouble.of(m.value())).orElseGet(OptionalDouble::empty);
    }
}
