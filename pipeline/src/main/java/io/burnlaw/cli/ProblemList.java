package io.burnlaw.cli;

import io.burnlaw.campaign.Problem;
import java.io.PrintWriter;
import java.util.List;

/** All problems of a campaign, for a person to mend. */
final class ProblemList {

    private ProblemList() {}

    /**
     * Prints every problem and their count.
     *
     * @param problems at least one
     * @param to       where
     */
    static void print(List<Problem> problems, PrintWriter to) {
        problems.forEach(problem -> to.println(Terminal.safe(problem.text())));
        long files = problems.stream().map(Problem::file).distinct().count();
        to.println(count(problems.size(), "problem") + " in " + count(files, "file") + ".");
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
