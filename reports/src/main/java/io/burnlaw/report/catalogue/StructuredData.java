package io.burnlaw.report.catalogue;

import static io.burnlaw.report.catalogue.DatasetFacts.entity;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Coefficients;
import io.burnlaw.report.document.DocumentFile;
import java.util.List;
import java.util.Map;

/** What search engines and catalogues read in the page: the campaign as a Dataset of schema.org, in JSON-LD. */
public final class StructuredData {

    private StructuredData() {}

    /**
     * Describes a report.
     *
     * @param checksum SHA-256 of burnlaw.json, by which this making of the report is known
     * @return JSON-LD that may stand in a script element
     */
    public static String of(Characterization document, String checksum) {
        Map<String, Object> data = entity(null, "Dataset", document.campaign().title());
        data.put("@context", "https://schema.org");
        data.put("description", DatasetFacts.description(document));
        data.put("identifier", DatasetFacts.identifier(checksum));
        data.put("version", DatasetFacts.version(document, checksum));
        CitationFile.author(document).ifPresent(author -> data.put("creator", entity(null, "Organization", author)));
        DatasetFacts.licence(document).ifPresent(licence -> data.put("license", licence));
        DatasetFacts.created(document).ifPresent(created -> data.put("dateCreated", created));
        data.put("isAccessibleForFree", true);
        data.put("measurementTechnique", document.campaign().reductionMethod());
        data.put("variableMeasured", DatasetFacts.values(document));
        data.put(
                "distribution",
                List.of(
                        download("burnlaw.json", "application/json"),
                        download(Coefficients.FILE, "application/json"),
                        download("rates.csv", "text/csv"),
                        download("laws.csv", "text/csv")));
        return DocumentFile.text(data);
    }

    private static Map<String, Object> download(String file, String type) {
        Map<String, Object> download = entity(null, "DataDownload", null);
        download.put("contentUrl", file);
        download.put("encodingFormat", type);
        return download;
    }
}
