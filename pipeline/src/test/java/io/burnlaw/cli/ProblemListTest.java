package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.Problem;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ProblemListTest {

    @Test
    void whatStandsInManyLinesIsToldOnce() {
        List<Problem> problems = IntStream.rangeClosed(2, 4)
                .mapToObj(line -> problem(line, "dat"))
                .toList();
        assertThat(printed(problems)).isEqualTo("""
                firings.csv:2: formulation: not described
                    found      dat
                    expected   date
                    mend it    write   date
                    also on    lines 3, 4
                3 problems in 1 file.
                """);
    }

    @Test
    void whatDiffersIsToldEachTime() {
        assertThat(printed(List.of(problem(2, "dat"), problem(3, "dta"), problem(4, "dat"))))
                .contains("firings.csv:2:")
                .contains("firings.csv:3:")
                .contains("also on    line 4\n")
                .endsWith("3 problems in 1 file.\n");
    }

    @Test
    void manyLinesAreCountedAndNotListed() {
        List<Problem> problems = IntStream.rangeClosed(2, 1001)
                .mapToObj(line -> problem(line, "dat"))
                .toList();
        assertThat(printed(problems)).contains(" 14 and 987 more\n").endsWith("1000 problems in 1 file.\n");
    }

    private static Problem problem(int line, String found) {
        return new Problem("firings.csv", line, "formulation", "not described", found, "date", "write   date");
    }

    private static String printed(List<Problem> problems) {
        StringWriter text = new StringWriter();
        ProblemList.print(problems, new PrintWriter(text, true));
        return text.toString().replace(System.lineSeparator(), "\n");
    }
}
