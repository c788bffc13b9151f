package io.burnlaw.cli;

import io.burnlaw.campaign.Problem;
import io.burnlaw.cli.Burnlaw.Version;
import io.burnlaw.finding.Outcome;
import io.burnlaw.publish.reading.PooledCampaigns;
import io.burnlaw.publish.reading.PublishedSource;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Several campaigns of one formulation as one. */
@Command(
        name = "pool",
        mixinStandardHelpOptions = true,
        description = {
            "Makes one document of several campaigns of one formulation, from their published documents alone. Each batch,"
                    + " and each campaign that names none, counts as one casting. The law is that of the formulation, and"
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
final class PoolCommand extends DocumentsCommand {

    @Option(
            names = "--formulation",
            paramLabel = "ID",
            description = "formulation to pool; if absent, the only one that all documents have")
    private Optional<String> formulation;

    @Override
    Outcome<Made, Problem> of(List<PublishedSource> sources, Optional<String> created) {
        if (sources.size() < 2) {
            throw new ParameterException(spec().commandLine(), "pool needs two documents or more");
        }
        return PooledCampaigns.pool(sources, formulation, Version.number(), created)
                .map(document ->
                        new Made(document, ResultTable.exitCode(document), out -> ResultTable.print(document, out)));
    }
}
