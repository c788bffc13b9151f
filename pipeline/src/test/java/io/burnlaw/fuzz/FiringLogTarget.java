package io.burnlaw.fuzz;

import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.grain.Grains;
import java.util.Map;

/** The firing log of a campaign that is well otherwise. */
public final class FiringLogTarget {

    private static final Scratch SCRATCH = new Scratch(Map.of(
            "campaign.yaml",
            """
            format: burnlaw-campaign/1
            title: Invented
            ambient_pressure: 101.3 kPa
            formulations:
              base: {title: Invented, density: 1.8 g/cm3}
            trace: {pressure_kind: gauge}
            """,
            "t.csv",
            "time [s],pressure [MPa]\n0,0\n",
            "s.csv",
            "web [mm],area [mm2]\n0,100\n5,0\n"));

    private FiringLogTarget() {}

    /**
     * Reads the bytes.
     *
     * @param data any
     */
    public static void fuzzerTestOneInput(byte[] data) {
        SCRATCH.write("firings.csv", data);
        read(SCRATCH);
    }

    static void read(Scratch scratch) {
        CampaignReader.read(scratch.folder())
                .match(
                        read -> {
                            read.firings().forEach(firing -> Grains.of(firing.grain()));
                            return read.unusableRows().stream()
                                    .flatMap(row -> row.problems().stream())
                                    .mapToInt(problem -> problem.text().length())
                                    .sum();
                        },
                        unusable -> unusable.stream()
                                .map(Problem::text)
                                .mapToInt(String::length)
                                .sum());
    }
}
