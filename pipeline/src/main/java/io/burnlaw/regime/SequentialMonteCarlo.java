package io.burnlaw.regime;

import io.burnlaw.quantity.NumberFormat;
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
     * @param campaigns simulated
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
}
