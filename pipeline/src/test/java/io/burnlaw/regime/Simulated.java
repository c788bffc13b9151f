package io.burnlaw.regime;

import io.burnlaw.ratelaw.FitPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;

/** Points about a known truth, evenly spread in ln P. */
final class Simulated {

    private Simulated() {}

    /**
     * Points.
     *
     * @param count   how many
     * @param low     lowest pressure [Pa]
     * @param high    highest pressure [Pa]
     * @param rate    truth, Pa → m/s
     * @param scatter relative standard deviation [1]
     * @param seed    of the scatter
     */
    static List<FitPoint> points(
            int count, double low, double high, DoubleUnaryOperator rate, double scatter, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<FitPoint> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double pressure = low * Math.pow(high / low, i / (count - 1.0));
            double value = rate.applyAsDouble(pressure) * Math.exp(scatter * random.nextGaussian());
            points.add(point("p" + (i + 1), pressure, value));
        }
        return points;
    }

    static FitPoint point(String id, double pressure, double rate) {
        return new FitPoint(id, id, pressure, 0, rate, 0, 0);
    }

    /** Two power laws, 5 mm/s at the break on the lower side. */
    static DoubleUnaryOperator broken(double at, double below, double above, double jump) {
        return pressure ->
                5e-3 * (pressure < at ? Math.pow(pressure / at, below) : jump * Math.pow(pressure / at, above));
    }

    /** Options with another number of replicates of each bootstrap. */
    static RegimeOptions withReplicates(RegimeOptions options, int other) {
        return new RegimeOptions(
                options.seed(),
                options.level(),
                other,
                options.weighting(),
                options.maximumSegments(),
                options.minimumPoints(),
                options.systematicFloor(),
                options.limit());
    }
}
