package io.burnlaw.reduction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.reduction.events.MaximumCurvature;
import io.burnlaw.reduction.events.TailOffKnee;
import io.burnlaw.reduction.events.TangentBisector;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Both opinions on the web burnout, of records whose corner is where it was put. */
class BurnoutEstimatesTest {

    private static final int COUNT = 600;

    /** From zero up within 20 cells, then a line, then a steeper one from the corner down to zero. */
    private static double[] record(double corner, double slope, double fall, double scale) {
        double[] gauge = new double[COUNT];
        for (int i = 0; i < COUNT; i++) {
            double level = 1 + slope * (i - corner);
            double value = Math.min(level, 1 - fall * (i - corner));
            gauge[i] = scale * Math.max(0, Math.min(value, i < 20 ? i / 20.0 : value));
        }
        return gauge;
    }

    private static double highest(double[] gauge) {
        return java.util.Arrays.stream(gauge).max().orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({"500, 0, 0.02", "470, 0.0005, 0.03", "480, -0.0005, 0.05", "400, 0, 0.1"})
    void aCornerIsTheBurnoutOfBoth(double corner, double slope, double fall) {
        for (double scale : new double[] {1, 4e6}) {
            double[] gauge = record(corner, slope, fall, scale);
            TailOffKnee knee = TailOffKnee.of(gauge, 4, 10, highest(gauge));
            // both lines are exact and meet in the corner, so that the bisector passes through it
            assertThat(TangentBisector.find(knee).orElseThrow()).isCloseTo(corner, within(1e-6));
            // the bend over ± 4 cells has its extreme there, and falls off evenly to both sides
            assertThat(MaximumCurvature.find(knee)).isCloseTo(corner, within(1e-6));
            assertThat(knee.steepest()).isBetween((int) corner, (int) (corner + 1 / fall));
        }
    }

    @Test
    void aCornerBetweenTwoCellsIsFoundBetweenThem() {
        double[] gauge = record(450.3, 0, 0.04, 1);
        TailOffKnee knee = TailOffKnee.of(gauge, 3, 10, 1);
        // the sampled record cuts the corner off between the cells 450 and 451, by 0.7·0.3 of a cell's fall at most
        assertThat(TangentBisector.find(knee).orElseThrow()).isCloseTo(450.3, within(0.3));
        assertThat(MaximumCurvature.find(knee)).isCloseTo(450.3, within(0.5));
    }

    /** The stretch between 66 and 86 % of the integral of a level record. */
    @Test
    void theLevelStretchLiesBetweenSharesOfTheIntegral() {
        double[] gauge = new double[COUNT];
        java.util.Arrays.fill(gauge, 100, 500, 2.0);
        TailOffKnee knee = TailOffKnee.of(gauge, 2, 100, 2);
        // 400 cells: the 264th and the 344th are the last whose sum does not pass the share
        assertThat(knee.levelFrom()).isEqualTo(100 + 264 - 1);
        assertThat(knee.levelTo()).isEqualTo(100 + 344 - 1);
        assertThat(knee.scale()).isCloseTo(343 / 0.85, within(1e-9));
        assertThat(knee.steepest()).isBetween(498, 501);
    }

    @Test
    void aRecordThatDoesNotFallHasNoBisector() {
        double[] gauge = new double[COUNT];
        for (int i = 0; i < COUNT; i++) {
            gauge[i] = i;
        }
        assertThat(TangentBisector.find(TailOffKnee.of(gauge, 2, 0, COUNT))).isEmpty();
    }
}
