package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

/** What is said of options that cannot be read: in the words of whoever types them. */
class WrongOptionTest {

    private final StringWriter err = new StringWriter();

    @Test
    void aWordIsNoNumberOfWorkers() {
        int code = Burnlaw.commandLine(new PrintWriter(new StringWriter(), true), new PrintWriter(err, true))
                .execute("run", "campaign", "--workers", "two");
        assertThat(code).isEqualTo(ExitCode.UNUSABLE.number());
        assertThat(err.toString())
                .contains("'--workers': 'two' is not a whole number")
                .doesNotContain("is not an int");
    }
}
