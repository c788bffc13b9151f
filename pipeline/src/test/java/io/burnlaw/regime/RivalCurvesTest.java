package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.regime.Evidence.Rival;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Curves without a break, weighted, against general least squares. */
class RivalCurvesTest {

    private static final String SCRIPT = "NumPy 2 and SciPy 1.17.1: curves_and_ends_checks.py, ";

    private static final double[] PRESSURE = {0.8, 1.0, 1.3, 1.7, 2.2, 2.9, 3.8, 5.0, 6.5};
    private static final double[] RATE = {3.92, 4.31, 4.88, 5.41, 6.02, 6.85, 7.52, 8.61, 9.37};

    private static Sample sample() {
        List<FitPoint> points = new ArrayList<>();
        for (int i = 0; i < RATE.length; i++) {
            points.add(Simulated.point("p" + i, 1e6 * PRESSURE[i], 1e-3 * RATE[i]));
        }
        return Sample.of(points, Weighting.CONSTANT, 0);
    }

    private static RivalCurves.Fit fit(Rival.Kind kind) {
        Sample sample = sample();
        return new RivalCurves(sample, kind).fit(sample.ys());
    }

    /** The best curve of the grid is nearly the best of all: half a step of it adds some per cent to the sum of squares here. */
    private static void assertFit(Rival.Kind kind, double rss, double tolerance, double... fitted) {
        Sample sample = sample();
        RivalCurves curves = new RivalCurves(sample, kind);
        RivalCurves.Fit fit = curves.fit(sample.ys());
        assertThat(fit.fitted()).containsExactly(fitted, within(tolerance));
        assertThat(fit.rss()).isCloseTo(rss, within(1e-9 * rss));
        assertThat(curves.rss(sample.ys())).isBetween(rss * (1 - 1e-9), rss * 1.03);
        double[] x = sample.xs();
        double low = (fitted[1] - fitted[0]) / (x[1] - x[0]);
        double high = (fitted[8] - fitted[7]) / (x[8] - x[7]);
        assertThat(curves.endSlopes(fit.fitted())).containsExactly(new double[] {low, high}, within(20 * tolerance));
        assertThat(fit.curvature()).isCloseTo((high - low) / (x[8] - x[0]), within(20 * tolerance));
    }

    @Test
    @Oracle(value = SCRIPT + "numpy.polyfit of the second degree, weighted", agreement = "fitted values 1e-10")
    void aQuadraticAgrees() {
        assertFit(
                Rival.Kind.QUADRATIC,
                0.000689768846035,
                1e-10,
                -5.54365226942,
                -5.44477392112,
                -5.33011663255,
                -5.21466949591,
                -5.10541716465,
                -4.99021142103,
                -4.87934842065,
                -4.76866286164,
                -4.66461584127);
        assertThat(fit(Rival.Kind.QUADRATIC).free()).isEqualTo(3);
    }

    @Test
    @Oracle(
            value = SCRIPT + "scipy.optimize over ln(A/B) of 1/r = A/P + B/P^(1/3), weighted",
            agreement = "fitted values 1e-6, ln(A/B) 1e-5")
    void twoTermsAgree() {
        // a minimum is flat: both searches find it to some roots of the machine's precision
        assertFit(
                Rival.Kind.TWO_TERM,
                0.000897990836619,
                1e-6,
                -5.55547574795,
                -5.44911436848,
                -5.3286081834,
                -5.20997347754,
                -5.0998340799,
                -4.98553866088,
                -4.87695842868,
                -4.76955633722,
                -4.66918962525);
        assertThat(fit(Rival.Kind.TWO_TERM).parameter()).isCloseTo(7.8402400194, within(1e-5));
        assertThat(fit(Rival.Kind.TWO_TERM).free()).isEqualTo(2);
    }

    @Test
    @Oracle(
            value = SCRIPT + "scipy.optimize over the offset with numpy.polyfit inside, weighted",
            agreement = "fitted values 1e-7, offset 1 Pa")
    void anOffsetOfTheSensorAgrees() {
        assertFit(
                Rival.Kind.ZERO_OFFSET,
                0.000727143604033,
                1e-7,
                -5.54444369551,
                -5.44363588792,
                -5.32861300526,
                -5.21389073323,
                -5.10565596625,
                -4.99131787651,
                -4.88066627561,
                -4.76923697661,
                -4.66336206395);
        assertThat(fit(Rival.Kind.ZERO_OFFSET).parameter()).isCloseTo(110_741.10048, within(1.0));
        assertThat(fit(Rival.Kind.ZERO_OFFSET).free()).isEqualTo(3);
    }

    @Test
    void anOffsetThatDoublesTheLowestReadingIsFoundBack() {
        List<FitPoint> points = new ArrayList<>();
        for (double pressure : PRESSURE) {
            points.add(Simulated.point("p" + pressure, 1e6 * (pressure + 0.8), 5e-3 * Math.pow(pressure, 0.4)));
        }
        Sample sample = Sample.of(points, Weighting.PROPORTIONAL, 0);
        RivalCurves.Fit fit = new RivalCurves(sample, Rival.Kind.ZERO_OFFSET).fit(sample.ys());
        assertThat(fit.parameter()).isCloseTo(0.8e6, within(1e3));
        assertThat(fit.rss()).isLessThan(1e-9);
    }
}
