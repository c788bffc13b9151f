package io.burnlaw.ratelaw;

import static io.burnlaw.ratelaw.RateLawFit.say;

import io.burnlaw.campaign.Weighting;
import java.util.List;
import java.util.Optional;

/**
 * Fits rate, pressure and temperature together:
 *
 * <pre>
 *     ln r = L + n·ln(P / P_ref) + σ_p·(T - T₀)            σ_p = (∂ ln r / ∂T) at constant P       [1/K]
 *     π_K  = σ_p / (1 - n)                                 (∂ ln P / ∂T) at constant K_n           [1/K]
 * </pre>
 *
 * by weighted least squares between logarithms; the weights are those of {@link ScatterModel}. The interval of π_K is
 * Fieller's: the values k for which σ_p - k·(1 - n) is not significantly different from zero.
 *
 * <p><b>Valid</b> where n and σ_p are constant over the pressures and temperatures fired.
 *
 * <p><b>Source.</b> Definitions: Sutton and Biblarz (2001), ch. 11; Fieller (1954).
 */
public final class TemperatureFit {

    private TemperatureFit() {}

    /**
     * Fits all points together.
     *
     * @param referenceTemperature T₀ [K]
     * @param weighting            of the points; {@code CONSTANT} is taken as {@code PROPORTIONAL}, since the temperature
     *                             acts as a factor
     * @param level                of the intervals [1], between 0.5 and 0.999
     * @return the sensitivity with the law at the reference temperature, or why there is none
     */
    public static TemperatureResult fit(
            List<PointAtTemperature> points, double referenceTemperature, Weighting weighting, double level) {
        List<FitPoint> plain = points.stream().map(PointAtTemperature::point).toList();
        int count = points.size();
        double[] x = new double[count];
        double[] t = new double[count];
        for (int i = 0; i < count; i++) {
            x[i] = StrictMath.log(plain.get(i).pressure());
            t[i] = points.get(i).temperature() - referenceTemperature;
        }
        String obstacle = TemperatureObstacles.obstacle(points, x, t);
        if (!obstacle.isEmpty()) {
            return new TemperatureResult.NotEstimated(
                    obstacle, TemperatureObstacles.mend(points, referenceTemperature));
        }
        Weighting between = weighting == Weighting.MEASURED ? weighting : Weighting.PROPORTIONAL;
        if (between == Weighting.MEASURED && plain.stream().anyMatch(p -> !(p.ownRelativeStd() > 0))) {
            between = Weighting.PROPORTIONAL;
        }
        TemperaturePlane plane = new TemperaturePlane(plain, x, t, between);
        return plane.solve()
                ? plane.result(points, referenceTemperature, level)
                : new TemperatureResult.NotEstimated(
                        "The effects of pressure and temperature cannot be separated in these firings.",
                        TemperatureObstacles.mend(points, referenceTemperature));
    }

    /** What is missing between points at several temperatures and a sensitivity, each with the firing that would help. */
    private static final class TemperatureObstacles {

        /** Temperatures closer than this [K] are one temperature: grains are seldom conditioned better. */
        private static final double LEAST_SPAN = 3;

        /** Below this share of its own spread that pressure does not explain, temperature cannot be distinguished from pressure. */
        private static final double LEAST_UNEXPLAINED = 0.02;

        private TemperatureObstacles() {}

        /** {@return a sentence that says why there is no sensitivity; empty where there is one} */
        static String obstacle(List<PointAtTemperature> points, double[] x, double[] t) {
            long firings =
                    points.stream().map(p -> p.point().cluster()).distinct().count();
            double span = span(t);
            if (firings < 4) {
                return say(
                        "%d independent firings with a temperature: rate, exponent and sensitivity take three, and the scatter is unknown.",
                        firings);
            }
            if (span < LEAST_SPAN) {
                return say("All firings were within %.1f K of each other.", span);
            }
            if (span(x) < RateLawFit.leastLnSpan()) {
                return "All firings were at one pressure: they give no exponent, and without one, rates at different"
                        + " pressures cannot be compared.";
            }
            if (unexplained(x, t) < LEAST_UNEXPLAINED) {
                return "Temperature and pressure rose together in these firings: their effects cannot be separated.";
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

    /**
     * A rate-pressure point whose propellant had a known temperature.
     *
     * @param temperature of the propellant [K], above zero
     */
    public record PointAtTemperature(FitPoint point, double temperature) {

        public PointAtTemperature {
            if (!(temperature > 0)) {
                throw new IllegalArgumentException("point " + point.id() + " at " + temperature + " K");
            }
        }
    }

    /**
     * The propellant's temperature sensitivity from firings at several temperatures, or why there is none.
     */
    public sealed interface TemperatureResult {

        /**
         * The sensitivity was estimated.
         *
         * @param sigmaP               σ_p, of the rate at constant pressure [1/K]
         * @param sigmaPStd            its standard uncertainty [1/K]
         * @param sigmaPInterval       its interval [1/K]
         * @param piK                  π_K, of the pressure at constant geometry [1/K]
         * @param piKInterval          its interval by Fieller's theorem [1/K], or why there is none
         * @param referenceTemperature T₀ [K]
         * @param law                  r(P) at the reference temperature, with the sensitivity's uncertainty in it
         * @param referred             the points with their rates brought to the reference temperature
         * @param temperatureLow       lowest temperature among the points [K]
         * @param temperatureHigh      highest temperature among the points [K]
         */
        record Estimated(
                double sigmaP,
                double sigmaPStd,
                Interval sigmaPInterval,
                double piK,
                Interval piKInterval,
                double referenceTemperature,
                RateLaw law,
                List<FitPoint> referred,
                double temperatureLow,
                double temperatureHigh,
                String sentence)
                implements TemperatureResult {
            public Estimated {
                referred = List.copyOf(referred);
            }
        }

        /**
         * It could not be estimated.
         *
         * @param mend a sentence that says which firing would help
         */
        record NotEstimated(String reason, String mend) implements TemperatureResult {}

        /** {@return the estimate, where there is one} */
        default Optional<Estimated> estimated() {
            return this instanceof Estimated e ? Optional.of(e) : Optional.empty();
        }
    }
}
