package io.burnlaw.planning;

import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.PiecewiseLaw;
import io.burnlaw.ratelaw.RateLaw;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The rate of the next firing: the law, and the ends of its prediction interval at every pressure, widened by what c*,
 * density and throat add. Their product stands in the balance of the chamber as a factor of the rate, so their relative
 * uncertainties add to its square.
 */
final class RateBand {

    /** Steps of the table in ln P from 1 kPa: near a tenth each, over which the width hardly bends. */
    private static final int STEPS = 96;

    private static final double LN_FROM = StrictMath.log(1e3);

    private final PiecewiseLaw law;
    private final double highest;
    private final double lnStep;

    /** Half of the band's width in ln rate, for each law over ln P: quantiles are too dear for each step of a burn. */
    private final double[][] halfWidth;

    /**
     * A band.
     *
     * @param besidesRate relative standard deviation of what multiplies the rate
     * @param highest     above which the rate is held: keeps a law that runs away computable [Pa, absolute]
     */
    RateBand(PiecewiseLaw law, double level, double besidesRate, double highest) {
        this.law = law;
        this.highest = highest;
        this.lnStep = (StrictMath.log(highest) - LN_FROM) / STEPS;
        double beside = besidesRate * NormalDistribution.of(0, 1).inverseCumulativeProbability(0.5 + level / 2);
        this.halfWidth = new double[law.laws().size()][STEPS + 1];
        for (int piece = 0; piece < halfWidth.length; piece++) {
            for (int i = 0; i <= STEPS; i++) {
                double pressure = StrictMath.exp(LN_FROM + i * lnStep);
                halfWidth[piece][i] = Math.hypot(beside, ofRate(law.laws().get(piece), pressure, level));
            }
        }
    }

    private static double ofRate(RateLaw law, double pressure, double level) {
        if (law.predict(pressure, level) instanceof Interval.Estimated e) {
            return StrictMath.log(e.high() / law.rate(pressure));
        }
        throw new IllegalStateException("a law without a scatter reached the planner: " + law);
    }

    DoubleUnaryOperator middle() {
        return pressure -> law.rate(Math.min(pressure, highest));
    }

    DoubleUnaryOperator high() {
        return pressure -> bound(Math.min(pressure, highest), 1);
    }

    DoubleUnaryOperator low() {
        return pressure -> bound(Math.min(pressure, highest), -1);
    }

    private double bound(double pressure, int sign) {
        double[] table = halfWidth[law.indexAt(pressure)];
        double place = Math.min(STEPS - 1e-9, Math.max(0, (StrictMath.log(pressure) - LN_FROM) / lnStep));
        int i = (int) place;
        double half = table[i] + (place - i) * (table[i + 1] - table[i]);
        return law.rate(pressure) * StrictMath.exp(sign * half);
    }
}
