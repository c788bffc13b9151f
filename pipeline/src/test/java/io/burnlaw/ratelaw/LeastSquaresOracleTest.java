package io.burnlaw.ratelaw;

import static io.burnlaw.ratelaw.PowerLawOracleTest.assertRelative;
import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.Oracle;
import io.burnlaw.ratelaw.LeastSquares.Covariance;
import io.burnlaw.ratelaw.OtherFits.HuberFit;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleBiFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class LeastSquaresOracleTest {

    /** A certified set: model, both starts, certified parameters and standard deviations, residual sum of squares. */
    private record Certified(
            String file,
            ToDoubleBiFunction<Double, double[]> model,
            double[][] starts,
            double[] parameters,
            double[] stds,
            double sumOfSquares) {
        @Override
        public String toString() {
            return file;
        }
    }

    static List<Certified> sets() {
        return List.of(
                new Certified(
                        "nist_danwood.csv",
                        (x, b) -> b[0] * Math.pow(x, b[1]),
                        new double[][] {{1, 5}, {0.7, 4}},
                        new double[] {7.6886226176E-01, 3.8604055871E+00},
                        new double[] {1.8281973860E-02, 5.1726610913E-02},
                        4.3173084083E-03),
                new Certified(
                        "nist_bennett5.csv",
                        (x, b) -> b[0] * Math.pow(b[1] + x, -1 / b[2]),
                        new double[][] {{-2000, 50, 0.8}, {-1500, 45, 0.85}},
                        new double[] {-2.5235058043E+03, 4.6736564644E+01, 9.3218483193E-01},
                        new double[] {2.9715175411E+02, 1.2448871856E+00, 2.0272299378E-02},
                        5.2404744073E-04),
                new Certified(
                        "nist_misra1a.csv",
                        (x, b) -> b[0] * (1 - Math.exp(-b[1] * x)),
                        new double[][] {{500, 0.0001}, {250, 0.0005}},
                        new double[] {2.3894212918E+02, 5.5015643181E-04},
                        new double[] {2.7070075241E+00, 7.2668688436E-06},
                        1.2455138894E-01),
                new Certified(
                        "nist_misra1b.csv",
                        (x, b) -> b[0] * (1 - Math.pow(1 + b[1] * x / 2, -2)),
                        new double[][] {{500, 0.0001}, {300, 0.0002}},
                        new double[] {3.3799746163E+02, 3.9039091287E-04},
                        new double[] {3.1643950207E+00, 4.2547321834E-06},
                        7.5464681533E-02),
                new Certified(
                        "nist_misra1c.csv",
                        (x, b) -> b[0] * (1 - Math.pow(1 + 2 * b[1] * x, -0.5)),
                        new double[][] {{500, 0.0001}, {600, 0.0002}},
                        new double[] {6.3642725809E+02, 2.0813627256E-04},
                        new double[] {4.6638326572E+00, 1.7728423155E-06},
                        4.0966836971E-02),
                new Certified(
                        "nist_misra1d.csv",
                        (x, b) -> b[0] * b[1] * x / (1 + b[1] * x),
                        new double[][] {{500, 0.0001}, {450, 0.0003}},
                        new double[] {4.3736970754E+02, 3.0227324449E-04},
                        new double[] {3.6489174345E+00, 2.9334354479E-06},
                        5.6419295283E-02));
    }

    static List<Arguments> setsAndStarts() {
        return sets().stream()
                .flatMap(set -> Arrays.stream(set.starts()).map(start -> Arguments.of(set, start)))
                .toList();
    }

    @ParameterizedTest
    @MethodSource("setsAndStarts")
    @Oracle(
            value =
                    "NIST StRD, nonlinear regression: DanWood, Bennett5, Misra1a, Misra1b, Misra1c, Misra1d, both starts",
            agreement = "parameters 1e-8, standard deviations 1e-6, residual sum of squares 1e-10, relative")
    void optimizerAgreesWithCertifiedValuesFromBothStarts(Certified set, double[] start) {
        PublishedData data = PublishedData.read(set.file());
        double[] x = data.column("x");
        double[] std = new double[x.length];
        Arrays.fill(std, 1);
        LeastSquares.Minimum found = (LeastSquares.Minimum)
                LeastSquares.minimize(new Differentiated(set.model()), x, data.column("y"), std, start);
        double variance = found.sumOfSquares() / (x.length - start.length);
        for (int k = 0; k < start.length; k++) {
            assertRelative(found.parameters().get(k), set.parameters()[k], 1e-8);
            assertRelative(found.covariance().times(variance).std(k), set.stds()[k], 1e-6);
        }
        // Certified to eleven digits.
        assertRelative(found.sumOfSquares(), set.sumOfSquares(), 1e-10);
    }

    @Test
    @Oracle(
            value = "NIST StRD, linear regression, Norris: certified values",
            agreement = "parameters, standard deviations and residual standard deviation 1e-10, relative")
    void lineAgreesWithNorris() {
        PublishedData data = PublishedData.read("nist_norris.csv");
        LeastSquares.Minimum line = line(data.column("x"), data.column("y"));
        double variance = line.sumOfSquares() / 34;
        assertRelative(line.parameters().get(0), -0.262323073774029, 1e-10);
        assertRelative(line.parameters().get(1), 1.00211681802045, 1e-10);
        assertRelative(line.covariance().times(variance).std(0), 0.232818234301152, 1e-10);
        assertRelative(line.covariance().times(variance).std(1), 0.429796848199937E-03, 1e-10);
        assertRelative(Math.sqrt(variance), 0.884796396144373, 1e-10);
    }

    @Test
    @Oracle(
            value =
                    "JCGM 100:2008 (GUM), annex H.3, calibration of a thermometer; digits beyond the printed ones by R 4.2.2",
            agreement = "line, standard uncertainties, correlation and the extrapolation to 30 °C, 1e-9 relative")
    void lineAndItsExtrapolationAgreeWithGumAnnexH3() {
        PublishedData data = PublishedData.read("gum_h3.csv");
        double[] t = Arrays.stream(data.column("t_C")).map(each -> each - 20).toArray();
        LeastSquares.Minimum line = line(t, data.column("b_C"));
        Covariance covariance = line.covariance().times(line.sumOfSquares() / 9);
        assertRelative(line.parameters().get(0), -0.17120379013135, 1e-9);
        assertRelative(line.parameters().get(1), 0.00218269773989, 1e-9);
        assertRelative(covariance.std(0), 0.002877597835160, 1e-9);
        assertRelative(covariance.std(1), 0.000667938773228, 1e-9);
        assertRelative(covariance.get(0, 1) / (covariance.std(0) * covariance.std(1)), -0.930429603093, 1e-9);
        assertRelative(line.parameters().get(0) + 10 * line.parameters().get(1), -0.149376812732, 1e-9);
        double variance = covariance.get(0, 0) + 20 * covariance.get(0, 1) + 100 * covariance.get(1, 1);
        assertRelative(Math.sqrt(variance), 0.00413859575285, 1e-9);
    }

    @Test
    @Oracle(
            value = "Rousseeuw and Leroy (1987), table 2.1, telephone calls, by statsmodels 0.15.0 RLM(HuberT(1.345)); "
                    + "data from memory",
            agreement = "parameters and scale 1e-6, standard errors 3e-3, relative",
            fromMemory = true)
    void huberFitAgreesOnTelephoneCalls() {
        PublishedData data = PublishedData.read("phones.csv");
        double[] x = data.column("year");
        double[] std = new double[x.length];
        Arrays.fill(std, 1);
        HuberFit.Robust fit = HuberFit.fit(Curve.LINE, x, data.column("calls"), std, new double[] {-100, 2});
        assertThat(fit.settled()).isTrue();
        // The scale's rounds end at 1e-13 there and at 1e-12 of the parameters here.
        assertRelative(fit.parameters().get(0), -102.530151565, 1e-6);
        assertRelative(fit.parameters().get(1), 2.03961072705, 1e-6);
        assertRelative(fit.scatter(), 9.009309175, 1e-6);
        // There the variance of ψ' is divided by N, here by N - 1 as in Venables and Ripley: 0.2 % for 24 points.
        assertRelative(fit.covariance().std(0), 26.4920438062, 3e-3);
        assertRelative(fit.covariance().std(1), 0.428061952742, 3e-3);
    }

    private static LeastSquares.Minimum line(double[] x, double[] y) {
        double[] std = new double[x.length];
        Arrays.fill(std, 1);
        return (LeastSquares.Minimum) LeastSquares.minimize(Curve.LINE, x, y, std, new double[] {0, 0});
    }

    /** A model with derivatives by central differences of fourth order: good to some twelve digits. */
    private record Differentiated(ToDoubleBiFunction<Double, double[]> model) implements Curve {
        @Override
        public double value(double x, double[] b) {
            return model.applyAsDouble(x, b);
        }

        @Override
        public double[] gradient(double x, double[] b) {
            double[] gradient = new double[b.length];
            for (int k = 0; k < b.length; k++) {
                double h = 1e-3 * Math.abs(b[k]);
                double[] at = b.clone();
                double[] f = new double[4];
                for (int j = 0; j < 4; j++) {
                    at[k] = b[k] + h * (j < 2 ? j - 2 : j - 1);
                    f[j] = value(x, at);
                }
                gradient[k] = (f[0] - 8 * f[1] + 8 * f[2] - f[3]) / (12 * h);
            }
            return gradient;
        }

        @Override
        public double slope(double x, double[] b) {
            throw new UnsupportedOperationException();
        }
    }
}
