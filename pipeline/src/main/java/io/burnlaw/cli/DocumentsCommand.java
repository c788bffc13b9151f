package io.burnlaw.cli;

import io.burnlaw.campaign.Problem;
import io.burnlaw.cli.Burnlaw.ExitCode;
import io.burnlaw.finding.Outcome;
import io.burnlaw.publish.reading.PublishedSource;
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
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A command that makes a new document of published ones. */
abstract class DocumentsCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "DOCUMENT",
            arity = "1..*",
            description = "burnlaw.json, an index.html that carries it, or the folder of a report")
    private List<Path> files;

    @Option(
            names = "--reproducible",
            description = "leave out the creation time, so that the same input gives the same bytes")
    private boolean reproducible;

    @ArgGroup
    private Target target = new Target();

    @Mixin
    private UnitsOption units;

    /** Where the new document goes. */
    private static final class Target {

        @Option(
                names = {"-o", "--output"},
                paramLabel = "FOLDER",
                description = "write a report as well")
        private Optional<Path> folder = Optional.empty();

        @Option(names = "--json", description = "print the document and nothing else")
        private boolean json;
    }

    /**
     * The new document.
     *
     * @param code     what it means for the exit code
     * @param words    prints it for a person
     */
    record Made(Characterization document, ExitCode code, Consumer<PrintWriter> words) {}

    /**
     * Makes it.
     *
     * @param created when, ISO 8601 with zone; empty where the document is to be reproducible
     * @return the document, or why there is none
     */
    abstract Outcome<Made, Problem> of(List<PublishedSource> sources, Optional<String> created);

    @Override
    public final Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        return sources(err)
                .map(sources -> of(sources, created(reproducible)).match(this::give, problems -> {
                    ProblemList.print(problems, err);
                    return ExitCode.UNUSABLE;
                }))
                .orElse(ExitCode.UNUSABLE)
                .number();
    }

    /** {@return the time of making, ISO 8601 with zone; empty where the document is to be reproducible} */
    static Optional<String> created(boolean reproducible) {
        return reproducible
                ? Optional.empty()
                : Optional.of(Instant.now().truncatedTo(ChronoUnit.SECONDS).toString());
    }

    CommandSpec spec() {
        return spec;
    }

    /** Reads the documents; what is wrong with them is printed. Empty where one cannot be read. */
    private Optional<List<PublishedSource>> sources(PrintWriter err) {
        List<PublishedSource> sources = new ArrayList<>();
        for (Path file : files) {
            if (Files.exists(file.resolve("campaign.yaml"))) {
                err.println(Terminal.safe(file + ": this is a campaign, not a report: try   burnlaw run " + file));
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

    private ExitCode give(Made made) {
        PrintWriter out = spec.commandLine().getOut();
        if (target.json) {
            out.print(DocumentFile.text(made.document()));
            out.flush();
            return made.code();
        }
        if (target.folder.isPresent()) {
            try {
                ReportWriter.write(
                        made.document(), target.folder.get(), ReportWriter.Options.EVERYTHING.withUnits(units.units()));
            } catch (IOException failed) {
                spec.commandLine().getErr().println(Terminal.safe("burnlaw: " + failed.getMessage()));
                return ExitCode.NOT_WRITTEN;
            }
        }
        made.words().accept(units.to(out));
        target.folder.ifPresent(written -> out.println(Terminal.safe("written: " + written.resolve("index.html"))));
        return made.code();
    }
}
