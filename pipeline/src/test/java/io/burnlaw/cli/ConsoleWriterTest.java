package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.report.wording.ShownUnits;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import picocli.CommandLine.Help.Ansi;

class ConsoleWriterTest {

    private static String written(String text, int width, String named) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ConsoleWriter writer = ConsoleWriter.to(bytes, width, named, Ansi.OFF);
        writer.print(text);
        writer.flush();
        return bytes.toString(StandardCharsets.UTF_8);
    }

    @Test
    void longLinesAreBrokenAtBlanksAndIndented() {
        assertThat(ConsoleWriter.wrapped("one two three four five", 10)).isEqualTo("one two\n  three\n  four\n  five");
        assertThat(ConsoleWriter.wrapped("    found      a value that is rather long for this", 40))
                .isEqualTo("    found      a value that is rather\n               long for this");
        assertThat(ConsoleWriter.wrapped("  - a caution that goes on and on", 22))
                .isEqualTo("  - a caution that\n    goes on and on");
    }

    @Test
    void aWordThatIsLongerThanTheLineStaysWhole() {
        assertThat(ConsoleWriter.wrapped("it is off by 3 % of it", 14)).isEqualTo("it is off by\n  3 % of it");
        assertThat(ConsoleWriter.wrapped("peak (1 to 2) MPa (95 %)", 18)).isEqualTo("peak (1 to 2) MPa\n  (95 %)");
        assertThat(ConsoleWriter.wrapped("a verylongwordwithoutanyblank b", 12))
                .isEqualTo("a\n  verylongwordwithoutanyblank\n  b");
    }

    @Test
    void linesToCopyStayWhole() {
        String next = "next: burnlaw run a-campaign-with-a-rather-long-name --workers 2\n";
        assertThat(written(next, 40, "burnlaw")).isEqualTo(next);
    }

    @Test
    void hintsNameTheCommandAsItWasStarted() {
        assertThat(written("next: burnlaw run c\nburnlaw: c: try   burnlaw new c\n", 80, "java -jar b.jar"))
                .isEqualTo("next: java -jar b.jar run c\nburnlaw: c: try   java -jar b.jar new c\n");
        assertThat(written("my-burnlaw run, burnlaw.json\n", 80, "java -jar b.jar"))
                .isEqualTo("my-burnlaw run, burnlaw.json\n");
    }

    @Test
    void aQuestionWithoutALineEndIsSeen() {
        assertThat(written("which? ", 80, "burnlaw")).isEqualTo("which? ");
    }

    @Test
    void aTableLosesColumnsAndNotItsLines() {
        TerminalTable table = TerminalTable.of("points", 1)
                .with("point", row -> "1")
                .with("pressure", row -> "2.0")
                .with("rate", row -> "5.0")
                .with("remark", row -> "a remark of some length");
        assertThat(table.text(200, List.of("remark"), ShownUnits.MPA)).isEqualTo(table.text());
        assertThat(table.text(55, List.of("remark"), ShownUnits.MPA).lines()).allMatch(line -> line.length() <= 55);
        assertThat(table.text(30, List.of("remark"), ShownUnits.MPA).lines())
                .allMatch(line -> line.length() <= 30)
                .contains("columns left out: remark");
    }
}
