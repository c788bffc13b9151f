package io.burnlaw.cli;

import io.burnlaw.publish.AcrossCampaigns;
import io.burnlaw.publish.FormulationChoice;
import io.burnlaw.publish.PublishedSource;
import io.burnlaw.report.ReportWriter;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Comparison;
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
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Compares propellants of several campaigns from their published documents. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        description = {
            "Says whether propellants of several campaigns differ, from their published documents alone: the baseline"
                    + " stands in the first document, the candidates in the others. A single document is compared"
                    + " within itself.",
            ""
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "Examples:",
            "  burnlaw compare spring/burnlaw.json autumn/burnlaw.json",
            "  burnlaw compare spring/index.html autumn/index.html winter/index.html",
            "  burnlaw compare spring/burnlaw.json autumn/burnlaw.json --baseline plain",
            "  burnlaw compare levels/burnlaw.json --baseline iron-1 --candidate iron-2",
            "  burnlaw compare spring/burnlaw.json autumn/burnlaw.json -o both"
        })
final class CompareCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "DOCUMENT",
            arity = "1..*",
            description = "burnlaw.json, or an index.html that carries it; the baseline's first")
    private List<Path> files;

    @Option(
            names = "--baseline",
            paramLabel = "ID",
            description = "formulation of the first document; if absent its only one, or the one marked as baseline")
    private Optional<String> baseline;

    @Option(
            names = "--candidate",
            paramLabel = "ID",
            description = "formulation of the other documents, may be given again; all of them if absent")
    private List<String> candidates = new ArrayList<>();

    @Option(
            names = "--confidence",
            paramLabel = "PERCENT",
            description = "of bands and intervals; that of the first document if absent")
    private Optional<String> confidence;

    @Option(
            names = "--reproducible",
            description = "leave the time of making out, so that the same input gives the same bytes")
    private boolean reproducible;

    @ArgGroup
    private Target target = new Target();

    /** Where more than the printed verdicts goes. */
    private static final class Target {

        @Option(
                names = {"-o", "--output"},
                paramLabel = "FOLDER",
                description = "write a report of the comparison as well")
        private Optional<Path> folder = Optional.empty();

        @Option(names = "--json", description = "print the document of the comparison, and nothing else")
        private boolean json;
    }

    @Override
    public Integer call() {
        OptionalDouble level = Confidence.of(confidence, 50, spec.commandLine());
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
        return AcrossCampaigns.compare(
                        sources, new FormulationChoice(baseline, candidates), level, Version.number(), created)
                .match(this::tell, wrong -> {
                    err.println(Terminal.safe(wrong.problem().text()));
                    return ExitCode.UNUSABLE;
                })
                .number();
    }

    private ExitCode tell(AcrossCampaigns.Compared compared) {
        PrintWriter out = spec.commandLine().getOut();
        Characterization document = compared.document();
        if (target.json) {
            out.print(DocumentFile.text(document));
            out.flush();
            return exitCode(document);
        }
        if (target.folder.isPresent()) {
            try {
                ReportWriter.write(document, target.folder.get(), ReportWriter.Options.EVERYTHING);
            } catch (IOException failed) {
                spec.commandLine().getErr().println(Terminal.safe("burnlaw: " + failed.getMessage()));
                return ExitCode.NOT_WRITTEN;
            }
        }
        ComparisonTable.print(document, compared.caveats(), out);
        target.folder.ifPresent(folder -> out.println(Terminal.safe("written: " + folder.resolve("index.html"))));
        return exitCode(document);
    }

    private static ExitCode exitCode(Characterization document) {
        return document.comparisons().stream().map(Comparison::notCompared).anyMatch(reason -> reason != null)
                ? ExitCode.DONE_WITH_REJECTIONS
                : ExitCode.DONE;
    }
}
