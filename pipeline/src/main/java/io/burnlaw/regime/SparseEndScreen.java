package io.burnlaw.regime;

import io.burnlaw.campaign.PressureLimit;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.regime.Regimes.UnsettledRegime;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Looks for one or two points at an end of the range (or more, all at one pressure) that the law of the others does not
 * predict: slower below, or faster above. They are too few for a law of their own, and would bend the law of the others.
 */
final class SparseEndScreen {

    /** One-sided error of the first kind; small, since two ends and several groups are tried. */
    private static final double ERROR = 0.002;

    /** Least factor between law and points: a smaller one is for more firings to show. */
    private static final double LEAST_RATIO = 1.5;

    /** With fewer degrees of freedom than this, the scatter is that of these points and the usual one together. */
    private static final int FEW = 4;

    /** Usual relative scatter about a law [1], worth so many degrees of freedom: common practice, no source. */
    private static final double USUAL_SCATTER = 0.02;

    private static final int USUAL_FREE = 3;

    private static final int MOST_POINTS = 6;

    /** Pressures this close count as one [ln]. */
    private static final double SAME_PRESSURE = 0.03;

    private SparseEndScreen() {}

    /** Points apart, and those that are left. */
    record Parted(UnsettledRegime apart, List<FitPoint> rest) {}

    private record Candidate(UnsettledRegime.Side side, int points, double criterion, double student) {}

    static Optional<Parted> find(List<FitPoint> points, RegimeOptions options) {
        Sample sample = Sample.of(points, options.weighting(), options.systematicFloor());
        Optional<Candidate> below = best(sample, UnsettledRegime.Side.BELOW);
        Optional<Candidate> above = best(sample, UnsettledRegime.Side.ABOVE);
        Optional<Candidate> chosen = below.isPresent() && above.isPresent()
                ? (below.get().student >= above.get().student ? below : above)
                : below.or(() -> above);
        return chosen.map(candidate -> part(sample, candidate, options));
    }

    /**
     * Sets the smaller side of a split apart, where a test of the number of laws has too few points to decide.
     *
     * @param slow    how many of them, from the lowest pressure on, are the slow side
     * @return the two sides; empty where the larger one does not predict the smaller one well enough
     */
    static Optional<Parted> split(List<FitPoint> points, int slow, RegimeOptions options) {
        Sample sample = Sample.of(points, options.weighting(), options.systematicFloor());
        int n = sample.size();
        boolean below = 2 * slow <= n;
        UnsettledRegime.Side side = below ? UnsettledRegime.Side.BELOW : UnsettledRegime.Side.ABOVE;
        int m = below ? slow : n - slow;
        int free = free(n - m - 2);
        if (m < 1 || free < 1) {
            return Optional.empty();
        }
        Line rest = rest(sample, side, m);
        double student = rest.spread() > 1e-6 ? student(sample, side, m, rest) : 0;
        return student < TDistribution.of(free).inverseSurvivalProbability(ERROR)
                ? Optional.empty()
                : Optional.of(part(sample, new Candidate(side, m, 0, student), options));
    }

    private static Optional<Candidate> best(Sample sample, UnsettledRegime.Side side) {
        int n = sample.size();
        Candidate best = null;
        for (int m = 0; m <= Math.min(MOST_POINTS, n - 3); m++) {
            Line rest = rest(sample, side, m);
            // two points make a line of their own without a miss: a point that the others predict would be drawn in
            boolean predicted =
                    m > 0 && !carriesALaw(sample, side, m) && leastDeviation(sample, side, m) < Math.log(LEAST_RATIO);
            if (!(rest.spread() > 1e-6) || predicted) {
                continue;
            }
            double own = 0;
            int parameters = 2;
            if (m > 0) {
                int from = side == UnsettledRegime.Side.BELOW ? 0 : n - m;
                Line line = Line.through(sample.xs(), sample.ys(), sample.ws(), from, from + m);
                own = line.rss();
                parameters += line.spread() > 1e-6 ? 3 : 2;
            }
            double rss = Math.max(rest.rss() + own, 1e-12);
            double criterion = n * Math.log(rss / n) + parameters * Math.log(n);
            if (best == null || criterion < best.criterion) {
                best = new Candidate(side, m, criterion, student(sample, side, m, rest));
            }
        }
        if (best == null || best.points == 0 || carriesALaw(sample, side, best.points)) {
            return Optional.empty();
        }
        int free = free(n - best.points - 2);
        if (free < 1 || best.student < TDistribution.of(free).inverseSurvivalProbability(ERROR)) {
            return Optional.empty();
        }
        return Optional.of(best);
    }

    private static int free(int ofTheRest) {
        return ofTheRest < 1 || ofTheRest >= FEW ? ofTheRest : ofTheRest + USUAL_FREE;
    }

    private static boolean carriesALaw(Sample sample, UnsettledRegime.Side side, int m) {
        int from = side == UnsettledRegime.Side.BELOW ? 0 : sample.size() - m;
        return m > 2 && sample.x(from + m - 1) - sample.x(from) > SAME_PRESSURE;
    }

    private static Line rest(Sample sample, UnsettledRegime.Side side, int m) {
        int from = side == UnsettledRegime.Side.BELOW ? m : 0;
        int to = side == UnsettledRegime.Side.BELOW ? sample.size() : sample.size() - m;
        return Line.through(sample.xs(), sample.ys(), sample.ws(), from, to);
    }

