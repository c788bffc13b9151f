package io.burnlaw.cli;

import io.burnlaw.campaign.Problem;
import io.burnlaw.cli.Burnlaw.ExitCode;
import io.burnlaw.report.OwnFolder;
import io.burnlaw.simulation.MadeCampaign;
import io.burnlaw.simulation.Scenario;
import io.burnlaw.simulation.ScenarioReader;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
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
            "The same scenario gives the same files. The true values are in truth.yaml.",
            ""
        },
        optionListHeading = "%nOptions:%n",
        footer = {"", "Example:", "  burnlaw simulate scenario.yaml -o invented-campaign"})
public final class SimulateCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "SCENARIO.yaml", description = "the true laws, the firings and the instruments")
    private Path scenario;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FOLDER",
            required = true,
            description = "folder of the campaign; an earlier simulated one is replaced, your own files stay")
    private Path output;

    @Override
    public Integer call() {
        return ScenarioReader.read(scenario).match(this::make, this::refuse).number();
    }

    private ExitCode make(Scenario read) {
        try {
            MadeCampaign made = MadeCampaign.of(read);
            OwnFolder.replace(output, OwnFolder.Kind.SIMULATION, fresh -> {
                for (Map.Entry<String, byte[]> file : made.files().entrySet()) {
                    try (OutputStream out = fresh.create(file.getKey())) {
                        out.write(file.getValue());
                    }
                }
            });
        } catch (IOException failed) {
            say("burnlaw: " + failed.getMessage());
            return ExitCode.NOT_WRITTEN;
        }
        spec.commandLine()
                .getOut()
                .println(Terminal.safe("Made " + output + ": "
                        + ProblemList.count(read.firings().size(), "firing") + ", "
                        + ProblemList.count(read.strands().size(), "strand") + ", "
                        + ProblemList.count(read.points().size(), "hand-timed point")
                        + ". All of it is invented; the true values are in truth.yaml."));
        return ExitCode.DONE;
    }

    private ExitCode refuse(List<Problem> problems) {
        ProblemList.print(problems, spec.commandLine().getErr());
        say("nothing was written.");
        return ExitCode.UNUSABLE;
    }

    private void say(String words) {
        spec.commandLine().getErr().println(Terminal.safe(words));
    }
}
