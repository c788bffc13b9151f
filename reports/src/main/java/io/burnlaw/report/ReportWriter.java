package io.burnlaw.report;

import io.burnlaw.report.catalogue.CitationFile;
import io.burnlaw.report.catalogue.ResearchCrate;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Coefficients;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.html.ReportFiles;
import io.burnlaw.report.html.ReportPages;
import io.burnlaw.report.html.ReportWorkers;
import io.burnlaw.report.table.LawTable;
import io.burnlaw.report.table.RateTable;
import io.burnlaw.report.table.TypedTable;
import io.burnlaw.report.wording.ShownUnits;
import java.io.ByteArrayOutputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.Future;

/** Writes the folder of a report: the document, the tables, the pages and the pictures. */
public final class ReportWriter {

    /**
     * What to write.
     *
     * @param pages   whether pages and pictures are wanted beside the data
     * @param workers threads that write, at least 1
     * @param units   that a page shows when it is opened, until its reader chooses others
     */
    public record Options(boolean pages, int workers, ShownUnits units) {

        /** Everything. */
        public static final Options EVERYTHING =
                new Options(true, Runtime.getRuntime().availableProcessors(), ShownUnits.MPA);

        /** burnlaw.json and the tables only. */
        public static final Options DATA_ONLY =
                new Options(false, Runtime.getRuntime().availableProcessors(), ShownUnits.MPA);

        /**
         * The same by other threads.
         *
         * @param other how many, at least 1
         */
        public Options withWorkers(int other) {
            return new Options(pages, other, units);
        }

        /** The same in other units. */
        public Options withUnits(ShownUnits other) {
            return new Options(pages, workers, other);
        }
    }

    private ReportWriter() {}

    /**
     * Loads what a report needs, on a thread of its own. Nothing depends on it: whoever writes without it, or before it has
     * ended, waits for the same things then.
     */
    public static void prepare() {
        Thread ahead = new Thread(
                () -> {
                    DocumentFile.prepare();
                    LawTable.prepare();
                    ReportPages.prepare();
                },
                "prepare");
        ahead.setDaemon(true);
        // what is wrong with the program is said where it is needed
        ahead.setUncaughtExceptionHandler((thread, fault) -> {});
        ahead.start();
    }

    /**
     * Writes a report in the place of the one that may be there.
     *
     * @param folder where; made if it is not there, replaced whole if it holds a report
     * @throws IOException if the folder cannot be written, or holds something that is no report; its message is a
     *                     sentence that can be shown; whatever was in the folder before is there unchanged
     * @throws IllegalArgumentException if the document holds NaN or infinity: a fault of the caller
     */
    public static void write(Characterization document, Path folder, Options options) throws IOException {
        OwnFolder.replace(
                folder,
                OwnFolder.Kind.REPORT,
                fresh -> write(document, options, (path, body) -> {
                    try (OutputStream out = fresh.create(path)) {
                        body.writeTo(out);
                    }
                }));
    }

    /** {@return the files of a report, text by path below its folder, in the order of the paths} */
    public static Map<String, String> files(Characterization document, Options options) {
        Map<String, String> files = new ConcurrentSkipListMap<>();
        try {
            write(document, options, (path, body) -> {
                ByteArrayOutputStream bytes = new ByteArrayOutputStream();
                body.writeTo(bytes);
                files.put(path, bytes.toString(StandardCharsets.UTF_8));
            });
        } catch (IOException e) {
            throw new IllegalStateException("writing into the memory", e);
        }
        return files;
    }

    private static void write(Characterization document, Options options, ReportFiles files) throws IOException {
        SortedMap<String, ResearchCrate.Part> parts = new ConcurrentSkipListMap<>();
        ReportFiles listed = (path, body) -> files.write(path, out -> parts.put(path, copied(path, body, out)));
        List<TypedTable<?>> tables = List.of(RateTable.of(document), LawTable.of(document));
        String checksum;
        try (ReportWorkers workers = new ReportWorkers(options.workers())) {
            Future<String> documentSum = workers.start(() -> {
                json("burnlaw.json", document, listed);
                return parts.get("burnlaw.json").sha256();
            });
            Future<Boolean> written = workers.start(() -> writeTables(document, tables, listed));
            if (options.pages()) {
                ReportPages.write(document, tables, options.units(), documentSum, listed, workers);
            }
            checksum = ReportWorkers.result(documentSum);
            ReportWorkers.result(written);
        }
        text(CitationFile.FILE, CitationFile.of(document, checksum), listed);
        text(ResearchCrate.FILE, ResearchCrate.of(document, parts, tables, OwnFolder.Kind.REPORT.list()), files);
    }

    private static void text(String path, Optional<String> text, ReportFiles files) throws IOException {
        if (text.isPresent()) {
            files.write(path, out -> out.write(DocumentFile.bytes(text.get())));
        }
    }

    /** Files in folders are many and have their checksums in the list of the folder; here only their names are wanted. */
    private static ResearchCrate.Part copied(String path, ReportFiles.Body body, OutputStream out) throws IOException {
        if (path.contains("/")) {
            body.writeTo(out);
            return new ResearchCrate.Part(0, "");
        }
        Measured measured = new Measured(out);
        body.writeTo(measured);
        return measured.part();
    }

    /** Counts and digests what passes. */
    private static final class Measured extends FilterOutputStream {

        private final MessageDigest checksum = OwnFiles.sha256();
        private long bytes;

        Measured(OutputStream out) {
            super(out);
        }

        @Override
        public void write(int b) throws IOException {
            out.write(b);
            checksum.update((byte) b);
            bytes++;
        }

        @Override
        public void write(byte[] from, int start, int count) throws IOException {
            out.write(from, start, count);
            checksum.update(from, start, count);
            bytes += count;
        }

        ResearchCrate.Part part() {
            return new ResearchCrate.Part(bytes, HexFormat.of().formatHex(checksum.digest()));
        }
    }

    private static void json(String path, Object document, ReportFiles files) throws IOException {
        files.write(path, out -> {
            Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
            DocumentFile.write(document, text);
            text.flush();
        });
    }

    private static boolean writeTables(Characterization document, List<TypedTable<?>> tables, ReportFiles files)
            throws IOException {
        json(Coefficients.FILE, Coefficients.of(document), files);
        for (TypedTable<?> table : tables) {
            files.write(table.fileName(), out -> {
                Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
                table.write(text);
                text.flush();
            });
            files.write(table.fileName() + "-metadata.json", out -> out.write(DocumentFile.bytes(table.metadata())));
        }
        return true;
    }
}
