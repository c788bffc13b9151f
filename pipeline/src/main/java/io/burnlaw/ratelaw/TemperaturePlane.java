package io.burnlaw.ratelaw;

import static io.burnlaw.ratelaw.RateLawFit.say;

import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.LeastSquares.Covariance;
import io.burnlaw.ratelaw.TemperatureFit.PointAtTemperature;
import io.burnlaw.ratelaw.TemperatureFit.TemperatureResult;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/** The plane ln r over ln P and T, with its weights. */
final class TemperaturePlane {

    private static final int MOST_ROUNDS = 200;

    private final List<FitPoint> points;
    private final double[][] design;
    private final double[] y;
    private final double center;
    private final Weighting weighting;
    private final ScatterModel model;
    private double[] parameters = new double[3];
    private double[] variance;
    private Covariance covariance;

    TemperaturePlane(List<FitPoint> points, double[] x, double[] t, Weighting weighting) {
        this.points = points;
        this.weighting = weighting;
        center = Arrays.stream(x).average().orElseThrow();
        design = new double[x.length][];
        y = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            design[i] = new double[] {1, x[i] - center, t[i]};
            y[i] = StrictMath.log(points.get(i).rate());
        }
        model = new ScatterModel(points, weighting, points.stream().anyMatch(p -> p.pressureStd() > 0));
    }

    boolean solve() {
        double scatter = weighting.estimatesScale() ? 1 : 0;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            variance = model.variances(scatter, slopes());
            MultivariateJacobianFunction residuals = point -> evaluate(point.toArray());
            if (!(LeastSquares.minimize(residuals, y.length, parameters) instanceof LeastSquares.Minimum minimum)) {
                return false;
            }
            double moved = parameters[1];
            parameters = minimum.parameters().toArray();
            double next = Math.max(1e-30, model.scatter(misses(), slopes(), 3));
            boolean settled = Math.abs(parameters[1] - moved) + Math.abs(Math.sqrt(next) - Math.sqrt(scatter)) < 1e-12;
            scatter = weighting.estimatesScale() ? next : 0;
            covariance = minimum.covariance();
            if (settled || !weighting.estimatesScale() && !model.followsSlope()) {
                return true;
            }
        }
        return true;
    }

    private double[] slopes() {
        double[] slopes = new double[y.length];
        Arrays.fill(slopes, parameters[1]);
        return slopes;
    }

    private double[] misses() {
        double[] misses = new double[y.length];
        for (int i = 0; i < misses.length; i++) {
            misses[i] = y[i] - value(design[i], parameters);
        }
        return misses;
    }

    private static double value(double[] row, double[] p) {
        return row[0] * p[0] + row[1] * p[1] + row[2] * p[2];
    }

    private Pair<RealVector, RealMatrix> evaluate(double[] p) {
        double[] residual = new double[y.length];
        double[][] jacobian = new double[y.length][3];
        for (int i = 0; i < y.length; i++) {
            double std = Math.sqrt(variance[i] * model.share(i));
            residual[i] = (value(design[i], p) - y[i]) / std;
            for (int k = 0; k < 3; k++) {
                jacobian[i][k] = design[i][k] / std;
            }
        }
        return new Pair<>(new ArrayRealVector(residual, false), new Array2DRowRealMatrix(jacobian, false));
    }

    TemperatureResult result(List<PointAtTemperature> at, double referenceTemperature, double level) {
        int freedom = model.clusters() - 3;
        double quantile = weighting.estimatesScale()
                ? TDistribution.of(freedom).inverseCumulativeProbability(0.5 + level / 2)
                : NormalDistribution.of(0, 1).inverseCumulativeProbability(0.5 + level / 2);
        double sigma = parameters[2];
        double std = covariance.std(2);
        Interval sigmaInterval = new Interval.Estimated(
                sigma - quantile * std, sigma + quantile * std, level, Interval.Method.STUDENT_T);
        double piK = sigma / (1 - parameters[1]);
        double low =
                at.stream().mapToDouble(PointAtTemperature::temperature).min().orElseThrow();
        double high =
                at.stream().mapToDouble(PointAtTemperature::temperature).max().orElseThrow();
        List<FitPoint> referred = at.stream()
                .map(each -> referred(each, sigma, referenceTemperature))
                .toList();
        return new TemperatureResult.Estimated(
                sigma,
                std,
                sigmaInterval,
                piK,
                fieller(sigma, 1 - parameters[1], quantile, level),
                referenceTemperature,
                law(freedom),
                referred,
                low,
                high,
                say(
                        "The rate changes by %.2f %% a kelvin at constant pressure (%.2f to %.2f %%), from firings between %.0f and %.0f K.",
                        100 * sigma, 100 * (sigma - quantile * std), 100 * (sigma + quantile * std), low, high));
    }

    private static FitPoint referred(PointAtTemperature each, double sigma, double referenceTemperature) {
        FitPoint p = each.point();
        return p.moved(p.pressure(), p.rate() * StrictMath.exp(sigma * (referenceTemperature - each.temperature())));
    }

    /** σ/m where both are uncertain; without end where m, that is 1 - n, may be zero. */
    private Interval fieller(double sigma, double m, double quantile, double level) {
        double q = quantile * quantile;
        double a = m * m - q * covariance.get(1, 1);
        double b = -(sigma * m + q * covariance.get(1, 2));
        double c = sigma * sigma - q * covariance.get(2, 2);
        if (!(a > 0)) {
            return new Interval.NotEstimable(
                    "the interval of the exponent reaches 1, where the pressure's sensitivity has no limit; firings further apart in pressure would narrow it");
        }
        double root = Math.sqrt(Math.max(0, b * b - a * c));
        return new Interval.Estimated((-b - root) / a, (-b + root) / a, level, Interval.Method.STUDENT_T);
    }

    private RateLaw law(int freedom) {
        Covariance v = covariance;
        double reference = Laws.rounded(StrictMath.exp(center - v.get(0, 1) / v.get(1, 1)));
        double x = StrictMath.log(reference) - center;
        double mean = Arrays.stream(variance).average().orElseThrow();
        return new RateLaw(
                parameters[0] + x * parameters[1],
                parameters[1],
                reference,
                v.get(0, 0) + 2 * x * v.get(0, 1) + x * x * v.get(1, 1),
                v.get(0, 1) + x * v.get(1, 1),
                v.get(1, 1),
                freedom,
                Math.sqrt(mean),
                points.stream().mapToDouble(FitPoint::pressure).min().orElseThrow(),
                points.stream().mapToDouble(FitPoint::pressure).max().orElseThrow(),
                points.size(),
                weighting,
                SystematicError.at(
                        x,
                        List.of(
                                shared(FitPoint::systematic),
                                shared(point -> parameters[1] * point.pressureShared()))));
    }

    /** What a shared error does to rate and exponent. */
    private double[] shared(ToDoubleFunction<FitPoint> relative) {
        double[] pull = new double[3];
        for (int i = 0; i < y.length; i++) {
            double weight = relative.applyAsDouble(points.get(i)) / (variance[i] * model.share(i));
            for (int k = 0; k < 3; k++) {
                pull[k] += weight * design[i][k];
            }
        }
        double[] shift = new double[2];
        for (int j = 0; j < 2; j++) {
            for (int k = 0; k < 3; k++) {
                shift[j] += covariance.get(j, k) * pull[k];
            }
        }
        return shift;
    }
}
