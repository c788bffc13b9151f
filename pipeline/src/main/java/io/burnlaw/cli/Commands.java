package io.burnlaw.cli;

import java.util.List;
import java.util.function.Predicate;
import java.util.function.Supplier;
import picocli.AutoComplete.GenerateCompletion;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/**
 * The commands. Each is made only where its name stands among the words: to read the annotations of all of them takes
 * longer than many a command.
 */
final class Commands {

    private static final String COMPLETION = "generate-completion";

    private static final List<Entry> ALL = List.of(
            new Entry("new", "make a campaign folder to fill in", NewCommand::new),
            new Entry("check", "read a campaign, say what is wrong and how to correct it", CheckCommand::new),
            new Entry("record", "look at one record alone, without a campaign", RecordCommand::make),
            new Entry("run", "reduce every firing, fit the law, write the report", RunCommand::new),
            new Entry("compare", "say whether propellants of several campaigns differ", CompareCommand::new),
            new Entry("pool", "make one of several campaigns of one formulation", PoolCommand::new),
            new Entry("plan", "say which throat to drill next, and which not", PlanCommand::new),
            new Entry("render", "draw the report from a published document alone", RenderCommand::new),
            new Entry("simulate", "make an invented campaign from a scenario with a known law", SimulateCommand::new),
            new Entry(
                    "surface-table",
                    "make a grain's table of surface from the outline of its port",
                    SurfaceTableCommand::new));

    private Commands() {}

    private record Entry(String name, String summary, Supplier<Object> command) {

        CommandLine named() {
            CommandSpec spec = CommandSpec.create();
            spec.usageMessage().description(summary);
            return new CommandLine(spec);
        }
    }

    static List<String> names() {
        return ALL.stream().map(Entry::name).toList();
    }

    /**
     * Adds all commands to the root; those that are not asked for with their name and summary alone.
     *
     * @param asked whether a command of this name may have to be run or explained
     */
    static void addTo(CommandLine root, Predicate<String> asked) {
        boolean completion = asked.test(COMPLETION);
        for (Entry entry : ALL) {
            boolean whole = completion || asked.test(entry.name());
            root.addSubcommand(
                    entry.name(), whole ? new CommandLine(entry.command().get()) : entry.named());
        }
        if (completion) {
            CommandLine generate = new CommandLine(new GenerateCompletion());
            generate.getCommandSpec().usageMessage().hidden(true);
            root.addSubcommand(COMPLETION, generate);
        }
    }
}
