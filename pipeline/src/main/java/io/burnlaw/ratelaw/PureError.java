package io.burnlaw.ratelaw;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * The lack-of-fit test: the scatter of firings repeated at one pressure against that of their means about the law.
 *
 * <pre>
 *     F = [ (S - S_pure) / (groups - 2) ] / [ S_pure / (points - groups) ]
 * </pre>
 *
 * with S the weighted sum of squares about the law and S_pure that about the groups' means. Firings count as repeated
 * where their pressures lie within {@value #SAME_PRESSURE_PERCENT} % of each other; each rate is brought to the group's
 * mean pressure along the law first, so that the spread left does not count as scatter.
 *
 * <p><b>Source.</b> Draper and Smith (1998), section 2.1.
 */
final class PureError {

    static final int SAME_PRESSURE_PERCENT = 2;

    private PureError() {}

    /** Empty where no pressure was repeated, where too few differ, or where points share a firing. */
    static Optional<LackOfFit> of(WeightedSolution s) {
        int count = s.x.length;
        List<List<Integer>> groups = groups(s);
        int lack = groups.size() - 2;
        int pure = count - groups.size();
        if (lack < 1 || pure < 1 || s.clusters < count) {
            return Optional.empty();
        }
        double about = 0;
        double within = 0;
        double relative = 0;
        for (List<Integer> group : groups) {
            double sum = 0;
            double mean = 0;
            for (int i : group) {
                sum += s.weight(i);
                mean += s.weight(i) * s.residual[i];
            }
            mean /= sum;
            for (int i : group) {
                double d = s.residual[i] - mean;
                about += s.weight(i) * s.residual[i] * s.residual[i];
                within += s.weight(i) * d * d;
                double scale = s.curve == Curve.POWER ? s.curve.value(s.x[i], s.parameters) : 1;
                relative += d * d / (scale * scale);
            }
        }
        if (!(within > 0)) {
            return Optional.empty();
        }
        double statistic = Math.max(0, about - within) / lack / (within / pure);
        return Optional.of(new LackOfFit(
                statistic,
                lack,
                pure,
                FDistribution.of(lack, pure).survivalProbability(statistic),
                Math.sqrt(relative / pure)));
    }

    private static List<List<Integer>> groups(WeightedSolution s) {
        double width = StrictMath.log1p(SAME_PRESSURE_PERCENT / 100.0);
        List<Integer> order = IntStream.range(0, s.x.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> s.x[i]))
                .toList();
        List<List<Integer>> groups = new ArrayList<>();
        double first = Double.NEGATIVE_INFINITY;
        for (int i : order) {
            if (s.x[i] - first > width) {
                groups.add(new ArrayList<>());
                first = s.x[i];
            }
            groups.get(groups.size() - 1).add(i);
        }
        return groups;
    }
}
