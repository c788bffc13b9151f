package io.burnlaw.regime;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Why that many laws.
 *
 * @param tests            of each count against the next, as far as the sequence went
 * @param bicByCount       Bayesian information criterion for 1, 2, … laws, the better shape of each
 * @param sequentialAnswer laws by the sequence of tests
 * @param criterionAnswer  laws by the criterion
 * @param jumpPValue       of the test of joined against jumping; empty for one law
 * @param systematic       smooth relative error that the simulated campaigns carried [1]
 * @param clusters         independent firings among the points
 * @param rivals           other explanations
 * @param sentence         the evidence in words
 */
public record Evidence(
        List<CountTest> tests,
        List<Double> bicByCount,
        int sequentialAnswer,
        int criterionAnswer,
        OptionalDouble jumpPValue,
        double systematic,
        int clusters,
        List<Rival> rivals,
        String sentence) {

    public Evidence {
        tests = List.copyOf(tests);
        bicByCount = List.copyOf(bicByCount);
        rivals = List.copyOf(rivals);
    }
}
