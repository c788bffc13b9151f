package io.burnlaw.cli;

import io.burnlaw.campaign.Problem;
import io.burnlaw.cli.Burnlaw.ExitCode;
import io.burnlaw.cli.Burnlaw.Version;
import io.burnlaw.finding.Outcome;
import io.burnlaw.publish.reading.AcrossCampaigns;
import io.burnlaw.publish.reading.FormulationChoice;
import io.burnlaw.publish.reading.PublishedSource;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Comparison;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Compares propellants of several campaigns from their published documents. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        description = {
            "Says whether propellants of several campaigns differ, from their published documents alone. The baseline"
                    + " is in the first document, the candidates are in the others. A single document is compared"
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
final class CompareCommand extends DocumentsCommand {

    @Option(
            names = "--baseline",
            paramLabel = "ID",
            description =
                    "id of the baseline in the first document; if absent, its only formulation or the one marked as baseline")
    private Optional<String> baseline;

    @Option(
            names = "--candidate",
            paramLabel = "ID",
            description = "id of a candidate in the other documents; repeat for more; if absent, all formulations")
    private List<String> candidates = new ArrayList<>();

    @Option(
            names = "--confidence",
            paramLabel = "PERCENT",
            converter = OptionTypes.ConfidenceOfIntervals.class,
            description = "confidence of bands and intervals; if absent, that of the first document")
    private Optional<Double> confidence;

    @Override
    Outcome<Made, Problem> of(List<PublishedSource> sources, Optional<String> created) {
        OptionalDouble level = confidence.stream().mapToDouble(each -> each).findFirst();
        return AcrossCampaigns.compare(
                        sources, new FormulationChoice(baseline, candidates), level, Version.number(), created)
                .map(compared -> {
                    Characterization document = compared.document();
                    return new Made(
                            document,
                            exitCode(document),
                            out -> ComparisonTable.print(document, compared.caveats(), out));
                });
    }

    private static ExitCode exitCode(Characterization document) {
        return document.comparisons().stream().map(Comparison::notCompared).anyMatch(reason -> reason != null)
                ? ExitCode.DONE_WITH_REJECTIONS
                : ExitCode.DONE;
    }
}
