package io.burnlaw.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SentenceTest {

    @ParameterizedTest
    @CsvSource({
        "%.3g, 4918, 4920",
        "%.2g, 650.4, 650",
        "%.3g, 0.00001234, 0.0000123",
        "%.3g, 0, 0",
        "%+.3g, 12.345, +12.3",
        "%+.3g, -12.345, −12.3",
        "%.2f, -0.5, −0.50",
        "%.4g, 9999.9, 10000",
        "%.1f, 4918, 4918.0"
    })
    void numbersAreWrittenWithoutAnExponent(String format, double value, String expected) {
        assertThat(Sentence.of(format, value)).isEqualTo(expected);
    }

    @Test
    void everyConversionTakesItsOwnValue() {
        assertThat(Sentence.of("%d of %s: %.2g %% at %.3g s, %5.1f%n", 3, "$1\\", 12345.0, 0.25, 2.0))
                .isEqualTo("3 of $1\\: 12000 % at 0.250 s,   2.0" + System.lineSeparator());
    }

    @Test
    void whatIsNoNumberIsSaid() {
        assertThat(Sentence.of("%.3g mm", Double.POSITIVE_INFINITY)).isEqualTo("infinite mm");
        assertThat(Sentence.of("%.3g mm", Double.NaN)).isEqualTo("unknown mm");
    }

    /** Within these bounds the general conversion of the platform writes no exponent either, and the two must agree. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void itAgreesWithThePlatformWhereThatWritesNoExponent(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 1000; i++) {
            double value = StrictMath.pow(10, random.nextDouble(-3.9, 3.9));
            assertThat(Double.parseDouble(Sentence.of("%.5g", value)))
                    .isEqualTo(Double.parseDouble(String.format(Locale.ROOT, "%.5g", value)));
        }
    }

    /** Ties come up where a value has one digit more than is written, which random doubles hardly ever have. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void decimalsAreThoseOfThePlatform(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 2000; i++) {
            double value = i % 2 == 0
                    ? random.nextInt(-20_000, 20_000) / 2000.0
                    : random.nextDouble(-1, 1) * StrictMath.pow(10, random.nextDouble(-6, 9));
            for (String format : new String[] {"%.0f", "%.1f", "%.2f", "%+.2f", "%.3f"}) {
                assertThat(Sentence.of(format, value)).isEqualTo(platform(format, value));
            }
        }
        assertThat(Sentence.of("%.2f", -0.0)).isEqualTo(platform("%.2f", -0.0));
        assertThat(Sentence.of("%.2f", Double.NaN)).isEqualTo(platform("%.2f", Double.NaN));
    }

    private static String platform(String format, double value) {
        return String.format(Locale.ROOT, format, value).replace('-', '\u2212');
    }
}
