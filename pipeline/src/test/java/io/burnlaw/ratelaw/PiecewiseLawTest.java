package io.burnlaw.ratelaw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Which of several laws holds where; the rates by hand. */
class PiecewiseLawTest {

    /** r = rate at 1 MPa · (P/1 MPa)^exponent, for points from low to high [MPa]. */
    private static RateLaw law(double rate, double exponent, double low, double high) {
        return MadeLaw.of(Math.log(rate), exponent, 1e6, 1e-4, 0, 1e-4, 5, 0.02, 1e6 * low, 1e6 * high, 7);
    }

    // 4 mm/s at 1 MPa; a plateau of 8 mm/s from 4 MPa on, where both meet; from 9 MPa on 10 mm/s and steeper than 1
    private static final RateLaw SLOW = law(4e-3, 0.5, 0.8, 3.9);
    private static final RateLaw PLATEAU = law(8e-3, 0, 4.1, 8.5);
    private static final RateLaw STEEP = law(10e-3 / Math.pow(9, 1.2), 1.2, 9.5, 16);
    private static final PiecewiseLaw ALL = new PiecewiseLaw(List.of(SLOW, PLATEAU, STEEP), List.of(4e6, 9e6));

    @Test
    void fromABreakOnTheUpperLawHolds() {
        assertThat(ALL.indexAt(0.1e6)).isEqualTo(0);
        assertThat(ALL.indexAt(3.999e6)).isEqualTo(0);
        assertThat(ALL.indexAt(4e6)).isEqualTo(1);
        assertThat(ALL.indexAt(8.999e6)).isEqualTo(1);
        assertThat(ALL.indexAt(9e6)).isEqualTo(2);
        assertThat(ALL.at(30e6)).isSameAs(STEEP);
        // 1e-15: a rounding or two of numbers near 0.01
        assertThat(ALL.rate(1e6)).isCloseTo(4e-3, within(1e-15));
        assertThat(ALL.rate(2.25e6)).isCloseTo(6e-3, within(1e-15));
        assertThat(ALL.rate(6e6)).isCloseTo(8e-3, within(1e-15));
        assertThat(ALL.rate(9e6)).isCloseTo(10e-3, within(1e-15));
        assertThat(ALL.pressureLow()).isEqualTo(0.8e6);
        assertThat(ALL.pressureHigh()).isEqualTo(16e6);
        assertThat(PiecewiseLaw.of(PLATEAU)).isEqualTo(new PiecewiseLaw(List.of(PLATEAU), List.of()));
    }

    @Test
    void fromAPressureOnTheLowestLawIsExtendedDownward() {
        assertThat(ALL.from(1e6)).isEqualTo(ALL);
        assertThat(ALL.from(5e6)).isEqualTo(new PiecewiseLaw(List.of(PLATEAU, STEEP), List.of(9e6)));
        assertThat(ALL.from(5e6).rate(1e6)).isCloseTo(8e-3, within(1e-15));
        assertThat(ALL.from(9e6)).isEqualTo(PiecewiseLaw.of(STEEP));
    }

    @Test
    void anotherLawTakesOnePlace() {
        RateLaw other = law(7.9e-3, 0.01, 4, 9);
        assertThat(ALL.with(1, other)).isEqualTo(new PiecewiseLaw(List.of(SLOW, other, STEEP), List.of(4e6, 9e6)));
    }

    @Test
    void aMotorIsNotTakenBelowAJumpOrAPassageThatDoesNotStand() {
        // the plateau passes into the slow law, but not into what lies above the jump at 9 MPa
        assertThat(ALL.ofMotorAt(2e6)).isEqualTo(ALL);
        assertThat(ALL.ofMotorAt(5e6)).isEqualTo(ALL);
        assertThat(ALL.ofMotorAt(12e6)).isEqualTo(PiecewiseLaw.of(STEEP));
        // no jump, but at an exponent of 1 no pressure holds itself
        RateLaw one = law(4e-3 / Math.sqrt(2), 1, 2, 4);
        RateLaw above = law(8e-3 / Math.sqrt(2), 0.5, 4, 8);
        RateLaw below = law(4e-3, 0.5, 1, 2);
        PiecewiseLaw passage = new PiecewiseLaw(List.of(below, one, above), List.of(2e6, 4e6));
        assertThat(passage.jumps(0)).isFalse();
        assertThat(passage.jumps(1)).isFalse();
        assertThat(passage.ofMotorAt(6e6)).isEqualTo(PiecewiseLaw.of(above));
        assertThat(passage.ofMotorAt(3e6)).isEqualTo(passage);
    }

    @Test
    void aJumpIsMoreThanTwoHundredthsUpOrDown() {
        for (double jump : new double[] {0.0199, -0.0199}) {
            assertThat(twoThatMiss(jump).jumps(0)).as("%s", jump).isFalse();
        }
        for (double jump : new double[] {0.0201, -0.0201}) {
            assertThat(twoThatMiss(jump).jumps(0)).as("%s", jump).isTrue();
        }
    }

    private static PiecewiseLaw twoThatMiss(double byLn) {
        double at = 3;
        RateLaw low = law(5e-3, 0.6, 1, at);
        RateLaw high = law(5e-3 * Math.pow(at, 0.6 - 0.3) * Math.exp(byLn), 0.3, at, 9);
        return new PiecewiseLaw(List.of(low, high), List.of(1e6 * at));
    }

    @Test
    void lawsAndBreaksThatDoNotFitAreAMistakeOfTheProgram() {
        assertThatThrownBy(() -> new PiecewiseLaw(List.of(), List.of())).hasMessageContaining("0 laws");
        assertThatThrownBy(() -> new PiecewiseLaw(List.of(SLOW), List.of(1e6))).hasMessageContaining("1 breaks");
        for (double second : new double[] {4e6, 3e6, Double.NaN}) {
            assertThatThrownBy(() -> new PiecewiseLaw(List.of(SLOW, PLATEAU, STEEP), List.of(4e6, second)))
                    .hasMessageContaining("do not rise");
        }
    }
}
