package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.regime.Evidence.Rival;
import io.burnlaw.regime.Regimes.Shape;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What is drawn has the covariance that is stated, and what was put in is found again. */
class NoiseModelTest {

    private static final int DRAWS = 20_000;

    /** Errors of each point by itself (an autoregression of the first order), and of each firing as a whole. */
    private static double[][] errors(
            int firings, int each, double own, double serial, double firing, SplittableRandom random) {
        double[][] errors = new double[firings][each];
        for (double[] burn : errors) {
            double whole = firing * random.nextGaussian();
            double step = random.nextGaussian();
            for (int j = 0; j < each; j++) {
                burn[j] = whole + own * step;
                step = serial * step + Math.sqrt(1 - serial * serial) * random.nextGaussian();
            }
        }
        return errors;
    }

    private static List<FitPoint> burns(double[][] errors) {
        List<FitPoint> points = new ArrayList<>();
        for (int k = 0; k < errors.length; k++) {
            for (int j = 0; j < errors[k].length; j++) {
                double pressure = 1e6 * Math.pow(8, (k + 0.9 * j / errors[k].length) / errors.length);
                double rate = 5e-3 * Math.pow(pressure / 1e6, 0.4) * Math.exp(errors[k][j]);
                points.add(new FitPoint("f" + k + "-" + j, "f" + k, pressure, 0, rate, 0, 0));
            }
        }
        return points;
    }

    private static PiecewiseFit line(Sample sample) {
        Line line = Line.through(sample.xs(), sample.ys(), sample.ws(), 0, sample.size());
        double[] fitted = new double[sample.size()];
        for (int i = 0; i < fitted.length; i++) {
            fitted[i] = line.at(sample.x(i));
        }
        return new PiecewiseFit(
                Shape.JOINED,
                new double[0],
                new int[] {0},
                new double[] {line.slope()},
                new double[] {line.at(0)},
                fitted,
                line.rss());
    }

    private static NoiseModel model(Sample sample, double systematic) {
        return NoiseModel.of(sample, line(sample), systematic);
    }

    private static double[][] draws(NoiseModel model, int points) {
        SplittableRandom random = new SplittableRandom(5);
        double[][] draws = new double[DRAWS][points];
        for (double[] draw : draws) {
            model.addTo(draw, random);
        }
        return draws;
    }

    private static double covariance(double[][] draws, int i, int j) {
        double sum = 0;
        for (double[] draw : draws) {
            sum += draw[i] * draw[j] / draws.length;
        }
        return sum;
    }

    private static void assertDrawnAsStated(NoiseModel model, int points) {
        double[][] draws = draws(model, points);
        for (int i = 0; i < points; i++) {
            for (int j = 0; j < points; j++) {
                double most = Math.sqrt(model.covariance(i, i) * model.covariance(j, j));
                // five standard deviations of a covariance of normal numbers: sqrt(1 + rho^2) <= 1.42 over sqrt(draws)
                assertThat(covariance(draws, i, j))
                        .as("%d with %d", i, j)
                        .isCloseTo(model.covariance(i, j), within(5 * 1.42 * most / Math.sqrt(DRAWS)));
            }
        }
    }

    @Test
    void correlatedBurnsAreDrawnAsStated() {
        Sample sample =
                Sample.of(burns(errors(4, 9, 0.01, 0.8, 0.03, new SplittableRandom(3))), Weighting.PROPORTIONAL, 0);
        NoiseModel model = model(sample, 0);
        assertDrawnAsStated(model, sample.size());
        assertThat(model.covariance(0, 0)).isCloseTo(Math.pow(model.scatter(), 2), within(1e-15));
        assertThat(model.covariance(0, 1)).isLessThan(model.covariance(0, 0)).isGreaterThan(model.covariance(0, 4));
        assertThat(model.covariance(0, 3)).isEqualTo(model.covariance(3, 0));
        assertThat(model.covariance(0, 9)).isZero();
    }

    @Test
    void pointsOfConstantScatterAreDrawnAsStated() {
        List<FitPoint> points = burns(errors(3, 4, 0.02, 0, 0.03, new SplittableRandom(8)));
        Sample sample = Sample.of(points, Weighting.CONSTANT, 0);
        NoiseModel model = model(sample, 0);
        assertDrawnAsStated(model, sample.size());
        // the same scatter of the rate is a smaller share of a larger rate
        double ratio = points.get(11).rate() / points.get(0).rate();
        assertThat(model.covariance(0, 0) / model.covariance(11, 11)).isCloseTo(ratio * ratio, within(1e-9));
    }

