package io.burnlaw.trace.reading;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.WrittenUnit;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TraceHeadingTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "time [ms]|time|ms",
                "Pressure   (psi)|Pressure|psi",
                "t_ms|t|ms",
                "p/MPa|p|MPa",
                "thrust, N|thrust|N",
                "cell (left) [bar]|cell (left)|bar",
                "channel 1|channel 1|",
                "load []|load []|",
                "(s)||s",
                "p [bar|p [bar|",
                "p bar]|p bar]|"
            })
    void aHeadingIsANameAndAUnit(String text, String name, String unit) {
        TraceHeading heading = TraceHeading.of(text);
        assertThat(heading.name()).isEqualTo(name == null ? "" : name);
        assertThat(heading.unit()).isEqualTo(unit == null ? Optional.empty() : WrittenUnit.of(unit));
    }

    /** The rule for brackets as one expression of the platform, which looks at every way to read the text. */
    private static final Pattern BRACKETED = Pattern.compile("(.*?)\\s*(?:\\[([^\\[\\]]+)]|\\(([^()]+)\\))\\s*");

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void bracketsAreReadAsTheExpressionDoes(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        String letters = "ps[]()[]() /";
        for (int i = 0; i < 20_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int length = random.nextInt(1, 9); length > 0; length--) {
                text.append(letters.charAt(random.nextInt(letters.length())));
            }
            String written = text.toString().strip().replaceAll("\\s+", " ");
            Matcher expected = BRACKETED.matcher(written);
            if (expected.matches()) {
                String unit = expected.group(2) == null ? expected.group(3) : expected.group(2);
                TraceHeading heading = TraceHeading.of(text.toString());
                assertThat(heading.name()).as(written).isEqualTo(expected.group(1));
                assertThat(heading.unit()).as(written).isEqualTo(WrittenUnit.of(unit));
            }
        }
    }
}
