package io.burnlaw.cli;

import io.burnlaw.campaign.Problem;
import io.burnlaw.simulation.FolderWriter;
import io.burnlaw.simulation.MadeCampaign;
import io.burnlaw.simulation.Scenario;
import io.burnlaw.simulation.ScenarioReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Makes an invented campaign, with its truth beside it. */
@Command(
        name = "simulate",
        mixinStandardHelpOptions = true,
        description = {
            "Makes a campaign folder from a scenario: invented propellants with a known law are fired in simulated motors"
                    + " and measured with simulated instruments.",
            "The same scenario gives the same files. What is true stands in truth.yaml.",
            ""
        },
        optionListHeading = "%nOptions:%n",
        footer = {"", "Example:", "  burnlaw simulate scenario.yaml -o invented-campaign"})
public final class SimulateCommand implements Callable<Integer> {

    private static final int DONE = 0;
    private static final int UNUSABLE_INPUT = 2;
    private static final int NOT_WRITTEN = 3;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "SCENARIO.yaml", description = "what is true, what is fired, and what measures it")
    private Path scenario;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FOLDER",
            required = true,
            description = "where the campaign goes; an earlier one made from a scenario is replaced")
    private Path output;

    @Override
    public Integer call() {
        return ScenarioReader.read(scenario)
                .match(read -> make(read.scenario()), unusable -> refuse(unusable.problems()));
    }

    private int make(Scenario read) {
        try {
            if (!FolderWriter.mayReplace(output)) {
                errors().println(output + ": something else lies there; nothing was written."
                        + " Name a new folder, or one that an earlier simulate made.");
                return NOT_WRITTEN;
            }
            FolderWriter.write(MadeCampaign.of(read), output);
        } catch (IOException failed) {
            errors().println(output + ": the campaign could not be written (" + failed.getMessage() + ").");
            return NOT_WRITTEN;
        }
        spec.commandLine()
                .getOut()
                .println("Made %s: %d firings, %d strands, %d hand-timed points. All of it is invented; the truth is in"
                                .formatted(
                                        output,
                                        read.firings().size(),
                                        read.strands().size(),
                                        read.points().size())
                        + " truth.yaml.");
        return DONE;
    }

    private int refuse(List<Problem> problems) {
        Set<String> files = new HashSet<>();
        for (Problem problem : problems) {
            errors().println(problem.text());
            files.add(problem.file());
        }
        errors().println("%d %s in %d %s; nothing was written."
                .formatted(
                        problems.size(),
                        problems.size() == 1 ? "problem" : "problems",
                        files.size(),
                        files.size() == 1 ? "file" : "files"));
        return UNUSABLE_INPUT;
    }

    private PrintWriter errors() {
        return spec.commandLine().getErr();
    }
}
