package io.burnlaw.simulation;

import io.burnlaw.ballistics.Recorder;
import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.reading.Block;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Spelling;
import io.burnlaw.quantity.Unit;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Reads what measures and what records; what is not stated is a perfect instrument, or a usual one where none exists. */
final class Equipment {

    private Equipment() {}

    static Scenario.Instruments instruments(Block block) {
        return new Scenario.Instruments(
                at(block, "caliper", Dimension.LENGTH, 0),
                at(block, "scale", Dimension.MASS, 0),
                at(block, "density", Dimension.DENSITY, 0),
                at(block, "timer", Dimension.TIME, 0),
                at(block, "casting", Dimension.LENGTH, 0),
                at(block, "core_offset", Dimension.LENGTH, 0),
                block.flag("stated", false),
                Math.max(1e-5, at(block, "caliper_step", Dimension.LENGTH, 1e-5)),
                unlogged(block));
    }

    private static List<String> unlogged(Block block) {
        List<String> columns = block.text("not_logged")
                .map(text -> List.of(text.strip().split("[,; ]+")))
                .orElse(List.of());
        columns.stream()
                .filter(column -> !CampaignTables.OPTIONAL.contains(column))
                .forEach(unknown -> block.wrong(
                        "not_logged",
                        "there is no such column to leave out",
                        unknown,
                        "one or more of " + String.join(", ", CampaignTables.OPTIONAL),
                        Spelling.mend(unknown, CampaignTables.OPTIONAL, "delete it")));
        return columns;
    }

    static Scenario.Logger logger(Block block) {
        return new Scenario.Logger(
                above(block, "sample_interval", 1e-3),
                above(block, "quiet_before", 0.3),
                above(block, "quiet_after", 0.4),
                above(block, "longest", 60),
                block.choice("sensors", Recorder.Sensors.class).orElse(Recorder.Sensors.PRESSURE),
                unit(block, "time_unit", Unit.SECOND),
                unit(block, "pressure_unit", Unit.MEGAPASCAL),
                unit(block, "thrust_unit", Unit.NEWTON),
                block.choice("pressure_kind", PressureKind.class).orElse(PressureKind.GAUGE),
                at(block, "noise", Dimension.PRESSURE, 0),
                at(block, "thrust_noise", Dimension.FORCE, 0),
                at(block, "zero_offset", Dimension.PRESSURE, 0),
                block.share("gain_error", 0, 0.2).orElse(0),
                at(block, "resolution", Dimension.PRESSURE, 0),
                block.share("thrust_efficiency", 0.3, 1).orElse(1),
                at(block, "thrust_resolution", Dimension.FORCE, 0),
                at(block, "stand_period", Dimension.TIME, 0),
                block.share("stand_damping", 0, 0.9).orElse(0.05),
                block.text("sensor_class"),
                block.flag("decimal_comma", false),
                block.flag("preamble", false));
    }

    private static double at(Block block, String key, Dimension dimension, double otherwise) {
        Optional<Measured> value = block.measured(key, dimension);
        if (value.isPresent() && value.get().value() < 0) {
            block.wrong(key, "the value is negative", "zero or more", "correct it");
        }
        return value.map(Measured::value).orElse(otherwise);
    }

    private static double above(Block block, String key, double otherwise) {
        return block.positive(key, Dimension.TIME).map(Measured::value).orElse(otherwise);
    }

    private static Unit unit(Block block, String key, Unit otherwise) {
        Optional<String> text = block.text(key);
        if (text.isEmpty()) {
            return otherwise;
        }
        Optional<Unit> unit = Unit.spelled(text.get()).filter(u -> u.dimension() == otherwise.dimension());
        if (unit.isEmpty()) {
            block.wrong(
                    key,
                    "this is not the unit of " + otherwise.dimension().noun(),
                    text.get(),
                    "one of "
                            + String.join(
                                    ", ",
                                    Arrays.stream(Unit.values())
                                            .filter(u -> u.dimension() == otherwise.dimension())
                                            .map(Unit::symbol)
                                            .toList()),
                    "write   " + otherwise.symbol());
        }
        return unit.orElse(otherwise);
    }
}
