package io.burnlaw.ratelaw;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Made-up points from a known law, from a seed. */
final class Campaigns {

    static final double RATE_AT_MEGAPASCAL = 6.2e-3;
    static final double EXPONENT = 0.42;

    private Campaigns() {}

    static double truth(double pressure) {
        return RATE_AT_MEGAPASCAL * Math.pow(pressure / 1e6, EXPONENT);
    }

    /** Evenly spread over ln P from 0.8 to 8 MPa, the rate off by a factor of standard deviation {@code scatter}. */
    static List<FitPoint> spread(int count, double scatter, SplittableRandom random) {
        List<FitPoint> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double pressure = 0.8e6 * Math.pow(10, i / (count - 1.0));
            double rate = truth(pressure) * Math.exp(scatter * normal(random));
            points.add(new FitPoint("f" + i, "f" + i, pressure, 0, rate, 0, 0));
        }
        return points;
    }

    /** Standard normal by the method of Box and Muller: {@code SplittableRandom} has none on every platform alike. */
    static double normal(SplittableRandom random) {
        double u = 1 - random.nextDouble();
        return StrictMath.sqrt(-2 * StrictMath.log(u)) * StrictMath.cos(2 * Math.PI * random.nextDouble());
    }
}
