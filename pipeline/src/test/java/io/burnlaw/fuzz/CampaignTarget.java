package io.burnlaw.fuzz;

import java.util.Map;

/** The campaign.yaml over a table of points. */
public final class CampaignTarget {

    private static final Scratch SCRATCH = new Scratch(Map.of(
            "points.csv", "point,formulation,pressure [MPa],rate [mm/s],pressure_kind\nA,base,1.0,5.0,absolute\n"));

    private CampaignTarget() {}

    /**
     * Reads the bytes.
     *
     * @param data any
     */
    public static void fuzzerTestOneInput(byte[] data) {
        SCRATCH.write("campaign.yaml", data);
        FiringLogTarget.read(SCRATCH);
    }
}
