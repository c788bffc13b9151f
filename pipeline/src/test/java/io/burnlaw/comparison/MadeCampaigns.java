package io.burnlaw.comparison;

import io.burnlaw.ratelaw.FitPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;

/** Points scattered about a known law; invented. */
public final class MadeCampaigns {

    private MadeCampaigns() {}

    /** Firings evenly spread in ln P from 1 to 6 MPa, each with its own relative error. */
    static List<FitPoint> firings(
            String name, int count, double coefficient, double exponent, double scatter, RandomGenerator random) {
        List<FitPoint> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double pressure = 1e6 * Math.pow(6, (i + 0.6 * random.nextDouble() - 0.3) / (count - 1));
            double rate = coefficient * Math.pow(pressure / 1e6, exponent) * Math.exp(scatter * random.nextGaussian());
            points.add(point(name + i, name + i, pressure, rate));
        }
        return points;
    }

    static FitPoint point(String id, String cluster, double pressure, double rate) {
        return new FitPoint(id, cluster, pressure, 0, rate, 0, 0);
    }

    /** A propellant without an additive and with one law. */
    public static Propellant propellant(String id, List<FitPoint> points) {
        return new Propellant(
                id, Optional.empty(), OptionalDouble.empty(), points, Optional.empty(), Map.of(), List.of());
    }
}
