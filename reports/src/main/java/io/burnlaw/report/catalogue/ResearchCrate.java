package io.burnlaw.report.catalogue;

import static io.burnlaw.report.catalogue.DatasetFacts.entity;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.table.TypedTable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;

/**
 * ro-crate-metadata.json: the folder of a report as a research object, RO-Crate Metadata Specification 1.1
 * (https://w3id.org/ro/crate/1.1).
 */
public final class ResearchCrate {

    /** Name of the file. */
    public static final String FILE = "ro-crate-metadata.json";

    private static final Map<String, String> FOLDERS = Map.of(
            "firings", "a page for each firing: the trace, its events, its reduction, its findings",
            "charts", "the pictures of the pages as SVG");

    /** Media type and contents by name. */
    private static final Map<String, List<String>> FILES = Map.of(
            "burnlaw.json",
            List.of("application/json", "the document, with all data"),
            "coefficients.json",
            List.of("application/json", "the laws to design with"),
            "rates.csv",
            List.of("text/csv", "the rate-pressure points"),
            "rates.csv-metadata.json",
            List.of("application/csvm+json", "the columns of rates.csv"),
            "laws.csv",
            List.of("text/csv", "the fitted laws"),
            "laws.csv-metadata.json",
            List.of("application/csvm+json", "the columns of laws.csv"),
            "index.html",
            List.of("text/html", "the report for people"),
            CitationFile.FILE,
            List.of("application/yaml", "how to cite the report"));

    private final Characterization document;
    private final List<Map<String, Object>> graph = new ArrayList<>();

    private ResearchCrate(Characterization document) {
        this.document = document;
    }

    /** A file of the report. */
    public record Part(long bytes, String sha256) {}

    /**
     * Describes a report.
     *
     * @param parts files of the report by their path below its folder
     * @param list  name of the list of all files with their checksums
     * @return JSON-LD; empty in a reproducible report, which has no date: the specification demands one
     */
    public static Optional<String> of(
            Characterization document, SortedMap<String, Part> parts, List<TypedTable<?>> tables, String list) {
        return DatasetFacts.created(document)
                .map(created -> new ResearchCrate(document).text(created, parts, tables, list));
    }

    /** {@return whether a report has what the specification demands: whether it says when it was made} */
    public static boolean isPossible(Characterization document) {
        return DatasetFacts.created(document).isPresent();
    }

    private String text(String created, SortedMap<String, Part> parts, List<TypedTable<?>> tables, String list) {
        String checksum = parts.get("burnlaw.json").sha256();
        Map<String, Object> descriptor = add(entity(FILE, "CreativeWork", "the description of this folder"));
        descriptor.put("conformsTo", to("https://w3id.org/ro/crate/1.1"));
        descriptor.put("about", to("./"));
        Map<String, Object> root =
                add(entity("./", "Dataset", document.campaign().title()));
        root.put("description", DatasetFacts.description(document));
        root.put("datePublished", created);
        root.put("license", licence());
        root.put("version", DatasetFacts.version(document, checksum));
        Map<String, Object> identifier = DatasetFacts.identifier(checksum);
        root.put("identifier", reference("#identifier", identifier));
        CitationFile.author(document).ifPresent(author -> {
            root.put("author", to("#author"));
            add(entity("#author", "Organization", author));
        });
        root.put("measurementTechnique", document.campaign().reductionMethod());
        root.put("variableMeasured", references("#law-", DatasetFacts.values(document)));
        List<Map<String, Object>> has = new ArrayList<>();
        root.put("hasPart", has);
        FOLDERS.entrySet().stream().sorted(Map.Entry.comparingByKey()).forEach(folder -> {
            if (parts.keySet().stream().anyMatch(path -> path.startsWith(folder.getKey() + "/"))) {
                has.add(to(folder.getKey() + "/"));
                add(entity(folder.getKey() + "/", "Dataset", folder.getValue()));
            }
        });
        parts.forEach((path, part) -> {
            if (FILES.containsKey(path)) {
                has.add(to(path));
                Map<String, Object> file = file(path, FILES.get(path));
                file.put("contentSize", Long.toString(part.bytes()));
                file.put("sha256", part.sha256());
                tables.stream()
                        .filter(table -> table.fileName().equals(path))
                        .forEach(table -> file.put(
                                "variableMeasured", references("#" + path + "-", DatasetFacts.columns(table))));
            }
        });
        has.add(to(list));
        file(list, List.of("text/plain", "SHA-256 of every file of the report, as sha256sum checks them"));
        made(created);
        Map<String, Object> crate = new LinkedHashMap<>();
        crate.put(
                "@context",
                List.of("https://w3id.org/ro/crate/1.1/context", Map.of("sha256", "http://schema.org/sha256")));
        crate.put("@graph", graph);
        return DocumentFile.text(crate);
    }

    /** A licence that nobody stated is not made up: the specification allows words in its place. */
    private Object licence() {
        Optional<String> page = DatasetFacts.licence(document);
        String stated = document.campaign().licence();
        page.ifPresent(id -> add(entity(id, "CreativeWork", stated)).put("description", "the licence " + stated));
        return page.<Object>map(ResearchCrate::to)
                .orElse(stated == null ? "No licence is stated. Ask who made the data before you use them." : stated);
    }

    private void made(String created) {
        Map<String, Object> making = add(entity("#making", "CreateAction", "making the report"));
        making.put("instrument", to("#program"));
        making.put("result", to("./"));
        making.put("endTime", created);
        add(entity("#program", "SoftwareApplication", document.generator().name()))
                .put("version", document.generator().version());
    }

    private Map<String, Object> file(String path, List<String> typeAndContents) {
        Map<String, Object> file = add(entity(path, "File", typeAndContents.get(1)));
        file.put("encodingFormat", typeAndContents.get(0));
        return file;
    }

    private Map<String, Object> add(Map<String, Object> entity) {
        graph.add(entity);
        return entity;
    }

    private List<Map<String, Object>> references(String prefix, List<Map<String, Object>> entities) {
        List<Map<String, Object>> all = new ArrayList<>();
        for (Map<String, Object> entity : entities) {
            all.add(reference(prefix + (all.size() + 1), entity));
        }
        return all;
    }

    private Map<String, Object> reference(String id, Map<String, Object> entity) {
        Map<String, Object> named = new LinkedHashMap<>(Map.of("@id", id));
        named.putAll(entity);
        add(named);
        return to(id);
    }

    private static Map<String, Object> to(String id) {
        return Map.of("@id", id);
    }
}
