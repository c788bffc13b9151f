package io.burnlaw.regime;

import io.burnlaw.quantity.NumberFormat;
import java.util.Arrays;
import java.util.function.IntConsumer;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * Adds simulated campaigns until a test's answer at its level is clear, or until there are as many as allowed: most tests
 * are clear after one or two hundred. It is clear where so few, or so many, exceedances would come by less than one
 * chance in a thousand if the share were just the level (sequential Monte-Carlo tests: Besag and Clifford 1991).
 */
final class SequentialMonteCarlo {

    private static final int FIRST = 99;
    private static final double CLEAR = 1e-3;

    private SequentialMonteCarlo() {}

    /**
     * Simulates.
     *
     * @param most     campaigns, at least 99
     * @param error    level of the test [1]
     * @param simulate makes campaign number b, from 1
     * @param pValue   share of campaigns 1 to b, and of the data, at least as extreme as the data
     * @return the p value and how many campaigns it rests on
     */
    static SimulatedP run(int most, double error, IntConsumer simulate, IntToDoubleFunction pValue) {
        int done = 0;
        int next = Math.min(FIRST, most);
        while (true) {
            while (done < next) {
                simulate.accept(++done);
            }
            double p = pValue.applyAsDouble(done);
            if (done >= most || clear((int) Math.round(p * (done + 1)) - 1, done, error)) {
                return new SimulatedP(p, done);
            }
            next = Math.min(most, 2 * done + 1);
        }
    }

    private static boolean clear(int exceedances, int campaigns, double error) {
        BinomialDistribution chance = BinomialDistribution.of(campaigns, error);
        return chance.cumulativeProbability(exceedances) < CLEAR || chance.survivalProbability(exceedances - 1) < CLEAR;
    }

    /**
     * A p value by simulation.
     *
     * @param value     share of campaigns, the data among them, at least as extreme as the data [1]
     */
    record SimulatedP(double value, int campaigns) {

        boolean rejectsAt(double error) {
            return value <= error + 1e-12;
        }

        /** {@return as it is printed: never smaller than so many campaigns can show} */
        String words() {
            double least = 1.0 / (campaigns + 1);
            return value <= least * 1.0000001
                    ? "p ≤ " + NumberFormat.significant(least, 1)
                    : NumberFormat.probability(value);
        }
    }

    /** p values by rank: the data stand at place 0 among campaigns that were simulated under the hypothesis. */
    static final class Ranks {

        private Ranks() {}

        /** {@return for each value, the share of all values (itself included) that are at least as large} */
        static double[] upperTail(double[] values) {
            double[] sorted = values.clone();
            Arrays.sort(sorted);
            double[] tail = new double[values.length];
            for (int i = 0; i < values.length; i++) {
                int low = 0;
                int high = sorted.length;
                while (low < high) {
                    int middle = (low + high) >>> 1;
                    if (sorted[middle] < values[i]) {
                        low = middle + 1;
                    } else {
                        high = middle;
                    }
                }
                tail[i] = (double) (sorted.length - low) / sorted.length;
            }
            return tail;
        }

        /**
         * The p value of place 0 by two figures together: the larger of their leads over their own critical values,
         * where the first has its share of the level and the second the rest.
         */
        static double combined(double[] first, double[] second, double firstWeight, double level) {
            double a = quantile(first, 1 - level * firstWeight);
            double b = quantile(second, 1 - level * (1 - firstWeight));
            double[] lead = new double[first.length];
            for (int i = 0; i < first.length; i++) {
                lead[i] = Math.max(first[i] - a, second[i] - b);
            }
            return upperTail(lead)[0];
        }

        private static double quantile(double[] values, double share) {
            double[] sorted = values.clone();
            Arrays.sort(sorted);
            double at = share * (sorted.length - 1);
            int low = (int) at;
            int high = Math.min(sorted.length - 1, low + 1);
            return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
        }
    }
}
