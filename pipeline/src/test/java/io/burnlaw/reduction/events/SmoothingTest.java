package io.burnlaw.reduction.events;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Running means and lines of series whose answer is known. */
class SmoothingTest {

    private static final Offset<Double> ROUNDING = within(1e-11);

    private static double[] series(int count, java.util.function.IntToDoubleFunction of) {
        double[] values = new double[count];
        java.util.Arrays.setAll(values, of);
        return values;
    }

    /** A symmetric window keeps a line to its very ends. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 7, 12, 40})
    void aStraightLineStaysWhatItIs(int half) {
        double[] line = series(25, i -> 3 - 0.5 * i);
        assertThat(Smoothing.mean(line, half)).containsExactly(line, ROUNDING);
        assertThat(Smoothing.twice(line, half)).containsExactly(line, ROUNDING);
    }

    /** The mean of squares over a window of half width h is x² + h(h + 1)/3, with the smaller h of the ends. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 7, 12, 40})
    void aParabolaIsLiftedByItsWindow(int half) {
        int count = 24;
        double[] mean = Smoothing.mean(series(count, i -> (double) i * i), half);
        for (int i = 0; i < count; i++) {
            double h = Math.min(half, Math.min(i, count - 1 - i));
            assertThat(mean[i]).as("cell %d", i).isCloseTo(i * i + h * (h + 1) / 3, ROUNDING);
        }
    }

    @Test
    void onePointBecomesATriangle() {
        double[] point = series(21, i -> i == 10 ? 9 : 0);
        // twice a mean of three: 1, 2, 3, 2, 1 ninths
        assertThat(Smoothing.twice(point, 1))
                .containsExactly(series(21, i -> Math.max(0, 3 - Math.abs(i - 10))), ROUNDING);
        assertThat(Smoothing.twice(point, 0)).containsExactly(point).isNotSameAs(point);
        assertThat(Smoothing.mean(new double[] {1, 5}, 1)).containsExactly(1, 5);
    }

    @Test
    void theLineThroughAStretchOfAParabolaHasTheSlopeOfItsMiddle() {
        double[] squares = series(30, i -> (double) i * i);
        Smoothing.Line line = Smoothing.line(squares, 4, 10);
        // least squares of x² over even places: slope 2·middle, mean middle² + (n² - 1)/12
        assertThat(line.slope()).isCloseTo(14, ROUNDING);
        assertThat(line.mean()).isCloseTo(49 + 48 / 12.0, ROUNDING);
        assertThat(line.at(7)).isCloseTo(53, ROUNDING);
        assertThat(line.at(9.5)).isCloseTo(53 + 2.5 * 14, ROUNDING);
        Smoothing.Line even = Smoothing.line(squares, 3, 6);
        assertThat(even.slope()).isCloseTo(9, ROUNDING);
        assertThat(even.at(4.5)).isCloseTo(4.5 * 4.5 + 15 / 12.0, ROUNDING);
        assertThat(Smoothing.line(squares, 5, 5).slope()).isZero();
    }
}
