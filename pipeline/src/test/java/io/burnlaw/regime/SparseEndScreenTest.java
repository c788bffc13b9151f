package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.regime.Regimes.UnsettledRegime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** One or two points at an end that the law of the others does not predict. */
class SparseEndScreenTest {

    private static final String SCRIPT =
            "NumPy 2 and SciPy 1.17.1: curves_and_ends_checks.py, prediction of the mean of new points by a straight line";

    private static List<FitPoint> points(double[] pressure, double[] rate) {
        List<FitPoint> points = new ArrayList<>();
        for (int i = 0; i < rate.length; i++) {
            points.add(Simulated.point("p" + i, 1e6 * pressure[i], 1e-3 * rate[i]));
        }
        return points;
    }

    private static Optional<SparseEndScreen.Parted> find(List<FitPoint> points, double level) {
        return SparseEndScreen.find(points, RegimeOptions.defaults(1).withLevel(level));
    }

    private static void assertRatio(UnsettledRegime apart, double ratio, double low, double high) {
        // printed with twelve digits; the quantiles of two libraries agree to about 1e-9
        assertThat(apart.rateRatio()).isCloseTo(ratio, within(1e-9));
        Interval.Estimated interval = apart.ratioInterval().estimated().orElseThrow();
        assertThat(interval.low()).isCloseTo(low, within(1e-7));
        assertThat(interval.high()).isCloseTo(high, within(1e-7));
    }

    @Test
    @Oracle(value = SCRIPT, agreement = "ratio 1e-9, interval 1e-7")
    void twoSlowPointsAgree() {
        SparseEndScreen.Parted parted = find(
                        points(
                                new double[] {0.5, 0.6, 1.0, 1.4, 1.9, 2.6, 3.3, 4.5},
                                new double[] {2.01, 2.12, 5.03, 5.61, 6.34, 7.01, 7.75, 8.64}),
                        0.9)
                .orElseThrow();
        UnsettledRegime apart = parted.apart();
        assertThat(apart.side()).isEqualTo(UnsettledRegime.Side.BELOW);
        assertThat(apart.ids()).containsExactly("p0", "p1");
        assertThat(apart.pressureLow()).isEqualTo(0.5e6);
        assertThat(apart.pressureHigh()).isEqualTo(0.6e6);
        assertThat(apart.rate()).isCloseTo(2.06426742454e-3, within(1e-12));
        assertRatio(apart, 1.94854727791, 1.90776231465, 1.99020415967);
        assertThat(apart.gapLow()).isEqualTo(0.6e6);
        assertThat(apart.gapHigh()).isEqualTo(1.0e6);
        assertThat(apart.settlingPressure()).isCloseTo(774_596.669, within(0.01));
        assertThat(parted.rest()).extracting(FitPoint::id).containsExactly("p2", "p3", "p4", "p5", "p6", "p7");
        assertThat(apart.sentence())
                .startsWith("Two points at 0.548 MPa with 2.06 mm/s burn 1.9")
                .contains(
                        "times slower",
                        "between 0.600 MPa and 1.00 MPa",
                        "near 0.775 MPa",
                        "on the slow side",
                        "(1 more)");
    }

    @Test
    @Oracle(value = SCRIPT, agreement = "ratio 1e-9, interval 1e-7")
    void oneFastPointAgrees() {
        List<FitPoint> points = points(
                new double[] {1.0, 1.4, 1.9, 2.6, 3.3, 4.5, 7.0},
                new double[] {5.03, 5.61, 6.34, 7.01, 7.75, 8.64, 25.2});
        List<FitPoint> arrived = new ArrayList<>(points);
        java.util.Collections.rotate(arrived, 3);
        SparseEndScreen.Parted parted = find(arrived, 0.95).orElseThrow();
        UnsettledRegime apart = parted.apart();
        assertThat(apart.side()).isEqualTo(UnsettledRegime.Side.ABOVE);
        assertThat(apart.ids()).containsExactly("p6");
        assertThat(apart.rate()).isCloseTo(25.2e-3, within(1e-12));
        assertRatio(apart, 2.48868382171, 2.41809555137, 2.56133268221);
        assertThat(apart.gapLow()).isEqualTo(4.5e6);
        assertThat(apart.gapHigh()).isEqualTo(7.0e6);
        assertThat(apart.settlingPressure()).isCloseTo(5_612_486.08, within(0.01));
        // in the order in which they were handed in
        assertThat(parted.rest()).extracting(FitPoint::id).containsExactly("p4", "p5", "p0", "p1", "p2", "p3");
        assertThat(apart.sentence())
                .startsWith("One point at 7.00 MPa with 25.2 mm/s burns 2.")
                .contains("times faster", "on the fast side", "(2 more)");
    }

    @Test
    void fourPointsAtOnePressureAreSetApartTogether() {
        List<FitPoint> points = points(
                new double[] {0.5, 0.5, 0.501, 0.502, 1.0, 1.4, 1.9, 2.6, 3.3, 4.5},
                new double[] {1.9, 2.0, 2.0, 2.1, 5.03, 5.61, 6.34, 7.01, 7.75, 8.64});
        UnsettledRegime apart = find(points, 0.95).orElseThrow().apart();
        assertThat(apart.ids()).containsExactly("p0", "p1", "p2", "p3");
        assertThat(apart.sentence())
                .startsWith("4 points at one pressure at 0.501 MPa")
                .contains("(0 more)");
    }

    @Test
    void threePointsThatSpanPressuresCarryALawAndStay() {
        assertThat(find(
                        points(
                                new double[] {0.5, 0.6, 0.72, 1.0, 1.4, 1.9, 2.6, 3.3, 4.5},
                                new double[] {2.01, 2.12, 2.21, 5.03, 5.61, 6.34, 7.01, 7.75, 8.64}),
                        0.95))
                .isEmpty();
    }

    @Test
    void aFactorBelowOneAndAHalfIsLeftForMoreFiringsToShow() {
        double[] pressure = {0.5, 1.0, 1.4, 1.9, 2.6, 3.3, 4.5};
        // 5.03 mm/s · (0.5/1.0)^0.36 is about 3.93 mm/s
        assertThat(find(points(pressure, new double[] {2.75, 5.03, 5.61, 6.34, 7.01, 7.75, 8.64}), 0.95))
                .isEmpty();
        assertThat(find(points(pressure, new double[] {2.45, 5.03, 5.61, 6.34, 7.01, 7.75, 8.64}), 0.95))
                .isPresent();
    }

    @Test
    void aPointWithinTheScatterStays() {
        assertThat(find(
                        points(
                                new double[] {0.5, 1.0, 1.4, 1.9, 2.6, 3.3, 4.5},
                                new double[] {2.4, 4.03, 6.61, 5.34, 8.01, 6.75, 9.64}),
                        0.95))
                .isEmpty();
    }
}
