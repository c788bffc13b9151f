package io.burnlaw.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import io.burnlaw.quantity.Measured;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import java.util.List;
import org.junit.jupiter.api.Test;

class FirstGuessTest {

    @Test
    void theUncertaintyIsTheStatedOne() {
        RateLaw law = new FirstGuess(Measured.of(6e-3, 0.3e-3), 2e6, Measured.of(0.3, 0.04), 0.03)
                .law()
                .laws()
                .get(0);
        assertThat(law.rate(2e6)).isCloseTo(6e-3, offset(1e-12));
        assertThat(law.lnStd(2e6)).isCloseTo(0.05, offset(1e-12));
        Interval.Estimated exponent = law.exponentInterval(0.95).estimated().orElseThrow();
        // 1.96 standard deviations of the normal distribution: nothing was estimated
        assertThat(exponent.high() - 0.3).isCloseTo(1.959964 * 0.04, offset(1e-6));
    }

    @Test
    void whatNobodyStatedIsTheUsualUncertainty() {
        RateLaw law = new FirstGuess(Measured.of(6e-3), 2e6, Measured.of(0.3), FirstGuess.USUAL_SCATTER)
                .law()
                .laws()
                .get(0);
        assertThat(law.lnStd(2e6)).isCloseTo(0.10, offset(1e-12));
        assertThat(law.exponentStd()).isCloseTo(0.05, offset(1e-12));
    }

    @Test
    void aRateOfZeroIsAFaultOfTheCaller() {
        assertThatThrownBy(() -> new FirstGuess(Measured.of(0), 2e6, Measured.of(0.3), 0.03))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void strengthsThatAgreeByChancePromiseNothing() {
        // three firings count for two degrees of freedom beside three of the usual 2 %
        double three = PlanBasis.strengthStd(List.of(1.0, 1.0, 1.0));
        assertThat(three).isCloseTo(Math.sqrt(3 * 0.02 * 0.02 / 5 * (1 + 1.0 / 3)), offset(1e-12));
        assertThat(PlanBasis.strengthStd(List.of(1.0))).isEqualTo(PlanBasis.USUAL_STRENGTH_STD);
        assertThat(PlanBasis.strengthStd(List.of(1.0, 1.1, 0.9, 1.05, 0.95))).isGreaterThan(0.05);
    }
}
