package io.burnlaw.simulation;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A whole campaign folder in memory: the same scenario gives the same bytes.
 *
 * @param files path below the folder, with {@code /}, to its bytes; in the order in which they are written
 */
public record MadeCampaign(Map<String, byte[]> files) {

    public MadeCampaign {
        files = Collections.unmodifiableMap(new LinkedHashMap<>(files));
    }

    /**
     * Fires everything that a scenario plans, and measures it.
     *
     * @param scenario as read
     * @return the folder
     */
    public static MadeCampaign of(Scenario scenario) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        Measurement measurement = new Measurement(scenario);
        TraceFile traceFile = new TraceFile(scenario);
        List<TrueFiring> firings = new ArrayList<>();
        Map<String, String> traces = new LinkedHashMap<>();
        for (Scenario.PlannedFiring plan : scenario.firings()) {
            TrueFiring firing = TrueFiring.of(scenario, plan);
            firings.add(firing);
            if (plan.timed().isEmpty()) {
                traces.put("traces/" + plan.id() + ".csv", traceFile.text(measurement.measured(firing)));
            }
        }
        Map<Scenario.PlannedStrand, Vessel> strands = new LinkedHashMap<>();
        for (Scenario.PlannedStrand strand : scenario.strands()) {
            Vessel vessel = Vessel.of(scenario, strand);
            strands.put(strand, vessel);
            traces.put("traces/" + strand.id() + ".csv", traceFile.text(measurement.measured(vessel.trace())));
        }
        CampaignTables tables = new CampaignTables(scenario);
        put(files, "campaign.yaml", CampaignText.of(scenario));
        CsvText log = tables.firings(firings);
        CsvText points = tables.points();
        CsvText vessels = tables.strands(strands);
        putUnlessEmpty(files, "firings.csv", log);
        putUnlessEmpty(files, "points.csv", points);
        putUnlessEmpty(files, "strands.csv", vessels);
        for (Scenario.PlannedFiring plan : scenario.firings()) {
            plan.grain()
                    .tableName()
                    .ifPresent(path -> put(
                            files, path, CampaignTables.surface(plan.grain()).text()));
        }
        traces.forEach((path, text) -> put(files, path, text));
        put(files, "truth.yaml", TruthText.of(scenario, firings, strands));
        return new MadeCampaign(files);
    }

    /**
     * Writes the campaign.
     *
     * @param folder made if it is not there; files of the same names are overwritten
     * @throws IOException if it cannot be written
     */
    public void writeTo(Path folder) throws IOException {
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            Path path = folder.resolve(file.getKey());
            Files.createDirectories(path.getParent());
            Files.write(path, file.getValue());
        }
    }

    private static void putUnlessEmpty(Map<String, byte[]> files, String path, CsvText table) {
        if (!table.isEmpty()) {
            put(files, path, table.text());
        }
    }

    private static void put(Map<String, byte[]> files, String path, String text) {
        files.put(path, text.getBytes(StandardCharsets.UTF_8));
    }
}
