package io.burnlaw.characterize;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.simulation.MadeCampaign;
import io.burnlaw.simulation.Scenario;
import io.burnlaw.simulation.ScenarioReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Campaigns that are made from a scenario, written, read and characterized. */
final class MadeStand {

    private static final String PROPELLANT = """
            format: burnlaw-scenario/1
            title: A stand, invented
            seed: 11
            ambient_pressure: 101 kPa absolute
            reference_temperature: 20 degC
            formulations:
              p:
                density: 1.79 g/cm3
                characteristic_velocity: 890 m/s
                rate_change_per_10_kelvin: 2 %
                law:
                  all: {rate: 5 mm/s, at: 1 MPa, exponent: 0.36}
            grain: {kind: bates, segments: 2, outer_diameter: 48 mm, core_diameter: 20 mm, segment_length: 70 mm}
            """;

    private MadeStand() {}

    /** The scenario of a propellant of r = 5.0 P^0.36 (mm/s, MPa) at 20 degC. */
    static String scenario(String instruments, String logger, String... firings) {
        StringBuilder text = new StringBuilder(PROPELLANT)
                .append("instruments: {")
                .append(instruments)
                .append("}\n")
                .append("logger: {")
                .append(logger)
                .append("}\nfirings:\n");
        for (int i = 0; i < firings.length; i++) {
            text.append("  F")
                    .append(i)
                    .append(": {formulation: p, ")
                    .append(firings[i])
                    .append("}\n");
        }
        return text.toString();
    }

    static CampaignResult characterized(Path folder, String scenario) throws IOException {
        Path file = Files.writeString(folder.resolve("scenario.yaml"), scenario);
        Scenario reading = ScenarioReader.read(file).orElseThrow();
        Path to = folder.resolve("campaign");
        MadeCampaign.of(reading).writeTo(to);
        Campaign read = CampaignReader.read(to).orElseThrow();
        return Characterizer.characterize(read, 2, Progress.silent());
    }
}
