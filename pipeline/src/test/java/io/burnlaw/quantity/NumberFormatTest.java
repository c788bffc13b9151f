package io.burnlaw.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class NumberFormatTest {

    @Test
    void intervalsSetTheDecimalPlace() {
        assertThat(NumberFormat.withInterval(6.9427, 6.7111, 7.1777)).isEqualTo("6.94 (6.71 to 7.18)");
        assertThat(NumberFormat.withInterval(0.32149, 0.3021, 0.3409)).isEqualTo("0.321 (0.302 to 0.341)");
        assertThat(NumberFormat.withInterval(1234.5, 1000, 1469)).isEqualTo("1230 (1000 to 1470)");
    }

    @Test
    void significantDigitsKeepTheirZeros() {
        assertThat(NumberFormat.significant(2.0, 2)).isEqualTo("2.0");
        assertThat(NumberFormat.significant(0.00999, 2)).isEqualTo("0.010");
        assertThat(NumberFormat.significant(98.6, 2)).isEqualTo("99");
        assertThat(NumberFormat.significant(99.6, 2)).isEqualTo("100");
        assertThat(NumberFormat.significant(-1234, 2)).isEqualTo("−1200");
        assertThat(NumberFormat.significant(0, 3)).isEqualTo("0");
    }

    @Test
    void aWidthThatIsUnknownGivesThreeDecimals() {
        assertThat(NumberFormat.withStd(1.23456, 0)).isEqualTo("1.235");
        assertThat(NumberFormat.withStd(1.23456, Double.NaN)).isEqualTo("1.235");
    }

    @Test
    void aPressureHasThreeDigitsInMegapascal() {
        assertThat(NumberFormat.megapascal(4_766_666)).isEqualTo("4.77");
        assertThat(NumberFormat.megapascal(101_325)).isEqualTo("0.101");
    }
}
