package io.burnlaw.ratelaw;

import io.burnlaw.campaign.Weighting;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/** Turns a weighted solution into a law at its reference pressure. */
final class Laws {

    private Laws() {}

    static RateLaw of(WeightedSolution s, List<FitPoint> points, Weighting weighting) {
        List<double[]> common = List.of(
                s.response(shifts(s, points, weighting, FitPoint::systematic)),
                s.response(shifts(s, points, weighting, point -> s.parameters[1] * point.pressureShared())));
        double reference = rounded(StrictMath.exp(s.lnPressureUnit - s.covariance / s.exponentVariance));
        double x = StrictMath.log(reference) - s.lnPressureUnit;
        return new RateLaw(
                s.lnRateUnit + s.parameters[0] + s.parameters[1] * x,
                s.parameters[1],
                reference,
                s.rateVariance + 2 * x * s.covariance + x * x * s.exponentVariance,
                s.covariance + x * s.exponentVariance,
                s.exponentVariance,
                s.clusters - 2,
                scatter(s, points, weighting, x),
                points.stream().mapToDouble(FitPoint::pressure).min().getAsDouble(),
                points.stream().mapToDouble(FitPoint::pressure).max().getAsDouble(),
                points.size(),
                weighting,
                SystematicError.at(x, common));
    }

    /** What one standard deviation of a shared error does to each point, in the scale of the fit. */
    private static double[] shifts(
            WeightedSolution s, List<FitPoint> points, Weighting weighting, ToDoubleFunction<FitPoint> relative) {
        double[] shift = new double[points.size()];
        for (int i = 0; i < shift.length; i++) {
            double each = relative.applyAsDouble(points.get(i));
            shift[i] = weighting == Weighting.CONSTANT ? each * s.curve.value(s.x[i], s.parameters) : each;
        }
        return shift;
    }

    /** Of a single firing about the law, relative, by the points that are not less certain than a firing with a record; for constant weighting at x, the reference pressure. */
    private static double scatter(WeightedSolution s, List<FitPoint> points, Weighting weighting, double x) {
        boolean allUncertain = points.stream().allMatch(FitPoint::lessCertain);
        double mean = IntStream.range(0, points.size())
                .filter(i -> allUncertain || !points.get(i).lessCertain())
                .mapToDouble(i -> s.variance[i])
                .average()
                .orElseThrow();
        if (weighting == Weighting.CONSTANT) {
            return Math.sqrt(mean) / s.curve.value(x, s.parameters);
        }
        return Math.sqrt(mean);
    }

    /** To two digits: the number is published and typed in by people. */
    static double rounded(double pressure) {
        return new BigDecimal(pressure)
                .round(new MathContext(2, RoundingMode.HALF_EVEN))
                .doubleValue();
    }
}
