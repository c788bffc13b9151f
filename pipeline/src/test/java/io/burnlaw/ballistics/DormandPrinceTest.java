package io.burnlaw.ballistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class DormandPrinceTest {

    /** Error of a sine over one turn, and the worst between the steps. */
    private static double[] errors(int steps) {
        DormandPrince solver = new DormandPrince(
                (t, y, slope) -> {
                    slope[0] = y[1];
                    slope[1] = -y[0];
                },
                2);
        double[] state = {0, 1};
        double step = 2 * Math.PI / steps;
        double between = 0;
        solver.begin(0, state);
        for (int i = 0; i < steps; i++) {
            solver.step(i * step, state, step);
            double middle = solver.within(0, state, step, 0.4);
            between = Math.max(between, Math.abs(middle - Math.sin((i + 0.4) * step)));
            System.arraycopy(solver.next, 0, state, 0, 2);
            solver.accept();
        }
        return new double[] {Math.hypot(state[0], state[1] - 1), between};
    }

    @Test
    void halfTheStepLeavesAThirtySecondOfTheError() {
        double[] coarse = errors(40);
        double[] fine = errors(80);
        // order 5 on the points; 4 between them, where the global error of the points shows less
        assertThat(coarse[0] / fine[0]).isCloseTo(32, within(4.0));
        assertThat(coarse[1] / fine[1]).isGreaterThan(15);
        assertThat(fine[1]).isLessThan(1e-7);
    }
}
