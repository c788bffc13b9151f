package io.burnlaw.comparison;

import io.burnlaw.comparison.Comparison.FTest;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.Interval;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The trend of the rate over the fraction of an additive, from all firings of all levels at once:
 *
 * <pre>
 *     ln r = A + B · fraction + n · ln(P / P_mean)                       one exponent, or one for each level
 * </pre>
 *
 * <p>The straight line is tested against free levels (lack of fit), the common exponent against own ones. <b>Source.</b>
 * Draper and Smith (1998), chapters 2 and 14.
 */
public final class DoseTrends {

    private DoseTrends() {}

    /**
     * Fits a trend for each additive among the candidates.
     *
     * @param baseline   the level without any
     * @param candidates with their additives; those without one are passed over
     * @return in the order in which the additives are first named
     */
    public static List<DoseTrend> ofEach(Propellant baseline, List<Propellant> candidates, ComparisonOptions options) {
        Map<String, List<Propellant>> levels = new LinkedHashMap<>();
        candidates.forEach(candidate -> candidate
                .additive()
                .ifPresent(additive -> levels.computeIfAbsent(additive, name -> new ArrayList<>())
                        .add(candidate)));
        List<DoseTrend> trends = new ArrayList<>();
        levels.forEach((additive, of) -> of(additive, baseline, of, options).ifPresent(trends::add));
        return trends;
    }

    /**
     * Fits a trend to a baseline and the levels of one additive.
     *
     * @param baseline the level without it
     * @param levels   with their fractions; those without points or fraction are passed over
     * @return the trend; empty where there are fewer than two levels beside the baseline, or too few firings
     */
    public static Optional<DoseTrend> of(
            String additive, Propellant baseline, List<Propellant> levels, ComparisonOptions options) {
        List<Propellant> rising = Stream.concat(
                        Stream.of(baseline),
                        levels.stream()
                                .filter(each -> each.fraction().isPresent())
                                .sorted(Comparator.comparingDouble(
                                        each -> each.fraction().orElseThrow())))
                .filter(each -> LogLine.of(each.points()).isPresent())
                .toList();
        if (rising.size() < 3
                || rising.get(0) != baseline
                || rising.stream().mapToDouble(DoseTrends::dose).distinct().count() < 3) {
            return Optional.empty();
        }
        Rows rows = Rows.of(rising);
        LinearModel free = rows.fit(true, true);
        if (free.degrees() < 1) {
            return Optional.empty();
        }
        LinearModel common = rows.fit(true, false);
        FTest oneExponent = FTest.of(
                common.squares() - free.squares(), common.degrees() - free.degrees(), free.variance(), free.degrees());
        boolean own = oneExponent.pValue() < options.significance();
        LinearModel levelled = own ? free : common;
        LinearModel line = rows.fit(false, own);
        FTest straight = FTest.of(
                line.squares() - levelled.squares(),
                line.degrees() - levelled.degrees(),
                levelled.variance(),
                levelled.degrees());
        // what the line leaves of the levels belongs to its uncertainty: the line's own scatter, not the levels'
        double slope = line.coefficient(1);
        double std = line.std(1);
        double student = TDistribution.of(line.degrees()).inverseCumulativeProbability(0.5 + options.level() / 2);
        DoseTrend trend = new DoseTrend(
                additive,
                baseline.id(),
                rising.stream().map(Propellant::id).toList(),
                StrictMath.exp(rows.meanX),
                slope,
                std,
                new Interval.Estimated(
                        slope - student * std, slope + student * std, options.level(), Interval.Method.STUDENT_T),
                FTest.of(slope * slope, 1, std * std, line.degrees()),
                straight,
                own,
                "");
        return Optional.of(worded(trend, options.significance()));
    }

    private static double dose(Propellant propellant) {
        return propellant.fraction().orElse(0);
    }

    private static DoseTrend worded(DoseTrend trend, double significance) {
        double perPercent = StrictMath.expm1(trend.slope() / 100);
        String change = NumberFormat.withInterval(
                100 * perPercent,
                100 * StrictMath.expm1(trend.interval().low() / 100),
                100 * StrictMath.expm1(trend.interval().high() / 100));
        String sentence = (trend.trend().pValue() <= significance
                        ? "At %s MPa each percent by mass of %s changes the rate by %s %% (%s)"
                        : "At %s MPa no trend over %s is shown: each percent by mass changes the rate by %s %% (%s)")
                .formatted(
                        NumberFormat.megapascal(trend.pressure()),
                        trend.additive(),
                        change,
                        Verdict.probability(trend.trend().pValue()));
        String bent = trend.straight().pValue() <= significance
                ? "; the levels are not on a straight line (%s), so do not interpolate between them"
                        .formatted(Verdict.probability(trend.straight().pValue()))
                : "";
        String exponents = trend.ownExponents() ? "; the exponent changes with the level as well" : "";
        return new DoseTrend(
                trend.additive(),
                trend.baseline(),
                trend.formulations(),
                trend.pressure(),
                trend.slope(),
                trend.slopeStd(),
                trend.interval(),
                trend.trend(),
                trend.straight(),
                trend.ownExponents(),
                sentence + bent + exponents + ".");
    }

