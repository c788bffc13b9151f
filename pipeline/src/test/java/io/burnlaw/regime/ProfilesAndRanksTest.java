package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.regime.SequentialMonteCarlo.Ranks;
import io.burnlaw.regime.SequentialMonteCarlo.SimulatedP;
import org.junit.jupiter.api.Test;

/** Where a profile ends, and p values by rank, on numbers that can be counted. */
class ProfilesAndRanksTest {

    private static final double NEVER = Double.POSITIVE_INFINITY;

    // excess 2, 1, 0, 0.5, 3 at the places 1, 2, 4, 5, 8; no break can lie at 0 and 9
    private static final Profile PROFILE =
            new Profile(new double[] {0, 1, 2, 4, 5, 8, 9}, new double[] {NEVER, 30, 20, 10, 15, 40, NEVER});

    @Test
    void theExcessIsRelativeToTheLeastOfAll() {
        assertThat(PROFILE.excess(3)).isZero();
        assertThat(PROFILE.excess(1)).isEqualTo(2);
        assertThat(PROFILE.excess(5)).isEqualTo(3);
        assertThat(PROFILE.excess(0)).isInfinite();
    }

    @Test
    void theNearestPlaceIsOneWhereABreakCanLie() {
        assertThat(PROFILE.nearest(-5)).isEqualTo(1);
        assertThat(PROFILE.nearest(2.9)).isEqualTo(2);
        assertThat(PROFILE.nearest(3.1)).isEqualTo(3);
        assertThat(PROFILE.nearest(3)).isEqualTo(2);
        assertThat(PROFILE.nearest(50)).isEqualTo(5);
    }

    @Test
    void theOutermostPlaceIsTheLastWithinTheLimitNotTheFirstBeyond() {
        assertThat(PROFILE.outermost(1, false)).isEqualTo(2);
        assertThat(PROFILE.outermost(0.99, false)).isEqualTo(3);
        assertThat(PROFILE.outermost(0.5, true)).isEqualTo(4);
        assertThat(PROFILE.outermost(0.49, true)).isEqualTo(3);
        assertThat(PROFILE.outermost(3, true)).isEqualTo(5);
        // a place that is let in again behind one that is not
        Profile twice = new Profile(new double[] {1, 2, 3, 4}, new double[] {10, 30, 11, 12});
        assertThat(twice.outermost(0.15, true)).isEqualTo(2);
        Profile back = new Profile(new double[] {1, 2, 3, 4}, new double[] {11, 30, 10, 12});
        assertThat(back.outermost(0.15, false)).isEqualTo(0);
    }

    @Test
    void betweenTwoPlacesTheExcessIsTakenToRiseEvenly() {
        // from 0.5 at 5 to 3 at 8: 1 is a fifth of the way
        assertThat(PROFILE.crossing(4, 5, 1)).isCloseTo(5.6, within(1e-12));
        // from 1 at 2 to 2 at 1
        assertThat(PROFILE.crossing(2, 1, 1.25)).isCloseTo(1.75, within(1e-12));
        assertThat(PROFILE.crossing(4, 5, 7)).isEqualTo(8);
        assertThat(PROFILE.crossing(4, 5, 0.2)).isEqualTo(5);
        // no neighbour, or one where no break can lie
        assertThat(PROFILE.crossing(5, 6, 5)).isEqualTo(8);
        assertThat(PROFILE.crossing(6, 7, 5)).isEqualTo(9);
        assertThat(PROFILE.crossing(0, -1, 5)).isEqualTo(0);
    }

    @Test
    void theTailOfARankCountsEqualsAndItself() {
        assertThat(Ranks.upperTail(new double[] {3, 1, 3, 5, 2}))
                .containsExactly(3 / 5.0, 5 / 5.0, 3 / 5.0, 1 / 5.0, 4 / 5.0);
        assertThat(Ranks.upperTail(new double[] {7})).containsExactly(1);
    }

    @Test
    void twoFiguresShareTheLevel() {
        // leads over the medians: first 0 to 8 with 4, second reversed with 4: the larger is |i - 4|, 0 only in the
        // middle
        double[] first = new double[9];
        double[] second = new double[9];
        for (int i = 0; i < 9; i++) {
            first[i] = i;
            second[i] = 8 - i;
        }
        assertThat(Ranks.combined(swapped(first, 8), swapped(second, 8), 0.5, 1))
                .isEqualTo(2 / 9.0);
        assertThat(Ranks.combined(swapped(first, 4), swapped(second, 4), 0.5, 1))
                .isEqualTo(1);
        assertThat(Ranks.combined(swapped(first, 6), swapped(second, 6), 0.5, 1))
                .isEqualTo(6 / 9.0);
        // the first has a quarter of the level, its critical value 7.5 of 0 to 8 (1 - 0.25·0.25 = 15/16), the second
        // 6.5 (13/16): the lead is largest, 1.5, where the second is 8
        assertThat(Ranks.combined(swapped(first, 0), swapped(second, 0), 0.25, 0.25))
                .isEqualTo(1 / 9.0);
        // 0.5 where the first is 8, and the second 7: two of them beside the one of 1.5
        assertThat(Ranks.combined(swapped(first, 8), swapped(second, 8), 0.25, 0.25))
                .isEqualTo(3 / 9.0);
    }

    /** The data stand at place 0. */
    private static double[] swapped(double[] values, int data) {
        double[] changed = values.clone();
        changed[0] = values[data];
        changed[data] = values[0];
        return changed;
    }

    @Test
    void aShareThatIsTheErrorItselfRejects() {
        assertThat(new SimulatedP(0.05, 199).rejectsAt(0.05)).isTrue();
        assertThat(new SimulatedP(10.0 / 200, 199).rejectsAt(0.05)).isTrue();
        assertThat(new SimulatedP(11.0 / 200, 199).rejectsAt(0.05)).isFalse();
    }
}
