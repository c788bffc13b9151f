package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.MadeLaw;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.regime.Regimes.Break;
import io.burnlaw.regime.Regimes.RegimeKind;
import io.burnlaw.regime.SegmentLaws.RateRatio;
import io.burnlaw.regime.Thresholds.SlowSide;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which laws are slow ones, what a regime is called, and how well a ratio of rates is known: by hand. */
class SlowSideTest {

    /** Quantile of Student's t at 0.975 with 4 degrees of freedom, as printed in every table. */
    private static final double T = 2.776;

    private static Interval between(double low, double high) {
        return new Interval.Estimated(low, high, 0.95, Interval.Method.PROFILE);
    }

    /** From 1 MPa on; exponent known to ± half at 95 %. */
    private static RateLaw law(double rateAtMegapascal, double exponent, double half, double low) {
        double std = half / T;
        return MadeLaw.of(Math.log(rateAtMegapascal), exponent, 1e6, 1e-6, 0, std * std, 4, 0.01, low * 1e6, 50e6, 6);
    }

    private static Break jump(double megapascal, double ratio, Interval interval) {
        return new Break(1e6 * megapascal, between(1, 2), Break.Kind.JUMP, ratio, interval, 0.4, 0.4);
    }

    private static Break slope(double megapascal) {
        return new Break(1e6 * megapascal, between(1, 2), Break.Kind.SLOPE, 1, between(1, 1), 0.4, 0.4);
    }

    private static final RateLaw ANY = law(5e-3, 0.4, 0.05, 1);

    @Test
    void aJumpUpThatIsCertainIsAThreshold() {
        List<RateLaw> laws = List.of(ANY, ANY, ANY);
        assertThat(SlowSide.ratio(laws, List.of(jump(2, 3, between(2, 4))), 0, 0.95))
                .isEqualTo(3);
        assertThat(SlowSide.ratio(laws, List.of(jump(2, 3, between(1, 9))), 0, 0.95))
                .isEqualTo(1);
        assertThat(SlowSide.ratio(laws, List.of(jump(2, 3, new Interval.NotEstimable("few"))), 0, 0.95))
                .isEqualTo(1);
        assertThat(SlowSide.lawsBelow(laws, List.of(jump(2, 1.24, between(1.2, 1.3)), slope(4)), 0.95))
                .isZero();
        assertThat(SlowSide.lawsBelow(laws, List.of(jump(2, 1.26, between(1.2, 1.3)), slope(4)), 0.95))
                .isEqualTo(1);
    }

    @Test
    void theLargestJumpParts() {
        List<RateLaw> laws = List.of(ANY, ANY, ANY);
        Break small = jump(2, 1.5, between(1.4, 1.6));
        Break large = jump(4, 2, between(1.9, 2.1));
        assertThat(SlowSide.lawsBelow(laws, List.of(small, large), 0.95)).isEqualTo(2);
        assertThat(SlowSide.lawsBelow(laws, List.of(large, small), 0.95)).isEqualTo(1);
    }

