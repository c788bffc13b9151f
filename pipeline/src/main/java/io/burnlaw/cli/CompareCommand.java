package io.burnlaw.cli;

import io.burnlaw.publish.AcrossCampaigns;
import io.burnlaw.publish.FormulationChoice;
import io.burnlaw.publish.PublishedSource;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Comparison;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
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
            converter = OptionTypes.ConfidenceOfIntervals.class,
            description = "of bands and intervals; that of the first document if absent")
    private Optional<Double> confidence;

    @Option(
            names = "--reproducible",
            description = "leave the time of making out, so that the same input gives the same bytes")
    private boolean reproducible;

    @ArgGroup
    private ReportTarget target = new ReportTarget();

    @Mixin
    private UnitsOption units;

    @Override
    public Integer call() {
        OptionalDouble level = confidence.stream().mapToDouble(each -> each).findFirst();
        PrintWriter err = spec.commandLine().getErr();
        Optional<List<PublishedSource>> sources = ReportTarget.read(files, err);
        if (sources.isEmpty()) {
            return ExitCode.UNUSABLE.number();
        }
        Optional<String> created = ReportTarget.created(reproducible);
        return AcrossCampaigns.compare(
                        sources.get(), new FormulationChoice(baseline, candidates), level, Version.number(), created)
                .match(this::tell, wrong -> {
                    err.println(Terminal.safe(wrong.problem().text()));
                    return ExitCode.UNUSABLE;
                })
                .number();
    }

    private ExitCode tell(AcrossCampaigns.Compared compared) {
        Characterization document = compared.document();
        return target.tell(
                document,
                units,
                spec,
                exitCode(document),
                out -> ComparisonTable.print(document, compared.caveats(), out));
    }

    private static ExitCode exitCode(Characterization document) {
        return document.comparisons().stream().map(Comparison::notCompared).anyMatch(reason -> reason != null)
                ? ExitCode.DONE_WITH_REJECTIONS
                : ExitCode.DONE;
    }
}
