package io.burnlaw.comparison;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.comparison.Comparisons.Holm;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class HolmTest {

    @Test
    void stepsDownInTheOrderOfThePValues() {
        // by hand: 4 · 0.005, 3 · 0.01, 2 · 0.03 and 1 · 0.04, none below the one before
        assertThat(Holm.adjust(new double[] {0.01, 0.04, 0.03, 0.005}))
                .containsExactly(new double[] {0.03, 0.06, 0.06, 0.02}, Offset.offset(1e-15));
    }

    @Test
    void neverAboveOne() {
        assertThat(Holm.adjust(new double[] {0.7, 0.9})).containsExactly(1, 1);
    }
}
