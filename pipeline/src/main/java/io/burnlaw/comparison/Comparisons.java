package io.burnlaw.comparison;

import io.burnlaw.comparison.TwoLaws.BatchComparison;
import io.burnlaw.comparison.TwoLaws.SlopeComparison;
import io.burnlaw.comparison.Verdict.SharedRange;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.ratelaw.Interval;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Beta;
import org.apache.commons.math3.special.Gamma;
import org.apache.commons.statistics.distribution.FDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Compares candidates with their baseline: two laws fitted together in ln r over ln P.
 *
 * <p>The scatter is pooled; points of one firing count as one. The ratio of the rates stands with a band that holds for
 * all shared pressures at once (Scheffe 1953; Working and Hotelling 1929); a difference is declared by the test of
 * coincidence after Holm (1979) over all candidates and pressure ranges. Where a law changes inside the shared
 * pressures, each range between the changes is compared on its own.
 *
 * <p>Where the batches of both are known, both stand in one mixed model: a difference counts against the scatter between
 * batches. Where each was cast once, nothing is declared.
 *
 * <p><b>Source.</b> Draper and Smith (1998), chapter 14; docs/methods.md, section 'Comparison'.
 */
public final class Comparisons {

    private Comparisons() {}

    /**
     * Compares every candidate with the baseline.
     *
     * @param baseline   the propellant without, or with another, additive
     * @param candidates in the order in which they are to be told
     * @return for each candidate one comparison, or several where regimes cut its pressures into ranges
     */
    public static List<Comparison> against(
            Propellant baseline, List<Propellant> candidates, ComparisonOptions options) {
        List<Comparison> all = new ArrayList<>();
        List<Trial> trials = new ArrayList<>();
        for (Propellant candidate : candidates) {
            List<Trial> found = trials(baseline, candidate);
            if (found.isEmpty()) {
                all.add(notCompared(baseline, candidate));
            }
            trials.addAll(found);
        }
        double[] adjusted = Holm.adjust(trials.stream()
                .mapToDouble(each -> each.lines.coincident().pValue())
                .toArray());
        for (int i = 0; i < trials.size(); i++) {
            all.add(compared(trials.get(i), adjusted[i], trials.size(), options));
        }
        List<String> order = candidates.stream().map(Propellant::id).toList();
        all.sort((a, b) -> Integer.compare(order.indexOf(a.candidate()), order.indexOf(b.candidate())));
        return List.copyOf(all);
    }

    /** A pair of lines over one range of pressures. */
    private record Trial(Propellant baseline, Propellant candidate, SharedRange range, TwoLaws lines) {}

    private static List<Trial> trials(Propellant baseline, Propellant candidate) {
        List<Trial> trials = new ArrayList<>();
        for (SharedRange range : SharedRange.of(baseline, candidate)) {
            Optional<TwoLaws> overBatches = BatchComparison.of(baseline, candidate, range.middle());
            if (overBatches.isPresent()) {
                trials.add(new Trial(baseline, candidate, range, overBatches.get()));
                continue;
            }
            Optional<LogLine> first = baseline.lineAt(range.middle());
            Optional<LogLine> second = candidate.lineAt(range.middle());
            if (first.isPresent()
                    && second.isPresent()
                    && first.get().degrees() + second.get().degrees() >= 1) {
                trials.add(new Trial(
                        baseline, candidate, range, new SlopeComparison(first.orElseThrow(), second.orElseThrow())));
            }
        }
        return trials;
    }

