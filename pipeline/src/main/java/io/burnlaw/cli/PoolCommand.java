package io.burnlaw.cli;

import io.burnlaw.publish.PooledCampaigns;
import io.burnlaw.publish.PublishedSource;
import io.burnlaw.report.ReportWriter;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.DocumentReading;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Several campaigns of one formulation as one. */
@Command(
        name = "pool",
        mixinStandardHelpOptions = true,
        description = {
            "Makes one document of several campaigns of one formulation, from their published documents alone. Each batch,"
                    + " and each campaign that names none, counts as one casting: the law is that of the formulation, and"
                    + " says what the next casting will do.",
            ""
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "Examples:",
            "  burnlaw pool spring/burnlaw.json autumn/burnlaw.json -o pooled",
            "  burnlaw pool spring autumn --formulation date --json > pooled.json"
        })
final class PoolCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "DOCUMENT",
            arity = "1..*",
            description = "burnlaw.json, an index.html that carries it, or the folder of a report; two at least")
    private List<Path> files;

    @Option(
            names = "--formulation",
            paramLabel = "ID",
            description = "that is pooled; the only one that all documents have if absent")
    private Optional<String> formulation;

    @Option(
            names = "--reproducible",
            description = "leave the time of making out, so that the same input gives the same bytes")
    private boolean reproducible;

    @ArgGroup
    private Target target = new Target();

    /** Where more than the printed answer goes. */
    private static final class Target {

        @Option(
                names = {"-o", "--output"},
                paramLabel = "FOLDER",
                description = "write a report as well")
        private Optional<Path> folder = Optional.empty();

        @Option(names = "--json", description = "print the pooled document, and nothing else")
        private boolean json;
    }

    @Override
    public Integer call() {
        if (files.size() < 2) {
            throw new ParameterException(spec.commandLine(), "pool needs two documents or more");
        }
        PrintWriter err = spec.commandLine().getErr();
        List<PublishedSource> sources = new ArrayList<>();
        boolean refused = false;
        for (Path file : files) {
            DocumentReading reading = OutputFolders.document(file);
            if (reading instanceof DocumentReading.Read read) {
                sources.add(new PublishedSource(read.document(), read.file()));
            } else {
                err.println(Terminal.safe(((DocumentReading.Refused) reading).text()));
                refused = true;
            }
        }
        if (refused) {
            return ExitCode.UNUSABLE.number();
        }
        Optional<String> created = reproducible
                ? Optional.empty()
                : Optional.of(Instant.now().truncatedTo(ChronoUnit.SECONDS).toString());
        PooledCampaigns.Result result = PooledCampaigns.pool(sources, formulation, Version.number(), created);
        if (result instanceof PooledCampaigns.Result.Refused wrong) {
            ProblemList.print(wrong.problems(), err);
            return ExitCode.UNUSABLE.number();
        }
        return tell(((PooledCampaigns.Result.Pooled) result).document()).number();
    }

    private ExitCode tell(Characterization document) {
        PrintWriter out = spec.commandLine().getOut();
        if (target.json) {
            out.print(DocumentFile.text(document));
            out.flush();
            return ResultTable.exitCode(document);
        }
        if (target.folder.isPresent()) {
            try {
                ReportWriter.write(document, target.folder.get(), ReportWriter.Options.EVERYTHING);
            } catch (IOException failed) {
                spec.commandLine().getErr().println(Terminal.safe("burnlaw: " + failed.getMessage()));
                return ExitCode.NOT_WRITTEN;
            }
        }
        ResultTable.print(document, out);
        target.folder.ifPresent(folder -> out.println(Terminal.safe("written: " + folder.resolve("index.html"))));
        return ResultTable.exitCode(document);
    }
}
