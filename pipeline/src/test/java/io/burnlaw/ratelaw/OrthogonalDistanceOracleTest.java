package io.burnlaw.ratelaw;

import static io.burnlaw.ratelaw.PowerLawOracleTest.assertRelative;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import io.burnlaw.campaign.PressureErrors;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.WeightedFit.OrthogonalDistance;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class OrthogonalDistanceOracleTest {

    @Test
    @Oracle(
            value = "Pearson's data with York's weights: York et al. (2004), Am. J. Phys. 72:367; Neri et al. (1989)",
            agreement = "line 1e-12, standard errors to the five digits of 0.29497 and 0.057985")
    void lineWithErrorsInBothCoordinatesAgreesWithYork() {
        PublishedData data = PublishedData.read("pearson_york.csv");
        double[] xStd =
                Arrays.stream(data.column("wx")).map(w -> 1 / Math.sqrt(w)).toArray();
        double[] yStd =
                Arrays.stream(data.column("wy")).map(w -> 1 / Math.sqrt(w)).toArray();
        LeastSquares.Minimum line = (LeastSquares.Minimum) OrthogonalDistance.minimize(
                Curve.LINE, data.column("x"), data.column("y"), xStd, yStd, new double[] {6, -0.6});
        // The search stops where the sum of squares no longer changes in 14 digits: half as many digits of a shift.
        assertRelative(line.parameters().get(0), 5.47991022403286, 1e-8);
        assertRelative(line.parameters().get(1), -0.480533407446202, 1e-8);
        assertRelative(line.sumOfSquares(), 11.8663531940615, 1e-11);
        assertRelative(line.covariance().std(0), 0.29497073549311, 1e-6);
        assertRelative(line.covariance().std(1), 0.05798500900077, 1e-6);
    }

    @Test
    @Oracle(
            value =
                    "ODRPACK User's Guide, NISTIR 4834 (1992), explicit sample problem, as solved by ODRPACK in SciPy 1.10.1",
            agreement = "parameters 2e-6, standard errors 1e-5, relative")
    void explicitSampleProblemAgreesWithOdrpack() {
        PublishedData data = PublishedData.read("odrpack_explicit.csv");
        double[] xStd = data.column("ifixx");
        double[] yStd = new double[xStd.length];
        Arrays.fill(yStd, 1);
        LeastSquares.Minimum found = (LeastSquares.Minimum) OrthogonalDistance.minimize(
                new Saturating(), data.column("x"), data.column("y"), xStd, yStd, new double[] {1500, -50, -0.1});
        // The printed solution is where ODRPACK stops by default; with its tolerances at 1e-16 it goes on to -54.018387
        // and -0.08784983, 4e-7 and 1.4e-6 away, which is where this search ends too.
        assertRelative(found.parameters().get(0), 1264.6548050648876, 1e-8);
        assertRelative(found.parameters().get(1), -54.018409956678255, 2e-6);
        assertRelative(found.parameters().get(2), -0.087849712165253724, 2e-6);
        double scale = found.sumOfSquares() / (xStd.length - 3);
        assertRelative(found.covariance().times(scale).std(0), 1.0349270280543437, 1e-5);
        assertRelative(found.covariance().times(scale).std(1), 1.583997785262061, 1e-5);
        assertRelative(found.covariance().times(scale).std(2), 0.0063321988657267, 1e-5);
        assertRelative(found.covariance().get(0, 0), 0.44949592379, 1e-5);
        assertRelative(found.covariance().get(0, 1), -0.37421976890, 1e-5);
        assertRelative(found.covariance().get(1, 2), -0.00194535218, 1e-5);
    }

    @Test
    @Oracle(
            value = "SciPy 1.10.1, scipy.odr (ODRPACK), on NIST StRD DanWood with u(x) = 0.01 and u(y) = 0.03 assumed",
            agreement = "parameters 1e-7, standard errors 1e-5, relative")
    void powerLawWithErrorsInBothCoordinatesAgreesWithOdrpack() {
        PublishedData data = PublishedData.read("odr_powerlaw_danwood.csv");
        LeastSquares.Minimum found = (LeastSquares.Minimum) OrthogonalDistance.minimize(
                new Power(), data.column("x"), data.column("y"), data.column("sx"), data.column("sy"), new double[] {
                    1, 3
                });
        assertRelative(found.parameters().get(0), 0.755012700916614, 1e-7);
        assertRelative(found.parameters().get(1), 3.901484742175039, 1e-7);
        assertRelative(found.sumOfSquares(), 0.3838354711352481, 1e-10);
        assertRelative(found.covariance().get(0, 0), 0.0024134732762544566, 1e-5);
        assertRelative(found.covariance().get(0, 1), -0.0072002507401822515, 1e-5);
        assertRelative(found.covariance().get(1, 1), 0.022103446354171646, 1e-5);
    }

    @Test
    @Oracle(
            value = "Pearson's data with York's weights: York et al. (2004), Am. J. Phys. 72:367",
            agreement = "the rate law between logarithms gives the same line, 1e-8")
    void rateLawByOrthogonalDistanceIsYorksLineBetweenLogarithms() {
        PublishedData data = PublishedData.read("pearson_york.csv");
        double[] x = data.column("x");
        double[] y = data.column("y");
        List<FitPoint> points = new ArrayList<>();
        for (int i = 0; i < x.length; i++) {
            double pressure = Math.exp(x[i]);
            double rate = Math.exp(y[i]);
            points.add(new FitPoint(
                    "p" + i,
                    "p" + i,
                    pressure,
                    pressure / Math.sqrt(data.column("wx")[i]),
                    rate,
                    rate / Math.sqrt(data.column("wy")[i]),
                    0));
        }
        FitOptions options = FitOptions.defaults().with(Weighting.MEASURED).with(PressureErrors.ORTHOGONAL_DISTANCE);
        FitResult.Fitted fit = RateLawFit.fit(points, options).fitted().orElseThrow();
        assertThat(fit.pressureErrors()).isEqualTo(PressureErrors.ORTHOGONAL_DISTANCE);
        assertThat(Math.log(fit.law().rate(1))).isCloseTo(5.47991022403286, within(1e-7));
        assertRelative(fit.law().exponent(), -0.480533407446202, 1e-7);
        assertRelative(fit.law().lnStd(1), 0.29497073549311, 1e-6);
        assertRelative(fit.law().exponentStd(), 0.05798500900077, 1e-6);
    }

    /** y = b1 + b2·(exp(b3·x) - 1)². */
    private static final class Saturating implements Curve {
        @Override
        public double value(double x, double[] b) {
            double e = Math.exp(b[2] * x) - 1;
            return b[0] + b[1] * e * e;
        }

        @Override
        public double[] gradient(double x, double[] b) {
            double e = Math.exp(b[2] * x) - 1;
            return new double[] {1, e * e, 2 * b[1] * e * x * (e + 1)};
        }

        @Override
        public double slope(double x, double[] b) {
            double e = Math.exp(b[2] * x) - 1;
            return 2 * b[1] * e * b[2] * (e + 1);
        }
    }

    /** y = b1·x^b2. */
    static final class Power implements Curve {
        @Override
        public double value(double x, double[] b) {
            return b[0] * Math.pow(x, b[1]);
        }

        @Override
        public double[] gradient(double x, double[] b) {
            return new double[] {Math.pow(x, b[1]), value(x, b) * Math.log(x)};
        }

        @Override
        public double slope(double x, double[] b) {
            return value(x, b) * b[1] / x;
        }
    }
}
