package io.burnlaw.report.html;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.DocumentFile;
import java.util.LinkedHashMap;
import java.util.Map;

/** The pages and pictures of a report. */
public final class ReportPages {

    private static final TemplateEngine ENGINE =
            TemplateEngine.createPrecompiled(null, ContentType.Html, null, "io.burnlaw.report.html.template");

    private ReportPages() {}

    /**
     * Draws them.
     *
     * @param document the document
     * @return text by path below the report's folder
     */
    public static Map<String, String> of(Characterization document) {
        Map<String, String> files = new LinkedHashMap<>();
        StringOutput page = new StringOutput();
        ENGINE.render("index.jte", Map.of("document", document, "embedded", DocumentFile.text(document)), page);
        files.put("index.html", page.toString());
        return files;
    }
}
