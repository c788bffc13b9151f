package io.burnlaw.trace.reading;

import io.burnlaw.campaign.Problem;

/** Carries a problem out of the depth of a reader; it never leaves the package. */
final class Refusal extends Exception {

    private static final long serialVersionUID = 1L;

    private final transient Problem problem;

    Refusal(Problem problem) {
        super(problem.what(), null, false, false);
        this.problem = problem;
    }

    static Refusal of(String file, int line, String what, String expected, String mend) {
        return new Refusal(new Problem(file, line, "", what, "", expected, mend));
    }

    Problem problem() {
        return problem;
    }
}