    @Test
    void loneFiringsScatterEachByThemselves() {
        Sample sample = Sample.of(burns(errors(12, 1, 0.02, 0, 0, new SplittableRandom(4))), Weighting.PROPORTIONAL, 0);
        PiecewiseFit fit = line(sample);
        NoiseModel model = NoiseModel.of(sample, fit, 0);
        assertThat(model.scatter()).isCloseTo(Math.sqrt(fit.rss() / 10), within(1e-15));
        assertThat(model.covariance(0, 1)).isZero();
        assertThat(model.effectivePoints()).isEqualTo(12);
        assertDrawnAsStated(model, 12);
    }

    @Test
    void whatWasPutInIsFoundAgain() {
        int firings = 60;
        int each = 30;
        double own = 0;
        double firing = 0;
        double serial = 0;
        double effective = 0;
        int runs = 20;
        for (int run = 0; run < runs; run++) {
            Sample sample = Sample.of(
                    burns(errors(firings, each, 0.01, 0.6, 0.02, new SplittableRandom(40 + run))),
                    Weighting.PROPORTIONAL,
                    0);
            NoiseModel model = model(sample, 0);
            int first = place(sample, "f0-10");
            int second = place(sample, "f0-11");
            int far = place(sample, "f0-29");
            double whole = model.covariance(first, far);
            firing += whole / runs;
            own += (model.covariance(first, first) - whole) / runs;
            serial += (model.covariance(first, second) - whole) / (model.covariance(first, first) - whole) / runs;
            effective += model.effectivePoints() / runs;
        }
        // of 20 times 60 firings a variance between firings has a standard error of 4 %; those within are surer
        assertThat(firing).isCloseTo(0.02 * 0.02, within(0.16 * 0.02 * 0.02));
        assertThat(own).isCloseTo(0.01 * 0.01, within(0.08 * 0.01 * 0.01));
        assertThat(serial).isCloseTo(0.6, within(0.04));
        // a firing's mean has the variance 4 + (1 + 2·sum (1 - k/30)·0.6^k)/30 = 4.127 of 5, in units of 1e-4
        assertThat(effective).isCloseTo(firings * 5 / 4.127, within(0.02 * firings));
    }

    @Test
    void aSingleBurnIsCorrelatedButHasNoFiringsToDiffer() {
        Sample sample =
                Sample.of(burns(errors(1, 400, 0.01, 0.7, 0, new SplittableRandom(9))), Weighting.PROPORTIONAL, 0);
        NoiseModel model = model(sample, 0);
        int first = place(sample, "f0-100");
        double variance = model.covariance(first, first);
        double serial = model.covariance(first, place(sample, "f0-101")) / variance;
        // standard errors: sqrt((1 - 0.7^2)/400) = 0.036 of the correlation, 12 % of the variance
        assertThat(serial).isCloseTo(0.7, within(0.12));
        assertThat(variance).isCloseTo(1e-4, within(0.4e-4));
        assertThat(model.covariance(first, place(sample, "f0-103")))
                .isCloseTo(variance * Math.pow(serial, 3), within(1e-12));
    }

    @Test
    void theSmoothErrorHasItsSizeAndNoLineInIt() {
        List<FitPoint> points = Simulated.points(9, 1e6, 1e7, Simulated.broken(3e6, 0.4, 0.4, 1), 0, 1);
        Sample sample = Sample.of(points, Weighting.CONSTANT, 0);
        NoiseModel model = model(sample, 0.004);
        double square = 0;
        double cubic = 0;
        SplittableRandom random = new SplittableRandom(6);
        for (int draw = 0; draw < DRAWS; draw++) {
            double[] values = new double[9];
            model.addTo(values, random);
            Line line = Line.through(sample.xs(), values, sample.ws(), 0, 9);
            assertThat(line.slope()).isCloseTo(0, within(1e-8));
            assertThat(line.level()).isCloseTo(0, within(1e-8));
            double mean = line.rss() / 9;
            square += mean / DRAWS;
            Sample drawn = Sample.of(sample.xs(), values);
            cubic += new RivalCurves(drawn, Rival.Kind.QUADRATIC).rss(values) > 1e-12 ? 1.0 / DRAWS : 0;
        }
        // mean square 0.004^2·(0.8^2·z1^2 + 0.6^2·z2^2): relative standard error sqrt(2·(0.64^2 + 0.36^2)/20000) = 0.7
        // %
        assertThat(square).isCloseTo(0.004 * 0.004, within(0.04 * 0.004 * 0.004));
        // a mixture: hardly ever a pure quadratic
        assertThat(cubic).isGreaterThan(0.9);
    }

    private static int place(Sample sample, String id) {
        for (int i = 0; i < sample.size(); i++) {
            if (sample.point(i).id().equals(id)) {
                return i;
            }
        }
        throw new IllegalArgumentException(id);
    }
}