    /** All points of all levels, weighted so that every firing counts once. */
    private static final class Rows {
        private final int levels;
        private final List<double[]> rows = new ArrayList<>();
        private int firings;
        private double meanX;

        static Rows of(List<Propellant> rising) {
            Rows all = new Rows(rising.size());
            double weight = 0;
            for (int level = 0; level < rising.size(); level++) {
                Map<String, Integer> clusters = new HashMap<>();
                rising.get(level).points().forEach(each -> clusters.merge(each.cluster(), 1, Integer::sum));
                all.firings += clusters.size();
                for (FitPoint each : rising.get(level).points()) {
                    double w = 1.0 / clusters.get(each.cluster());
                    double x = StrictMath.log(each.pressure());
                    all.rows.add(new double[] {level, dose(rising.get(level)), x, StrictMath.log(each.rate()), w});
                    all.meanX += w * x;
                    weight += w;
                }
            }
            all.meanX /= weight;
            return all;
        }

        private Rows(int levels) {
            this.levels = levels;
        }

        /** With a free level for each dose or a straight line over the doses; with own exponents or a common one. */
        LinearModel fit(boolean freeLevels, boolean ownExponents) {
            int heights = freeLevels ? levels : 2;
            double[][] design = new double[rows.size()][heights + (ownExponents ? levels : 1)];
            double[] y = new double[rows.size()];
            double[] weights = new double[rows.size()];
            for (int i = 0; i < y.length; i++) {
                double[] row = rows.get(i);
                int level = (int) row[0];
                if (freeLevels) {
                    design[i][level] = 1;
                } else {
                    design[i][0] = 1;
                    design[i][1] = row[1];
                }
                design[i][heights + (ownExponents ? level : 0)] = row[2] - meanX;
                y[i] = row[3];
                weights[i] = row[4];
            }
            return LinearModel.fit(design, y, weights, firings);
        }
    }

    /**
     * A linear model fitted by weighted least squares.
     *
     * @param unscaled     their covariance for a residual variance of one
     * @param squares      weighted sum of the squared residuals
     * @param degrees      of freedom of the residuals
     */
    record LinearModel(RealVector coefficients, RealMatrix unscaled, double squares, int degrees) {

        static LinearModel fit(double[][] design, double[] y, double[] weights, int independent) {
            RealMatrix scaled = new Array2DRowRealMatrix(design);
            RealVector target = new ArrayRealVector(y);
            for (int i = 0; i < y.length; i++) {
                double root = Math.sqrt(weights[i]);
                scaled.setRowVector(i, scaled.getRowVector(i).mapMultiply(root));
                target.setEntry(i, root * y[i]);
            }
            DecompositionSolver solver = new QRDecomposition(scaled).getSolver();
            RealVector solved = solver.solve(target);
            RealVector residual = target.subtract(scaled.operate(solved));
            RealMatrix inverse = solver.getInverse();
            return new LinearModel(
                    solved,
                    inverse.multiply(inverse.transpose()),
                    residual.dotProduct(residual),
                    independent - solved.getDimension());
        }

        double coefficient(int column) {
            return coefficients.getEntry(column);
        }

        double variance() {
            return squares / degrees;
        }

        double std(int column) {
            return Math.sqrt(variance() * unscaled.getEntry(column, column));
        }
    }

    /**
     * How the rate follows the fraction of an additive.
     *
     * @param formulations ids, by rising fraction, the baseline first
     * @param pressure     at which the trend is stated: the geometric mean of the points [Pa, absolute]
     * @param slope        change of ln rate per unit of mass fraction [1]
     * @param slopeStd     its standard uncertainty [1]
     * @param interval     of the slope [1]
     * @param trend        test of no trend
     * @param straight     test of the levels against the straight line; its numerator has the levels less two degrees
     * @param ownExponents whether every level was given an exponent of its own, since one for all does not hold
     */
    public record DoseTrend(
            String additive,
            String baseline,
            List<String> formulations,
            double pressure,
            double slope,
            double slopeStd,
            Interval.Estimated interval,
            FTest trend,
            FTest straight,
            boolean ownExponents,
            String sentence) {

        public DoseTrend {
            formulations = List.copyOf(formulations);
        }
    }
}
