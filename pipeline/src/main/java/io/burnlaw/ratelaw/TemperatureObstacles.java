package io.burnlaw.ratelaw;

import static io.burnlaw.ratelaw.RateLawFit.say;

import java.util.List;

/** What stands between points at several temperatures and a sensitivity, each with the firing that would mend it. */
final class TemperatureObstacles {

    /** Temperatures closer than this [K] are one temperature: grains are seldom conditioned better. */
    private static final double LEAST_SPAN = 3;

    /** Below this share of its own spread that pressure does not explain, temperature cannot be told from pressure. */
    private static final double LEAST_UNEXPLAINED = 0.02;

    private TemperatureObstacles() {}

    /** {@return a sentence that says why nothing can be told, or nothing} */
    static String obstacle(List<PointAtTemperature> points, double[] x, double[] t) {
        long firings = points.stream().map(p -> p.point().cluster()).distinct().count();
        double span = span(t);
        if (firings < 4) {
            return say(
                    "%d independent firings with a temperature: rate, exponent and sensitivity take three, and nothing is left to judge the scatter by.",
                    firings);
        }
        if (span < LEAST_SPAN) {
            return say("All firings were within %.1f K of each other.", span);
        }
        if (span(x) < RateLawFit.leastLnSpan()) {
            return "All firings were at one pressure: no exponent follows, and without it no two pressures compare.";
        }
        if (unexplained(x, t) < LEAST_UNEXPLAINED) {
            return "Temperature and pressure rose together in these firings: their effects cannot be told apart.";
        }
        return "";
    }

    /** {@return the firing that would change that} */
    static String mend(List<PointAtTemperature> points, double referenceTemperature) {
        double farthest = points.stream()
                .mapToDouble(PointAtTemperature::temperature)
                .map(each -> Math.abs(each - referenceTemperature))
                .max()
                .orElse(0);
        return farthest < 10
                ? "Fire twice at each of two pressures, once with the grain some 20 K warmer or colder, within what its maker and the law allow."
                : "Fire at a pressure already fired, with the grain at another temperature.";
    }

    private static double span(double[] values) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double value : values) {
            low = Math.min(low, value);
            high = Math.max(high, value);
        }
        return high - low;
    }

    /** Share of the temperatures' variance that a straight line over ln P leaves. */
    private static double unexplained(double[] x, double[] t) {
        double meanX = 0;
        double meanT = 0;
        for (int i = 0; i < x.length; i++) {
            meanX += x[i] / x.length;
            meanT += t[i] / x.length;
        }
        double sxx = 0;
        double sxt = 0;
        double stt = 0;
        for (int i = 0; i < x.length; i++) {
            sxx += (x[i] - meanX) * (x[i] - meanX);
            sxt += (x[i] - meanX) * (t[i] - meanT);
            stt += (t[i] - meanT) * (t[i] - meanT);
        }
        return 1 - sxt * sxt / (sxx * stt);
    }
}
