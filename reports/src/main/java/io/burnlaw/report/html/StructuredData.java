package io.burnlaw.report.html;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.Formulation;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What search engines and catalogues read: the campaign as a Dataset of schema.org, in JSON-LD. */
final class StructuredData {

    private StructuredData() {}

    static String of(Characterization document) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("@context", "https://schema.org");
        data.put("@type", "Dataset");
        data.put("name", document.campaign().title());
        data.put("description", description(document));
        if (document.campaign().preparedBy() != null) {
            data.put(
                    "creator",
                    new TreeMap<>(Map.of(
                            "@type", "Organization", "name", document.campaign().preparedBy())));
        }
        if (document.campaign().licence() != null) {
            data.put(
                    "license",
                    "https://spdx.org/licenses/" + document.campaign().licence());
        }
        if (document.created() != null) {
            data.put("dateCreated", document.created());
        }
        data.put("isAccessibleForFree", true);
        data.put("measurementTechnique", document.campaign().reductionMethod());
        data.put(
                "variableMeasured",
                List.of(
                        variable("burning rate", "mm/s"),
                        variable("absolute chamber pressure", "MPa"),
                        variable("pressure exponent", "1")));
        data.put(
                "distribution",
                List.of(
                        download("burnlaw.json", "application/json"),
                        download("rates.csv", "text/csv"),
                        download("laws.csv", "text/csv")));
        return DocumentFile.text(data);
    }

    private static String description(Characterization document) {
        List<String> sentences = new ArrayList<>();
        sentences.add("Burning-rate laws from " + document.firings().size() + " firings.");
        for (Formulation formulation : document.formulations()) {
            sentences.add(formulation.verdict());
        }
        return String.join(" ", sentences);
    }

    private static Map<String, Object> variable(String name, String unit) {
        Map<String, Object> variable = new LinkedHashMap<>();
        variable.put("@type", "PropertyValue");
        variable.put("name", name);
        variable.put("unitText", unit);
        return variable;
    }

    private static Map<String, Object> download(String file, String type) {
        Map<String, Object> download = new LinkedHashMap<>();
        download.put("@type", "DataDownload");
        download.put("contentUrl", file);
        download.put("encodingFormat", type);
        return download;
    }
}
