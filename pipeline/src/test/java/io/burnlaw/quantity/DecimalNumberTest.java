package io.burnlaw.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DecimalNumberTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "12.7|12.7",
                "12,7|12.7",
                "1.2e-3|0.0012",
                "5.|5",
                ".5|0.5",
                "+3|3",
                "-0.25|-0.25",
                "−4|-4",
                " 8 |8",
                "007|7",
                "1234567890123456789012345678901234567890|1.234567890123457e39"
            })
    void numbersAsPeopleWriteThem(String text, double number) {
        // 1e-13 %: the double of either side may be one step off the other.
        assertThat(DecimalNumber.read(text).orElseThrow())
                .isCloseTo(number, org.assertj.core.data.Percentage.withPercentage(1e-13));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                ".",
                ",",
                "-",
                "1.2.3",
                "1,2,3",
                "1.2,3",
                "1 2",
                "NaN",
                "Infinity",
                "0x1",
                "1f",
                "1e",
                "1e99999",
                "٣"
            })
    void whatIsNoNumber(String text) {
        assertThat(DecimalNumber.read(text)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"1,250|true", "1.250|false", "12,5|false", "0,250|false", "1250|false", "-1,250|true"})
    void aCommaThatCanBeReadTwoWays(String text, boolean twoWays) {
        assertThat(DecimalNumber.readsTwoWays(text)).isEqualTo(twoWays);
    }
}
