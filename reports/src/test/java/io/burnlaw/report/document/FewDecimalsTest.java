package io.burnlaw.report.document;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.report.document.JsonWriter.FewDecimals;
import java.math.BigDecimal;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FewDecimalsTest {

    @ParameterizedTest
    @CsvSource({
        "0.001, 0.001",
        "0.0010000, 0.001",
        "-0.098146, -0.098146",
        "1, 1.0",
        "100, 100.0",
        "12.50, 12.5",
        "0.000999, ''",
        "9999999.999999, 9999999.999999",
        "10000000, ''",
        "0.1234567, ''",
        "0, ''"
    })
    void writesWhatHasFewDecimals(double value, String text) {
        assertThat(text(value)).isEqualTo(text);
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -0.0, Double.MIN_VALUE, Double.MAX_VALUE, 1.0 / 3})
    void leavesTheOthers(double value) {
        assertThat(text(value)).isEmpty();
    }

    @Test
    void writesTheDecimalThatWasRead() {
        SplittableRandom random = new SplittableRandom(20261127);
        for (int i = 0; i < 100_000; i++) {
            int decimals = random.nextInt(7);
            long digits = random.nextLong(-(long) Math.pow(10, 1 + random.nextInt(7 + decimals)), 1_000_000L);
            double value = BigDecimal.valueOf(digits, decimals).doubleValue();
            if (Math.abs(value) >= 1e-3 && Math.abs(value) < 1e7) {
                BigDecimal shortest = BigDecimal.valueOf(digits, decimals).stripTrailingZeros();
                assertThat(text(value))
                        .isEqualTo(
                                shortest.setScale(Math.max(1, shortest.scale())).toPlainString());
            }
        }
    }

    /** A neighbour of such a number is another number, and needs all its digits. */
    @Test
    void tellsNeighboursApart() {
        SplittableRandom random = new SplittableRandom(2);
        for (int i = 0; i < 100_000; i++) {
            double value = BigDecimal.valueOf(random.nextLong(1_000, 10_000_000_000_000L), 6)
                    .doubleValue();
            assertThat(Double.parseDouble(text(value))).isEqualTo(value);
            assertThat(text(Math.nextUp(value))).isEmpty();
        }
    }

    private static String text(double value) {
        char[] text = new char[FewDecimals.LONGEST];
        return new String(text, 0, FewDecimals.write(value, text));
    }
}