    /** Mean deviation of the group from the law of the others, over its standard uncertainty. */
    private static double student(Sample sample, UnsettledRegime.Side side, int m, Line rest) {
        int n = sample.size();
        int free = n - m - 2;
        if (m == 0 || free < 1) {
            return 0;
        }
        double[] y = sample.ys();
        int from = side == UnsettledRegime.Side.BELOW ? 0 : n - m;
        double deviation = 0;
        double x = 0;
        for (int i = from; i < from + m; i++) {
            deviation += (side == UnsettledRegime.Side.BELOW ? 1 : -1) * (rest.at(sample.x(i)) - y[i]) / m;
            x += sample.x(i) / m;
        }
        double square = free < FEW
                ? (rest.rss() + USUAL_FREE * USUAL_SCATTER * USUAL_SCATTER) / (free + USUAL_FREE)
                : rest.rss() / free;
        double variance =
                square * (1.0 / m + 1 / rest.weight() + (x - rest.middle()) * (x - rest.middle()) / rest.spread());
        return deviation / Math.sqrt(Math.max(variance, 1e-12));
    }

    private static double leastDeviation(Sample sample, UnsettledRegime.Side side, int m) {
        Line rest = rest(sample, side, m);
        double[] y = sample.ys();
        int from = side == UnsettledRegime.Side.BELOW ? 0 : sample.size() - m;
        double least = Double.POSITIVE_INFINITY;
        for (int i = from; i < from + m; i++) {
            double deviation = rest.at(sample.x(i)) - y[i];
            least = Math.min(least, side == UnsettledRegime.Side.BELOW ? deviation : -deviation);
        }
        return least;
    }

    private static Parted part(Sample sample, Candidate candidate, RegimeOptions options) {
        boolean below = candidate.side == UnsettledRegime.Side.BELOW;
        int n = sample.size();
        int m = candidate.points;
        List<FitPoint> all =
                java.util.stream.IntStream.range(0, n).mapToObj(sample::point).toList();
        List<FitPoint> group = below ? all.subList(0, m) : all.subList(n - m, n);
        List<FitPoint> others = below ? all.subList(m, n) : all.subList(0, n - m);
        Line rest = rest(sample, candidate.side, m);
        int free = free(n - m - 2);
        double y = 0;
        double x = 0;
        for (FitPoint point : group) {
            y += StrictMath.log(point.rate()) / m;
            x += sample.position(point.pressure()) / m;
        }
        double deviation = below ? rest.at(x) - y : y - rest.at(x);
        double std = deviation / candidate.student;
        double half = std * TDistribution.of(free).inverseCumulativeProbability(0.5 + options.level() / 2);
        double ratio = StrictMath.exp(deviation);
        Interval interval = new Interval.Estimated(
                StrictMath.exp(deviation - half),
                StrictMath.exp(deviation + half),
                options.level(),
                Interval.Method.STUDENT_T);
        double gapLow = below
                ? group.get(m - 1).pressure()
                : others.get(others.size() - 1).pressure();
        double gapHigh = below ? others.get(0).pressure() : group.get(0).pressure();
        UnsettledRegime apart = new UnsettledRegime(
                candidate.side,
                group.stream().map(FitPoint::id).toList(),
                group.stream().mapToDouble(FitPoint::pressure).min().orElseThrow(),
                group.stream().mapToDouble(FitPoint::pressure).max().orElseThrow(),
                StrictMath.exp(y),
                ratio,
                interval,
                gapLow,
                gapHigh,
                Math.sqrt(gapLow * gapHigh),
                sentence(
                        below,
                        m,
                        Math.log(group.get(m - 1).pressure() / group.get(0).pressure()) <= SAME_PRESSURE,
                        StrictMath.exp(y),
                        sample.pressure(x),
                        ratio,
                        interval,
                        gapLow,
                        gapHigh,
                        options.limit()));
        List<FitPoint> inOrderOfArrival = java.util.stream.IntStream.range(0, n)
                .boxed()
                .filter(i -> below ? i >= m : i < n - m)
                .sorted(Comparator.comparingInt(sample::order))
                .map(sample::point)
                .toList();
        return new Parted(apart, inOrderOfArrival);
    }

    private static String sentence(
            boolean below,
            int points,
            boolean alike,
            double rate,
            double pressure,
            double ratio,
            Interval interval,
            double gapLow,
            double gapHigh,
            PressureLimit limit) {
        return (points == 1
                        ? "One point"
                        : points == 2 ? "Two points" : points + " points" + (alike ? " at one pressure" : ""))
                + " at " + Words.pressure(pressure) + " with " + Words.rate(rate)
                + (below ? " burn" + (points == 1 ? "s " : " ") : " burn" + (points == 1 ? "s " : " "))
                + Words.number(ratio, interval) + (below ? " times slower" : " times faster")
                + " than the law of the others: "
                + (points < 3 && Math.log(ratio) < BadPoints.USUAL
                        ? "another regime, or " + (points == 1 ? "a bad firing" : "bad firings")
                                + "; one more firing at that pressure would show which. If it is a regime, the change is"
                        : "probably another regime, but with too few points for a law of its own. The change is")
                + " somewhere between " + Words.pressure(gapLow) + " and "
                + Words.pressure(gapHigh)
                + (limit.allowsMean(Math.sqrt(gapLow * gapHigh), gapHigh)
                        ? "; a firing near " + Words.pressure(Math.sqrt(gapLow * gapHigh)) + " would halve that gap"
                        : "")
                + ". Three points on " + (below ? "the slow side" : "the fast side") + " would give it a law ("
                + NumberFormat.significant(Math.max(0, 3 - points), 1) + " more).";
    }
}
