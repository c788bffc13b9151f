package io.burnlaw.report.catalogue;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.DocumentFile;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** CITATION.cff: how to cite the report, in the Citation File Format 1.2.0 (Druskat et al. 2021). */
public final class CitationFile {

    /** Name of the file. */
    public static final String FILE = "CITATION.cff";

    /** Licences that the format's own list has and that data are published under; it refuses any other. */
    private static final Pattern LICENCES = Pattern.compile(
            "CC0-1\\.0|CC-BY(-NC)?(-ND|-SA)?-[1-4]\\.0|ODbL-1\\.0|ODC-By-1\\.0|PDDL-1\\.0|CDLA-(Permissive|Sharing)-1\\.0"
                    + "|MIT|Apache-2\\.0|BSD-[23]-Clause");

    private CitationFile() {}

    /**
     * Writes the citation.
     *
     * @param checksum SHA-256 of burnlaw.json
     * @return YAML; empty where nobody is stated who prepared the report, since the format demands an author
     */
    public static Optional<String> of(Characterization document, String checksum) {
        return author(document).map(author -> text(document, checksum, author));
    }

    /** {@return whom to cite: who prepared it; empty where that is not stated, and then there is no citation} */
    public static Optional<String> author(Characterization document) {
        return Optional.ofNullable(document.campaign().preparedBy()).filter(author -> !author.isBlank());
    }

    private static String text(Characterization document, String checksum, String author) {
        String licence = document.campaign().licence();
        boolean listed = licence != null && LICENCES.matcher(licence).matches();
        String description = DatasetFacts.description(document);
        Map<String, String> members = new LinkedHashMap<>();
        members.put("cff-version", quoted("1.2.0"));
        members.put("message", quoted("If you use these data, please cite them as below."));
        members.put("type", quoted("dataset"));
        members.put("title", quoted(document.campaign().title()));
        members.put("abstract", quoted(licence == null || listed ? description : description + " Licence: " + licence));
        members.put("authors", "\n  - name: " + quoted(author));
        members.put(
                "identifiers",
                "\n  - type: \"other\"\n    value: " + quoted("sha256:" + checksum)
                        + "\n    description: \"SHA-256 of burnlaw.json\"");
        members.put("version", quoted(DatasetFacts.version(document, checksum)));
        DatasetFacts.created(document)
                .ifPresent(created -> members.put("date-released", quoted(created.substring(0, 10))));
        if (listed) {
            members.put("license", quoted(licence));
        }
        return members.entrySet().stream()
                .map(each ->
                        each.getKey() + ":" + (each.getValue().startsWith("\n") ? "" : " ") + each.getValue() + "\n")
                .collect(Collectors.joining());
    }

    /** A text in JSON is the same text in YAML 1.2. */
    private static String quoted(String text) {
        return DocumentFile.text(text).strip();
    }
}
