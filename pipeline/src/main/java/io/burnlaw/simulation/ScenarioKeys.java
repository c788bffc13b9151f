package io.burnlaw.simulation;

import java.util.ArrayList;
import java.util.List;

/** The keys of a scenario file; docs/formats.md explains them. */
final class ScenarioKeys {

    static final String FORMAT = "burnlaw-scenario/1";

    static final List<String> SCENARIO =
            List.of(("format title note prepared_by licence seed ambient_pressure reference_temperature "
                            + "formulations hardware grain instruments logger firings points strands")
                    .split(" "));

    static final List<String> FORMULATION =
            List.of(("title density characteristic_velocity expected_characteristic_velocity specific_heat_ratio "
                            + "law rate_scatter batch_scatter velocity_scatter rate_change_per_10_kelvin baseline "
                            + "compare_with additive additive_fraction")
                    .split(" "));

    static final List<String> LAW = List.of("from", "rate", "at", "exponent");

    static final List<String> HARDWARE = List.of("case_pressure_limit", "safety_factor", "chamber_volume");

    static final List<String> LENGTHS = List.of("outer_diameter", "core_diameter", "rod_diameter", "segment_length");

    static final List<String> GRAIN = grain();

    static final List<String> INSTRUMENTS = List.of(
            "caliper", "scale", "density", "timer", "casting", "core_offset", "stated", "caliper_step", "not_logged");

    static final List<String> LOGGER =
            List.of(("sample_interval quiet_before quiet_after longest sensors time_unit pressure_unit "
                            + "thrust_unit pressure_kind noise thrust_noise zero_offset gain_error resolution "
                            + "thrust_efficiency thrust_resolution stand_period stand_damping sensor_class decimal_comma "
                            + "preamble")
                    .split(" "));

    static final List<String> FIRING = firing();

    static final List<String> POINT = List.of("formulation", "batch", "pressure", "length", "temperature", "note");

    static final List<String> STRAND =
            List.of("formulation", "batch", "pressure", "length", "rise", "wires", "temperature", "note");

    private ScenarioKeys() {}

    private static List<String> grain() {
        List<String> keys = new ArrayList<>(List.of("kind", "segments", "inhibited_ends", "surface_table"));
        for (String length : LENGTHS) {
            keys.add(length);
            for (int segment = 1; segment <= 6; segment++) {
                keys.add(length + "_" + segment);
            }
        }
        return List.copyOf(keys);
    }

    private static List<String> firing() {
        List<String> keys = new ArrayList<>(
                List.of(("formulation batch throat throat_after exit temperature igniter igniter_mass igniter_time "
                                + "flame_spread igniter_logged core_offset sample_interval sensors timed faults logged use note")
                        .split(" ")));
        keys.addAll(GRAIN);
        return List.copyOf(keys);
    }
}
