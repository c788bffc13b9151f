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

    private final PiecewiseLaw law;
    private final double level;
    private final double besidesRate;
    private final double highest;

    /**
     * A band.
     *
     * @param law         with its covariance
     * @param level       of the prediction
     * @param besidesRate relative standard deviation of what multiplies the rate
     * @param highest     above which the rate is held: keeps a law that runs away computable [Pa, absolute]
     */
    RateBand(PiecewiseLaw law, double level, double besidesRate, double highest) {
        this.law = law;
        this.level = level;
        this.besidesRate = besidesRate;
        this.highest = highest;
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
        RateLaw here = law.at(pressure);
        double middle = here.rate(pressure);
        if (here.predict(pressure, level) instanceof Interval.Estimated e) {
            double ofRate = StrictMath.log(e.high() / middle);
            double normal = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.5 + level / 2);
            return middle * StrictMath.exp(sign * Math.hypot(ofRate, normal * besidesRate));
        }
        throw new IllegalStateException("a law without a scatter reached the planner: " + here);
    }
}
