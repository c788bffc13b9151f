package io.burnlaw.ratelaw;

import java.util.List;

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
     * @param points               with their temperatures
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
                        "Pressure and temperature of these firings cannot be told apart.",
                        TemperatureObstacles.mend(points, referenceTemperature));
    }
}
