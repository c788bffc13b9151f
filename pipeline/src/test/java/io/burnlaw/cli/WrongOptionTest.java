package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.cli.Burnlaw.ExitCode;
import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said of options that cannot be read: in the words of whoever types them. */
class WrongOptionTest {

    private final StringWriter err = new StringWriter();

    private void refused(String... words) {
        int code = Burnlaw.commandLine(new PrintWriter(new StringWriter(), true), new PrintWriter(err, true))
                .execute(words);
        assertThat(code).isEqualTo(ExitCode.UNUSABLE.number());
    }

    @Test
    void optionsThatExcludeEachOtherAreNamed() {
        refused("run", "campaign", "--json", "--data-only");
        assertThat(err.toString()).startsWith("burnlaw: give only one of --json, --data-only");
    }

    @Test
    void oneDocumentIsPrintedOnce() {
        refused("run", "campaign", "--json", "--keep-watching");
        assertThat(err.toString()).contains("--json prints one document", "--keep-watching");
    }

    @Test
    void aFolderHasAName() {
        refused("run", "campaign", "-o", "");
        assertThat(err.toString()).contains("-o", "the name of the folder is empty");
        refused("new", "");
        assertThat(err.toString()).contains("the name of the folder is empty");
    }

    @Test
    void aWordIsNoNumberOfWorkers() {
        refused("run", "campaign", "--workers", "two");
        assertThat(err.toString())
                .contains("--workers two: this is not a whole number")
                .doesNotContain("is not an int");
    }

    @ParameterizedTest
    @CsvSource({"fit, run", "analyze, run", "help, --help", "validate, check", "chekc, check"})
    void aWordThatPeopleTryLeadsToTheCommand(String tried, String meant) {
        refused(tried);
        assertThat(err.toString()).contains("'" + tried + "'. Did you mean " + meant);
    }
}
