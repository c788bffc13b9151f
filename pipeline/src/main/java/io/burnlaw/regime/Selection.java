package io.burnlaw.regime;

import io.burnlaw.ratelaw.Interval;
import java.util.List;
import java.util.Optional;

/**
 * What a search decided, in the terms of x and y.
 *
 * @param claim           what may be said
 * @param fit             the pieces that stand
 * @param noise           of the points about them
 * @param intervals       of their breaks
 * @param tests           of counts
 * @param bicByCount      information criterion by count
 * @param sequential      count by the tests
 * @param jumpPValue      of joined against jumping
 * @param rivals          other explanations
 */
record Selection(
        Claim claim,
        PiecewiseFit fit,
        NoiseModel noise,
        List<Interval> intervals,
        List<CountTest> tests,
        List<Double> bicByCount,
        int sequential,
        Optional<SimulatedP> jumpPValue,
        List<Rivals.Fitted> rivals) {}
