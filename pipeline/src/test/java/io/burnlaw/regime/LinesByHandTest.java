package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.regime.JoinedFit.HingeSolver;
import io.burnlaw.regime.Regimes.Shape;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** The least squares under the searches, on numbers small enough for a pencil. */
class LinesByHandTest {

    /** A few roundings of numbers near ten. */
    private static final Offset<Double> ROUNDING = within(1e-12);

    @Test
    void aWeightedLineGoesThroughItsWeightedMiddle() {
        // the point of weight 2 is two points: x 0, 1, 3, 3; y 1, 2, 5, 5; the first and the last entry are left out
        double[] x = {99, 0, 1, 3, 99};
        double[] y = {99, 1, 2, 5, 99};
        Line line = Line.through(x, y, new double[] {9, 1, 1, 2, 9}, 1, 4);
        assertThat(line.weight()).isEqualTo(4);
        assertThat(line.middle()).isCloseTo(7 / 4.0, ROUNDING);
        assertThat(line.level()).isCloseTo(13 / 4.0, ROUNDING);
        // sum x² - 49/4 = 27/4; sum xy - 91/4 = 37/4; sum y² - 169/4 = 51/4
        assertThat(line.spread()).isCloseTo(27 / 4.0, ROUNDING);
        assertThat(line.slope()).isCloseTo(37 / 27.0, ROUNDING);
        assertThat(line.rss()).isCloseTo(51 / 4.0 - 37 * 37 / (4.0 * 27), ROUNDING);
        assertThat(line.at(0)).isCloseTo(13 / 4.0 - 37 / 27.0 * 7 / 4, ROUNDING);
    }

    @Test
    void atOnePlaceThereIsALevelAndNoSlope() {
        Line line = Line.through(new double[] {2, 2}, new double[] {1, 4}, new double[] {2, 1}, 0, 2);
        assertThat(line.slope()).isZero();
        assertThat(line.level()).isCloseTo(2, ROUNDING);
        assertThat(line.rss()).isCloseTo(2 * 1 + 4, ROUNDING);
    }

    @Test
    void columnsAreSolvedTogetherWithTheirWeights() {
        // y = 1 + 2x - 3·max(0, x - 2), exactly; and with the third value 1 higher, which the other four hold off
        double[] x = {0, 1, 2, 3, 4};
        double[][] columns = {{1, 1, 1, 1, 1}, x, {0, 0, 0, 1, 2}};
        HingeSolver.Solution exact =
                new HingeSolver(new double[] {1, 3, 5, 4, 3}, new double[] {1, 5, 2, 7, 3}).solve(columns);
        assertThat(exact.beta()[0]).isCloseTo(1, ROUNDING);
        assertThat(exact.beta()[1]).isCloseTo(2, ROUNDING);
        assertThat(exact.beta()[2]).isCloseTo(-3, ROUNDING);
        assertThat(exact.rss()).isCloseTo(0, ROUNDING);
        // normal equations of level and slope with weights 1, 1, 2 at x = 0, 1, 3: as the weighted line above
        HingeSolver.Solution line = new HingeSolver(new double[] {1, 2, 5}, new double[] {1, 1, 2})
                .solve(new double[][] {{1, 1, 1}, {0, 1, 3}});
        assertThat(line.beta()).hasSize(2);
        assertThat(line.beta()[1]).isCloseTo(37 / 27.0, ROUNDING);
        assertThat(line.beta()[0]).isCloseTo(13 / 4.0 - 37 / 27.0 * 7 / 4, ROUNDING);
        assertThat(line.rss()).isCloseTo(51 / 4.0 - 37 * 37 / (4.0 * 27), ROUNDING);
    }

    @Test
    void columnsThatAreMixturesOfOthersHaveNoSolution() {
        HingeSolver solver = new HingeSolver(new double[] {1, 2, 5}, new double[] {1, 1, 2});
        HingeSolver.Solution none = solver.solve(new double[][] {{1, 1, 1}, {0, 1, 3}, {2, 5, 11}});
        assertThat(none.beta()).isEmpty();
        assertThat(none.rss()).isInfinite();
    }

    @Test
    void theInverseOfAPartIsThatOfItsRowsAndColumns() {
        // rows 0 and 2: {4, 2; 2, 3}, whose inverse is {3, -2; -2, 4} / 8
        double[][] matrix = {{4, 9, 2}, {9, 50, 7}, {2, 7, 3}};
        assertThat(SymmetricInverse.of(matrix, new int[] {0, 2}).orElseThrow())
                .containsExactly(new double[] {3 / 8.0, -4 / 8.0, 4 / 8.0}, ROUNDING);
        // the second difference {2, -1, 0; -1, 2, -1; 0, -1, 2} has the inverse {3, 2, 1; 2, 4, 2; 1, 2, 3} / 4
        double[][] second = {{2, -1, 0}, {-1, 2, -1}, {0, -1, 2}};
        assertThat(SymmetricInverse.of(second, new int[] {0, 1, 2}).orElseThrow())
                .containsExactly(new double[] {0.75, 1, 1, 0.5, 1, 0.75}, ROUNDING);
        assertThat(SymmetricInverse.of(new double[][] {{1, 2}, {2, 4}}, new int[] {0, 1}))
                .isEmpty();
        assertThat(SymmetricInverse.of(new double[][] {{0, 0}, {0, 1}}, new int[] {1, 0}))
                .isEmpty();
    }

    @Test
    void theCriterionCountsCoefficientsAndPlacesOfBreaks() {
        double[] fitted = new double[10];
        PiecewiseFit joined = new PiecewiseFit(
                Shape.JOINED, new double[] {1, 2}, new int[] {0, 3, 6}, new double[3], new double[3], fitted, 20);
        PiecewiseFit jumping = new PiecewiseFit(
                Shape.JUMPING, new double[] {1, 2}, new int[] {0, 3, 6}, new double[3], new double[3], fitted, 20);
        // level, three slopes, two breaks; or three lines, two breaks
        assertThat(joined.parameters()).isEqualTo(6);
        assertThat(jumping.parameters()).isEqualTo(8);
        assertThat(joined.end(1)).isEqualTo(6);
        assertThat(joined.end(2)).isEqualTo(10);
        // Schwarz (1978): N ln(RSS/n) + k ln N
        assertThat(joined.bic(7)).isCloseTo(7 * Math.log(2) + 6 * Math.log(7), ROUNDING);
        assertThat(jumping.bic(10)).isCloseTo(10 * Math.log(2) + 8 * Math.log(10), ROUNDING);
    }
}
