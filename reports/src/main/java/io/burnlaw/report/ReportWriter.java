package io.burnlaw.report;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.html.ReportPages;
import io.burnlaw.report.table.LawTable;
import io.burnlaw.report.table.PublishedTable;
import io.burnlaw.report.table.RateTable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Writes the folder of a report: the document, the tables, the pages and the pictures. */
public final class ReportWriter {

    /**
     * What to write.
     *
     * @param pages whether pages and pictures are wanted beside the data
     */
    public record Options(boolean pages) {

        /** Everything. */
        public static final Options EVERYTHING = new Options(true);

        /** burnlaw.json and the tables only. */
        public static final Options DATA_ONLY = new Options(false);
    }

    private ReportWriter() {}

    /**
     * Writes a report in the place of the one that may be there.
     *
     * @param document what to draw
     * @param folder   where; made if it is not there, replaced whole if it holds a report
     * @param options  what to write
     * @throws IOException if the folder cannot be written, or holds something that is no report; its message is a
     *                     sentence that can be shown; whatever was in the folder before is there unchanged
     * @throws IllegalArgumentException if the document holds NaN or infinity: a fault of the caller
     */
    public static void write(Characterization document, Path folder, Options options) throws IOException {
        // everything is drawn before the disk is touched: a fault in a chart leaves no trace there
        Map<String, String> files = files(document, options);
        ReportFolder.replace(folder, fresh -> {
            for (Map.Entry<String, String> file : files.entrySet()) {
                Path path = fresh.resolve(file.getKey());
                Files.createDirectories(path.getParent());
                Files.write(path, DocumentFile.bytes(file.getValue()));
            }
        });
    }

    /**
     * The files of a report, by their path below its folder.
     *
     * @param document what to draw
     * @param options  what to draw
     * @return text by path, in the order in which they are written
     */
    public static Map<String, String> files(Characterization document, Options options) {
        Map<String, String> files = new LinkedHashMap<>();
        files.put("burnlaw.json", DocumentFile.text(document));
        for (PublishedTable table : List.of(RateTable.of(document), LawTable.of(document))) {
            files.put(table.fileName(), table.csv());
            files.put(table.fileName() + "-metadata.json", table.metadata());
        }
        if (options.pages()) {
            files.putAll(ReportPages.of(document));
        }
        return files;
    }
}
