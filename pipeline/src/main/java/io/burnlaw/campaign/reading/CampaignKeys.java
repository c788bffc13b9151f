package io.burnlaw.campaign.reading;

import java.util.List;

/** The keys of campaign.yaml. The published schema has the same ones; a test compares the two. */
final class CampaignKeys {

    static final String FORMAT = "burnlaw-campaign/1";

    static final List<String> CAMPAIGN =
            List.of(("format title prepared_by licence note ambient_pressure reference_temperature formulations "
                            + "trace hardware reduction fit")
                    .split(" "));

    static final List<String> FORMULATION =
            List.of(("title density baseline compare_with additive additive_fraction specific_heat_ratio "
                            + "characteristic_velocity")
                    .split(" "));

    static final List<String> TRACE =
            List.of("time", "sampling", "pressure", "thrust", "pressure_kind", "calibration", "pressure_uncertainty");

    static final List<String> HARDWARE =
            List.of("case_pressure_limit", "safety_factor", "igniter_mass", "igniter_gas_fraction");

    static final List<String> REDUCTION = List.of("method", "burnout_event", "ignition_threshold", "end_threshold");

    static final List<String> FIT = List.of("confidence", "seed", "weighting", "pressure_errors", "robust");

    private CampaignKeys() {}
}
