package io.burnlaw.cli;

import io.burnlaw.publish.PooledCampaigns;
import io.burnlaw.publish.PublishedSource;
import io.burnlaw.report.document.Characterization;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
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
    private ReportTarget target = new ReportTarget();

    @Mixin
    private UnitsOption units;

    @Override
    public Integer call() {
        if (files.size() < 2) {
            throw new ParameterException(spec.commandLine(), "pool needs two documents or more");
        }
        PrintWriter err = spec.commandLine().getErr();
        Optional<List<PublishedSource>> sources = ReportTarget.read(files, err);
        if (sources.isEmpty()) {
            return ExitCode.UNUSABLE.number();
        }
        Optional<String> created = ReportTarget.created(reproducible);
        PooledCampaigns.Result result = PooledCampaigns.pool(sources.get(), formulation, Version.number(), created);
        if (result instanceof PooledCampaigns.Result.Refused wrong) {
            ProblemList.print(wrong.problems(), err);
            return ExitCode.UNUSABLE.number();
        }
        Characterization document = ((PooledCampaigns.Result.Pooled) result).document();
        return target.tell(
                        document, units, spec, ResultTable.exitCode(document), out -> ResultTable.print(document, out))
                .number();
    }
}
