package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

class CommandsTest {

    private static Map<String, CommandLine> commands(String... asked) {
        CommandLine root = new CommandLine(CommandSpec.create());
        Commands.addTo(root, java.util.Set.of(asked)::contains);
        return root.getSubcommands();
    }

    @Test
    void onlyWhatIsAskedForIsMadeAndTheRestIsNamed() {
        Map<String, CommandLine> named = commands();
        Map<String, CommandLine> whole = commands("check");
        assertThat(whole.keySet()).isEqualTo(named.keySet()).contains("new", "check", "run", "compare", "plan");
        assertThat(whole.get("check").getCommandSpec().userObject()).isInstanceOf(CheckCommand.class);
        assertThat(whole.get("run").getCommandSpec().options()).isEmpty();
        assertThat(named.values())
                .allSatisfy(
                        each -> assertThat(each.getCommandSpec().usageMessage().description())
                                .singleElement()
                                .asString()
                                .isNotBlank());
    }

    @Test
    void aCommandIsAddedUnderItsOwnName() {
        commands("generate-completion")
                .forEach(
                        (name, line) -> assertThat(line.getCommandSpec().name()).isEqualTo(name));
    }

    @Test
    void completionKnowsEveryOption() {
        assertThat(commands("generate-completion").get("run").getCommandSpec().optionsMap())
                .containsKey("--reproducible");
    }
}
