package io.burnlaw.simulation;

import io.burnlaw.ballistics.Recorder;
import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.reading.Block;
import io.burnlaw.campaign.reading.CampaignFolder;
import io.burnlaw.campaign.reading.SurfaceFile;
import io.burnlaw.grain.Grains;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Spelling;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Reads what is fired, burnt by hand or burnt in a vessel; a firing's own grain keys go before the common ones.
 *
 * @param commonGrain  of firings that say nothing else
 * @param folder       of the scenario: surface tables lie below it
 * @param problems     gets what is wrong with them
 */
record FiringPlans(
        Map<String, Scenario.Propellant> propellants,
        long seed,
        Block commonGrain,
        CampaignFolder folder,
        List<Problem> problems) {

    Optional<Scenario.PlannedFiring> firing(String id, Block block) {
        Optional<Scenario.Propellant> propellant = propellant(block);
        double throat = ScenarioReader.needed(block, "throat", Dimension.LENGTH, "8.0 mm");
        int before = problems.size();
        GrainDescription grain = grain(block);
        if (problems.size() > before) {
            return Optional.empty();
        }
        Grains.of(grain)
                .reasons()
                .forEach(reason -> block.wrong(
                        block.has("kind") ? "kind" : "throat",
                        "this grain cannot exist: " + reason,
                        "",
                        "the dimensions of a grain, here or below grain:",
                        "correct them"));
        Optional<Scenario.PlannedFiring> planned = propellant.map(known -> new Scenario.PlannedFiring(
                id,
                known,
                grain,
                throat,
                length(block, "throat_after"),
                length(block, "exit"),
                ScenarioReader.value(block.positive("temperature", Dimension.TEMPERATURE)),
                block.number("igniter", 0, 1000).orElse(1),
                starter(block),
                ScenarioReader.value(block.measured("core_offset", Dimension.LENGTH)),
                ScenarioReader.value(block.positive("sample_interval", Dimension.TIME)),
                block.choice("sensors", Recorder.Sensors.class),
                block.share("timed", 0, 0.5),
                faults(block.block("faults", FaultKey.keys())),
                written(block.block("logged", ScenarioKeys.GRAIN)),
                block.text("use"),
                block.text("note")));
        length(block, "exit").ifPresent(exit -> {
            if (exit < throat) {
                block.wrong("exit", "the exit is narrower than the throat", "", "at least the throat", "correct it");
            }
        });
        return planned;
    }

    Optional<Scenario.PlannedPoint> point(String id, Block block) {
        double pressure = absolute(block);
        double length = ScenarioReader.needed(block, "length", Dimension.LENGTH, "50 mm");
        return propellant(block)
                .map(known -> new Scenario.PlannedPoint(
                        id,
                        known,
                        pressure,
                        length,
                        ScenarioReader.value(block.positive("temperature", Dimension.TEMPERATURE)),
                        block.text("note")));
    }

    Optional<Scenario.PlannedStrand> strand(String id, Block block) {
        double pressure = absolute(block);
        double length = ScenarioReader.needed(block, "length", Dimension.LENGTH, "50 mm");
        double rise = ScenarioReader.needed(block, "rise", Dimension.PRESSURE, "0.2 MPa");
        return propellant(block)
                .map(known -> new Scenario.PlannedStrand(
                        id,
                        known,
                        pressure,
                        length,
                        rise,
                        block.flag("wires", false),
                        ScenarioReader.value(block.positive("temperature", Dimension.TEMPERATURE)),
                        block.text("note")));
    }

    private static Optional<Scenario.Starter> starter(Block block) {
        return block.positive("igniter_mass", Dimension.MASS)
                .map(mass -> new Scenario.Starter(
                        mass.value(),
                        ScenarioReader.value(block.positive("igniter_time", Dimension.TIME))
                                .orElse(0.1),
                        ScenarioReader.value(block.positive("flame_spread", Dimension.TIME))
                                .orElse(0.1),
                        block.flag("igniter_logged", false)));
    }

    private static Scenario.WrittenGrain written(Block block) {
        Map<String, Double> dimensions = new TreeMap<>();
        Map<String, Integer> counts = new TreeMap<>();
        for (String key : ScenarioKeys.GRAIN) {
            if (ScenarioKeys.LENGTHS.stream().anyMatch(key::startsWith)) {
                length(block, key).ifPresent(value -> dimensions.put(key, value));
            } else if (key.equals("segments") || key.equals("inhibited_ends")) {
                block.number(key, 0, 100).ifPresent(count -> counts.put(key, (int) Math.rint(count)));
            }
        }
        return new Scenario.WrittenGrain(block.text("kind"), counts, dimensions);
    }

    private static double absolute(Block block) {
        ScenarioReader.missing(block, "pressure", "a pressure with its unit", "3 MPa");
        return block.positivePressure("pressure", PressureKind.ABSOLUTE)
                .map(Measured::value)
                .orElse(1e6);
    }

    private Optional<Scenario.Propellant> propellant(Block block) {
        String id = block.required("formulation", "write   formulation: and the id of one");
        if (!id.isEmpty() && !propellants.containsKey(id)) {
            block.wrong(
                    "formulation",
                    "no such formulation is described",
                    id,
                    "one of " + String.join(", ", propellants.keySet()),
                    Spelling.mend(id, propellants.keySet(), "describe it below formulations:"));
        }
        Optional<String> batch = block.text("batch");
        return Optional.ofNullable(propellants.get(id))
                .map(known -> batch.map(name -> known.ofBatch(name, seed)).orElse(known));
    }

    private GrainDescription grain(Block block) {
        Map<String, Measured> dimensions = new TreeMap<>();
        for (String key : ScenarioKeys.GRAIN) {
            if (ScenarioKeys.LENGTHS.stream().anyMatch(key::startsWith)) {
                length(commonGrain, key).ifPresent(value -> dimensions.put(key, Measured.of(value)));
                length(block, key).ifPresent(value -> dimensions.put(key, Measured.of(value)));
            }
        }
        String kind = block.text("kind").or(() -> commonGrain.text("kind")).orElse("bates");
        Block named = block.has("surface_table") ? block : commonGrain;
        Optional<String> table = named.text("surface_table").filter(path -> kind.equals("table"));
        return new GrainDescription(
                kind,
                count(block, "segments", 1),
                count(block, "inhibited_ends", 0),
                dimensions,
                table.map(path -> surface(named, path)).orElse(List.of()),
                // The campaign's own copy lies beside its other tables.
                table.map(path -> "surface-" + path.replaceAll("[\\\\/]+", "-")));
    }

    private List<GrainDescription.SurfacePoint> surface(Block named, String path) {
        SurfaceFile file = SurfaceFile.read(path, folder, new ArrayList<>());
        problems.addAll(file.problems());
        file.notFound()
                .ifPresent(missing ->
                        named.wrong("surface_table", missing.what(), path, missing.expected(), missing.mend()));
        return file.points();
    }

    private int count(Block block, String key, int otherwise) {
        Block from = block.has(key) ? block : commonGrain;
        return (int) Math.rint(from.number(key, 0, 100).orElse(otherwise));
    }

    private static OptionalDouble length(Block block, String key) {
        return ScenarioReader.value(block.positive(key, Dimension.LENGTH));
    }

    private static Map<FaultKey, Double> faults(Block block) {
        Map<FaultKey, Double> faults = new EnumMap<>(FaultKey.class);
        for (FaultKey key : FaultKey.values()) {
            OptionalDouble value = switch (key.dimension()) {
                case COUNT -> block.number(key.key(), 0, 1e6);
                case FRACTION -> block.share(key.key(), 0, 10);
                default -> ScenarioReader.value(block.measured(key.key(), key.dimension()));
            };
            value.ifPresent(known -> faults.put(key, known));
        }
        return faults;
    }
}