    private static Comparison compared(Trial trial, double adjusted, int family, ComparisonOptions options) {
        TwoLaws lines = trial.lines;
        double degrees = lines.degrees();
        double student = TDistribution.of(degrees).inverseCumulativeProbability(0.5 + options.level() / 2);
        double scheffe = Math.sqrt(2 * FDistribution.of(2, degrees).inverseCumulativeProbability(options.level()));
        List<Comparison.Ratio> ratio = new ArrayList<>();
        for (int i = 0; i < options.steps(); i++) {
            double share = (double) i / (options.steps() - 1);
            // the ends exactly: exp(log(P)) need not give P back
            double pressure = i == 0
                    ? trial.range.low()
                    : i == options.steps() - 1
                            ? trial.range.high()
                            : trial.range.low() * StrictMath.pow(trial.range.high() / trial.range.low(), share);
            ratio.add(ratio(lines, pressure, scheffe));
        }
        double std = lines.slopeDifferenceStd();
        double difference = lines.slopeDifference();
        double noncentrality = NoncentralF.noncentrality(2, degrees, options.significance() / family, options.power());
        Comparison.Compared numbers = new Comparison.Compared(
                trial.baseline.id(),
                trial.candidate.id(),
                trial.candidate.additive(),
                trial.candidate.fraction(),
                trial.range.low(),
                trial.range.high(),
                ratio,
                ratio(lines, trial.range.middle(), student),
                difference,
                std,
                new Interval.Estimated(
                        difference - student * std,
                        difference + student * std,
                        options.level(),
                        Interval.Method.STUDENT_T),
                lines.parallel(),
                lines.coincident(),
                adjusted,
                family,
                lines.scatter(),
                StrictMath.expm1(Math.sqrt(noncentrality) * lines.levelStd()),
                options.power(),
                adjusted <= options.significance(),
                "");
        Comparison.Compared verdict = Verdict.on(numbers, options.significance());
        return OneBatchEach.is(trial.baseline, trial.candidate) ? OneBatchEach.judged(verdict, options) : verdict;
    }

    private static Comparison.Ratio ratio(TwoLaws lines, double pressure, double quantile) {
        double x = StrictMath.log(pressure);
        double middle = lines.differenceAt(x);
        double half = quantile * lines.differenceStdAt(x);
        return new Comparison.Ratio(
                pressure, StrictMath.exp(middle), StrictMath.exp(middle - half), StrictMath.exp(middle + half));
    }

    private static Comparison notCompared(Propellant baseline, Propellant candidate) {
        return new Comparison.NotCompared(
                baseline.id(),
                candidate.id(),
                candidate.additive(),
                candidate.fraction(),
                Verdict.whyNot(baseline, candidate));
    }

    /** Two propellants that were cast once each: whatever they differ by may be the castings. */
    private static final class OneBatchEach {

        /** Between batches of one formulation [1]; common practice, no source. */
        private static final double USUAL_BETWEEN = 0.02;

        private static final int MOST_BATCHES = 30;

        private OneBatchEach() {}

        static boolean is(Propellant baseline, Propellant candidate) {
            return named(baseline) == 1 && named(candidate) == 1;
        }

        private static int named(Propellant propellant) {
            Set<String> batches = new HashSet<>(propellant.batches().values());
            return batches.size();
        }

        /**
         * The same numbers with what they do not show.
         *
         * @param numbers of the comparison, as if the castings were alike
         * @param options its level and power
         * @return without a difference, and with the batches that would show one
         */
        static Comparison.Compared judged(Comparison.Compared numbers, ComparisonOptions options) {
            double size = Math.abs(StrictMath.log(numbers.typical().value()));
            int batches = batches(size, numbers.scatter(), options);
            String told = batches > MOST_BATCHES
                    ? "more than %d batches of each are needed to show".formatted(MOST_BATCHES)
                    : "%d batches of each are enough to show".formatted(batches);
            return numbers.with(
                    false,
                    "%s and %s were cast once each: the effects of batch and additive cannot be separated. If batches scatter by %s (common practice, no source), %s a change of this size. If both castings were alike: %s"
                            .formatted(
                                    numbers.candidate(),
                                    numbers.baseline(),
                                    NumberFormat.percent(USUAL_BETWEEN, 1),
                                    told,
                                    numbers.verdict()));
        }

