package io.burnlaw.cli;

import io.burnlaw.campaign.Problem;
import java.io.PrintWriter;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** All problems of a campaign, for a person to mend. */
final class ProblemList {

    /** More line numbers than this help nobody. */
    private static final int MOST_LINES = 12;

    private ProblemList() {}

    /**
     * Prints every problem and their count.
     *
     * @param problems at least one
     */
    static void print(List<Problem> problems, PrintWriter to) {
        each(problems, to);
        long files = problems.stream().map(Problem::file).distinct().count();
        to.println(count(problems.size(), "problem") + " in " + count(files, "file") + ".");
    }

    /**
     * Prints every problem; one that stands in many lines of a file is printed once, with all its lines.
     *
     * @param problems in the order of the files
     */
    static void each(List<Problem> problems, PrintWriter to) {
        Map<Problem, List<Problem>> alike = problems.stream()
                .collect(Collectors.groupingBy(ProblemList::withoutLine, LinkedHashMap::new, Collectors.toList()));
        alike.values().forEach(same -> to.println(Terminal.safe(same.get(0).text() + also(same))));
    }

    private static Problem withoutLine(Problem problem) {
        return new Problem(
                problem.file(),
                0,
                problem.place(),
                problem.what(),
                problem.found(),
                problem.expected(),
                problem.mend());
    }

    private static String also(Collection<Problem> same) {
        if (same.size() == 1) {
            return "";
        }
        String lines = same.stream()
                .skip(1)
                .limit(MOST_LINES)
                .map(problem -> String.valueOf(problem.line()))
                .collect(Collectors.joining(", "));
        int more = same.size() - 1 - MOST_LINES;
        return "\n    also on    line" + (same.size() > 2 ? "s " : " ") + lines
                + (more > 0 ? " and " + more + " more" : "");
    }

    /**
     * A number and its noun.
     *
     * @param number at least zero
     * @param noun   that takes an s
     * @return such as {@code 3 problems}
     */
    static String count(long number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }
}
