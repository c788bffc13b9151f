package io.burnlaw.batch;

import io.burnlaw.batch.BatchResult.BatchLaw;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.RateLaw;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * Each batch a level of its own and one exponent: the laws of known batches, exact at any number of them where no firing is
 * less certain than the others.
 *
 * <pre>
 *     ln r = level of the batch + n · ln P + e      Var(e) = scatter + known      weight = typical / Var(e)      [1]
 * </pre>
 *
 * The scatter is the one at which the weighted sum of squares equals its degrees of freedom (Paule and Mandel 1982); typical
 * is the harmonic mean of the variances, so that a weight is 1 where all are alike.
 */
final class BatchLines {

    private static final int ROUNDS = 60;

    private final SortedMap<String, List<FitPoint>> batches;
    private final ToDoubleFunction<FitPoint> weight;
    private final List<Sums> sums;
    private final int freedom;
    private final double typical;
    private final double scatter;

    /** Weighted sums of a batch: the weights, means of ln P and ln r, squares and products about them. */
    private record Sums(int points, double weight, double x, double y, double xx, double xy, double yy) {

        static Sums of(List<FitPoint> points, ToDoubleFunction<FitPoint> weight) {
            double w = points.stream().mapToDouble(weight).sum();
            double x = points.stream()
                            .mapToDouble(p -> weight.applyAsDouble(p) * StrictMath.log(p.pressure()))
                            .sum()
                    / w;
            double y = points.stream()
                            .mapToDouble(p -> weight.applyAsDouble(p) * StrictMath.log(p.rate()))
                            .sum()
                    / w;
            double xx = 0;
            double xy = 0;
            double yy = 0;
            for (FitPoint p : points) {
                double dx = StrictMath.log(p.pressure()) - x;
                double dy = StrictMath.log(p.rate()) - y;
                xx += weight.applyAsDouble(p) * dx * dx;
                xy += weight.applyAsDouble(p) * dx * dy;
                yy += weight.applyAsDouble(p) * dy * dy;
            }
            return new Sums(points.size(), w, x, y, xx, xy, yy);
        }

        /** About a line of its own, or its mean where it was fired at one pressure. */
        double squares() {
            return line() ? yy - xy * xy / xx : yy;
        }

        boolean line() {
            return xx > 1e-4 * weight / points;
        }
    }

    private BatchLines(SortedMap<String, List<FitPoint>> batches, ToDoubleFunction<FitPoint> known, double scatter) {
        this.batches = batches;
        this.scatter = scatter;
        List<FitPoint> all = batches.values().stream().flatMap(List::stream).toList();
        double precision = all.stream()
                .mapToDouble(p -> 1 / (scatter + known.applyAsDouble(p)))
                .sum();
        typical = all.size() / precision;
        weight = p -> typical / (scatter + known.applyAsDouble(p));
        sums = batches.values().stream().map(points -> Sums.of(points, weight)).toList();
        freedom = all.size() - batches.size() - 1;
    }

    /**
     * Fits the lines.
     *
     * @param batches firings by batch, two more in all than batches
     * @param known   relative variance that a firing has beside the scatter [1]
     */
    static BatchLines of(SortedMap<String, List<FitPoint>> batches, ToDoubleFunction<FitPoint> known) {
        BatchLines alike = new BatchLines(batches, point -> 0, 1);
        double most = Math.max(alike.squares() / alike.freedom, 1e-30);
        if (batches.values().stream().flatMap(List::stream).allMatch(p -> known.applyAsDouble(p) == 0)) {
            return new BatchLines(batches, known, most);
        }
        double low = 1e-9 * most;
        double high = most;
        for (int round = 0; round < ROUNDS; round++) {
            double middle = Math.sqrt(low * high);
            BatchLines tried = new BatchLines(batches, known, middle);
            if (tried.squares() > tried.typical * tried.freedom) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return new BatchLines(batches, known, low);
    }

    private double sum(ToDoubleFunction<Sums> of) {
        return sums.stream().mapToDouble(of).sum();
    }

    /** {@return the exponent of all [1]} */
    double slope() {
        return sum(Sums::xy) / spread();
    }

    /** {@return squares of ln P about the means of the batches [1]} */
    double spread() {
        return sum(Sums::xx);
    }

    /** {@return variance of a firing about the law of its batch, beside what is known of it; relative [1]} */
    double scatter() {
        return scatter;
    }

    private double squares() {
        return Math.max(0, sum(Sums::yy) - slope() * sum(Sums::xy));
    }

    /**
     * Whether batches have exponents of their own, by an F test.
     *
     * @param level one less the false alarms [1]
     */
    boolean slopesDiffer(double level) {
        double apart = sum(Sums::squares);
        int lines = (int) sums.stream().filter(Sums::line).count();
        int left = sums.stream().mapToInt(s -> s.points() - (s.line() ? 2 : 1)).sum();
        if (lines < 3 || left < 3) {
            return false;
        }
        double f = Math.max(0, squares() - apart) / (lines - 1) / (Math.max(apart, 1e-30) / left);
        return FDistribution.of(lines - 1, left).survivalProbability(f) < 1 - level;
    }

    /**
     * The batches one by one.
     *
     * @param law   of all, whose reference pressure and shared error they have
     * @param level of the intervals [1]
     * @return the batches, in the order of their ids
     */
    List<BatchLaw.Member> members(RateLaw law, double level) {
        double x0 = StrictMath.log(law.referencePressure());
        double slope = slope();
        double spread = spread();
        int m = batches.size();
        double mean = sum(s -> s.y() + slope * (x0 - s.x())) / m;
        double at = sum(Sums::x) / m;
        double inverse = sum(s -> 1 / s.weight());
        List<BatchLaw.Member> members = new ArrayList<>();
        double t = BatchLaw.t(freedom, level);
        int i = 0;
        for (Map.Entry<String, List<FitPoint>> batch : batches.entrySet()) {
            Sums s = sums.get(i++);
            double own = s.y() + slope * (x0 - s.x());
            double share = 1 / s.weight() - 2 / (s.weight() * m) + inverse / (m * m);
            double half = t * Math.sqrt(typical * (share + (s.x() - at) * (s.x() - at) / spread));
            members.add(new BatchLaw.Member(
                    batch.getKey(),
                    s.points(),
                    new RateLaw(
                            own,
                            slope,
                            law.referencePressure(),
                            typical * (1 / s.weight() + (x0 - s.x()) * (x0 - s.x()) / spread),
                            typical * (x0 - s.x()) / spread,
                            typical / spread,
                            freedom,
                            Math.sqrt(scatter),
                            pressures(batch.getValue()).min().orElseThrow(),
                            pressures(batch.getValue()).max().orElseThrow(),
                            s.points(),
                            Weighting.PROPORTIONAL,
                            law.commonError()),
                    StrictMath.exp(own - mean),
                    StrictMath.exp(own - mean - half),
                    StrictMath.exp(own - mean + half)));
        }
        return members;
    }

    private static DoubleStream pressures(List<FitPoint> points) {
        return points.stream().mapToDouble(FitPoint::pressure);
    }
}
