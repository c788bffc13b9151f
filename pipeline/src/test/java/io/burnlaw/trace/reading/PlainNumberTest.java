package io.burnlaw.trace.reading;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.trace.reading.CellNumbers.PlainNumber;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against {@link Double#parseDouble}, to the last bit: both are to give the double next to the decimal number. */
class PlainNumberTest {

    private final PlainNumber plain = new PlainNumber((byte) '.', CellKinds.kindsWith(","));

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void whatIsReadIsTheNearestDouble(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int read = 0;
        for (int i = 0; i < 20_000; i++) {
            double number = (random.nextDouble() - 0.4) * StrictMath.pow(10, random.nextInt(-9, 10));
            String text = String.format(Locale.ROOT, "%." + random.nextInt(12) + (i % 3 == 0 ? "e" : "f"), number);
            int behind = read(text);
            if (behind >= 0) {
                read++;
                assertThat(behind).isEqualTo(text.length());
                assertThat(Double.doubleToRawLongBits(plain.value()))
                        .as(text)
                        .isEqualTo(Double.doubleToRawLongBits(Double.parseDouble(text)));
            }
        }
        // Numbers with more digits than a double holds are left to the complete parser; here they are few.
        assertThat(read).isGreaterThan(15_000);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0",
                "-0",
                "-0.0",
                "+7",
                "5.",
                ".5",
                "-.25",
                "0001.500",
                "9007199254740992",
                "1e22",
                "1E-22",
                "3e+5",
                "12e07"
            })
    void numbersAsTheyAreWritten(String text) {
        assertThat(read(text)).isEqualTo(text.length());
        assertThat(Double.doubleToRawLongBits(plain.value()))
                .isEqualTo(Double.doubleToRawLongBits(Double.parseDouble(text)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "-",
                ".",
                "+.",
                "e5",
                "1e",
                "1e+",
                "1.2.3",
                "--1",
                "1-2",
                "NaN",
                "inf",
                "0x10",
                "1 ",
                " 1",
                "\"1\"",
                "1e100",
                "1e23",
                "9007199254740993",
                "99999999999999999999",
                "0.1234567890123456789",
                "1;2",
                "1f",
                "١"
            })
    void anythingElseIsLeftToACompleteParser(String text) {
        assertThat(read(text)).isEqualTo(-1);
    }

    private int read(String text) {
        return plain.read((text + ",\n").getBytes(StandardCharsets.UTF_8), 0);
    }
}
