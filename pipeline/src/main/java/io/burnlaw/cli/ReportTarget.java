package io.burnlaw.cli;

import io.burnlaw.publish.PublishedSource;
import io.burnlaw.report.ReportWriter;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.DocumentReading;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** From published documents to a new one: what the commands share that read several of them. */
final class ReportTarget {

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FOLDER",
            description = "write a report as well")
    private Optional<Path> folder = Optional.empty();

    @Option(names = "--json", description = "print the document, and nothing else")
    private boolean json;

    /**
     * Reads documents; what is wrong with them is printed.
     *
     * @param files burnlaw.json, pages that carry it, or folders of reports
     * @param err   for what is wrong
     * @return all of them; empty where one cannot be read
     */
    static Optional<List<PublishedSource>> read(List<Path> files, PrintWriter err) {
        List<PublishedSource> sources = new ArrayList<>();
        for (Path file : files) {
            if (Files.exists(file.resolve("campaign.yaml"))) {
                err.println(Terminal.safe(file + ": this is a campaign and no report: try   burnlaw run " + file));
                continue;
            }
            DocumentReading reading = OutputFolders.document(file);
            if (reading instanceof DocumentReading.Read read) {
                sources.add(new PublishedSource(read.document(), read.file()));
            } else {
                err.println(Terminal.safe(((DocumentReading.Refused) reading).text()));
            }
        }
        return sources.size() == files.size() ? Optional.of(sources) : Optional.empty();
    }

    /**
     * The time of making.
     *
     * @param reproducible whether it is left out
     * @return ISO 8601 with zone
     */
    static Optional<String> created(boolean reproducible) {
        return reproducible
                ? Optional.empty()
                : Optional.of(Instant.now().truncatedTo(ChronoUnit.SECONDS).toString());
    }

    /**
     * Writes or prints the new document.
     *
     * @param document as made
     * @param units    in which it is told
     * @param spec     of the command, for its streams
     * @param code     what the document means for the exit code
     * @param answer   prints it for a person
     * @return the code, or that it could not be written
     */
    ExitCode tell(
            Characterization document,
            UnitsOption units,
            CommandSpec spec,
            ExitCode code,
            Consumer<PrintWriter> answer) {
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.print(DocumentFile.text(document));
            out.flush();
            return code;
        }
        if (folder.isPresent()) {
            try {
                ReportWriter.write(document, folder.get(), ReportWriter.Options.EVERYTHING.withUnits(units.units()));
            } catch (IOException failed) {
                spec.commandLine().getErr().println(Terminal.safe("burnlaw: " + failed.getMessage()));
                return ExitCode.NOT_WRITTEN;
            }
        }
        answer.accept(units.to(out));
        folder.ifPresent(written -> out.println(Terminal.safe("written: " + written.resolve("index.html"))));
        return code;
    }
}