        /** Of three firings each, until a two-sided t test of the batches' means finds the change with the stated power. */
        private static int batches(double size, double within, ComparisonOptions options) {
            double std = Math.hypot(USUAL_BETWEEN, within / Math.sqrt(3));
            for (int n = 2; n <= MOST_BATCHES; n++) {
                TDistribution t = TDistribution.of(2.0 * n - 2);
                double need = t.inverseCumulativeProbability(0.5 + options.level() / 2)
                        + t.inverseCumulativeProbability(options.power());
                if (size >= need * std * Math.sqrt(2.0 / n)) {
                    return n;
                }
            }
            return MOST_BATCHES + 1;
        }
    }

    /**
     * Holm's step-down correction: with it the chance of a single false alarm among all tests of a family stays at the
     * level.
     *
     * <p><b>Source.</b> Holm, Scandinavian Journal of Statistics 6 (1979) 65-70.
     */
    static final class Holm {

        private Holm() {}

        /** {@return adjusted p values, in the same order} */
        static double[] adjust(double[] pValues) {
            int[] rising = IntStream.range(0, pValues.length)
                    .boxed()
                    .sorted(Comparator.comparingDouble(i -> pValues[i]))
                    .mapToInt(Integer::intValue)
                    .toArray();
            double[] adjusted = new double[pValues.length];
            double most = 0;
            for (int rank = 0; rank < rising.length; rank++) {
                most = Math.max(most, Math.min(1, (rising.length - rank) * pValues[rising[rank]]));
                adjusted[rising[rank]] = most;
            }
            return adjusted;
        }
    }

    /**
     * Power of an F test: the noncentral F distribution as a Poisson mixture of incomplete beta functions.
     *
     * <pre>
     *     P(F &lt;= f) = sum over j of exp(-h) h^j / j! · I_y(d1/2 + j, d2/2)     h = lambda / 2,  y = d1 f / (d1 f + d2)
     * </pre>
     *
     * <p><b>Source.</b> Abramowitz and Stegun (1964), 26.6.20.
     */
    static final class NoncentralF {

        private NoncentralF() {}

        /**
         * Probability that F is above a value.
         *
         * @param value              f, at least zero
         * @param numeratorDegrees   d1
         * @param denominatorDegrees d2
         * @param noncentrality      lambda, at least zero
         * @return [1]
         */
        static double survival(double value, int numeratorDegrees, double denominatorDegrees, double noncentrality) {
            double half = noncentrality / 2;
            double y = numeratorDegrees * value / (numeratorDegrees * value + denominatorDegrees);
            double sum = 0;
            // beyond ten standard deviations the Poisson weights are below 1e-20
            int from = (int) Math.max(0, half - 10 * Math.sqrt(half) - 5);
            int to = (int) (half + 10 * Math.sqrt(half) + 30);
            for (int j = from; j <= to; j++) {
                double weight = half == 0
                        ? (j == 0 ? 1 : 0)
                        : StrictMath.exp(-half + j * StrictMath.log(half) - Gamma.logGamma(j + 1.0));
                if (weight > 0) {
                    sum += weight * Beta.regularizedBeta(y, numeratorDegrees / 2.0 + j, denominatorDegrees / 2.0);
                }
            }
            return Math.min(1, Math.max(0, 1 - sum));
        }

        /**
         * The noncentrality at which a test has a power.
         *
         * @param numeratorDegrees   d1
         * @param denominatorDegrees d2
         * @param significance       of the test [1]
         * @param power              [1], above the significance
         */
        static double noncentrality(
                int numeratorDegrees, double denominatorDegrees, double significance, double power) {
            double critical =
                    FDistribution.of(numeratorDegrees, denominatorDegrees).inverseSurvivalProbability(significance);
            UnivariateFunction lack =
                    lambda -> survival(critical, numeratorDegrees, denominatorDegrees, lambda) - power;
            // common tests need 8 to 20: from there the bracket is mostly right at once
            double high = 16;
            while (lack.value(high) < 0 && high < 1e7) {
                high *= 2;
            }
            return new BrentSolver(1e-12, 1e-12).solve(200, lack, 0, high);
        }
    }
}