    @Test
    void aSteepPassageIsAThresholdByWhatTheRateRisesInIt() {
        // n = 2 from 2 to 6 MPa: nine times the rate
        RateLaw passage = law(1e-3, 2, 0.5, 2);
        List<Break> breaks = List.of(slope(2), slope(6));
        assertThat(SlowSide.ratio(List.of(ANY, passage, ANY), breaks, 1, 0.95)).isCloseTo(9, within(1e-12));
        assertThat(SlowSide.lawsBelow(List.of(ANY, passage, ANY), breaks, 0.95)).isEqualTo(2);
        // as the lowest law it begins at its lowest point, here 3 MPa
        assertThat(SlowSide.ratio(List.of(law(1e-3, 2, 0.5, 3), ANY), List.of(slope(6)), 0, 0.95))
                .isCloseTo(4, within(1e-12));
        // not where its exponent may be less than 1, nor where the law above is as steep
        assertThat(SlowSide.ratio(List.of(ANY, law(1e-3, 2, 1.01, 2), ANY), breaks, 1, 0.95))
                .isEqualTo(1);
        assertThat(SlowSide.ratio(List.of(ANY, law(1e-3, 2, 0.99, 2), ANY), breaks, 1, 0.95))
                .isCloseTo(9, within(1e-12));
        assertThat(SlowSide.ratio(List.of(ANY, passage, law(1e-3, 1, 0.1, 6)), breaks, 1, 0.95))
                .isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource({
        // the lines are this project's own: they are written here as docs/methods.md states them
        "1.00, 1.00, 1.10, UNSTABLE, true", "1.00, 0.99, 1.10, UNSTABLE, false", "0.999, 0.5, 0.9995, ORDINARY, true",
        "0.999, 0.5, 1.00, ORDINARY, false", "0.10, 0.001, 0.2, ORDINARY, true", "0.10, 0.0, 0.2, ORDINARY, false",
        "0.099, -0.19, 0.19, PLATEAU, true", "-0.05, -0.20, 0.10, PLATEAU, false", "0.05, -0.1, 0.20, PLATEAU, false",
        "-0.051, -0.3, -0.001, MESA, true", "-0.051, -0.3, 0.0, MESA, false"
    })
    void aWordIsSettledWhereTheWholeIntervalStandsBehindIt(
            double exponent, double low, double high, RegimeKind kind, boolean settled) {
        assertThat(RegimeReport.RegimeNames.of(exponent, between(low, high)))
                .isEqualTo(new RegimeReport.RegimeNames.Name(kind, settled));
        assertThat(RegimeReport.RegimeNames.of(exponent, new Interval.NotEstimable("few")))
                .isEqualTo(new RegimeReport.RegimeNames.Name(kind, false));
    }

    @Test
    void theRatioOfTwoLawsIsKnownAsTheirVariancesTogether() {
        RateLaw below = MadeLaw.of(Math.log(2e-3), 0.3, 1e6, 4e-4, 1e-4, 9e-4, 4, 0.01, 0.5e6, 2e6, 6);
        RateLaw above = MadeLaw.of(Math.log(9e-3), 0.5, 1e6, 1e-4, -2e-4, 25e-4, 7, 0.01, 2e6, 8e6, 9);
        double at = 1e6 * Math.E;
        // at x = 1: 4 + 2 + 9 and 1 - 4 + 25 ten-thousandths, 37 together; ln 4.5 + 0.2; t of the fewer degrees
        double half = 2.7764451052 * Math.sqrt(37e-4);
        Interval.Estimated found =
                RateRatio.interval(below, above, at, 0.95).estimated().orElseThrow();
        assertThat(Math.log(found.low())).isCloseTo(Math.log(4.5) + 0.2 - half, within(1e-10));
        assertThat(Math.log(found.high())).isCloseTo(Math.log(4.5) + 0.2 + half, within(1e-10));
        RateLaw two = MadeLaw.of(Math.log(2e-3), 0.3, 1e6, 0, 0, 0, 0, 0, 0.5e6, 2e6, 2);
        assertThat(RateRatio.interval(two, above, at, 0.95)).isInstanceOf(Interval.NotEstimable.class);
        assertThat(RateRatio.interval(above, two, at, 0.95)).isInstanceOf(Interval.NotEstimable.class);
    }

    @Test
    void numbersOfLawsAreWords() {
        assertThat(Words.laws(1)).isEqualTo("one power law");
        assertThat(Words.laws(2)).isEqualTo("two power laws");
        assertThat(Words.count(5)).isEqualTo("five");
        assertThat(Words.count(6)).isEqualTo("6");
        assertThat(Words.rate(6.944e-3)).isEqualTo("6.94 mm/s");
        assertThat(Words.pressure(1.02e6)).isEqualTo("1.02 MPa");
        assertThat(Words.pressure(1.02e6, new Interval.NotEstimable("few"))).isEqualTo("1.02 MPa");
    }
}
