package io.burnlaw.report.wording;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.report.document.Quantity;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumbersTest {

    @ParameterizedTest
    @CsvSource({
        // JCGM 100:2008, 7.2.2: m_S = 100.021 47 g with u = 0.35 mg; and 7.2.6: two digits of the uncertainty
        "100.02147, 0.00035, 100.02147 \u00b1 0.00035",
        "10.0574, 0.027, 10.057 \u00b1 0.027",
        "6.943, 0.11, 6.94 \u00b1 0.11",
        "884.3, 9.1, 884.3 \u00b1 9.1",
        "884.3, 0.5, 884.30 \u00b1 0.50",
        "884.3, 25, 884 \u00b1 25",
        "5.4999, 0.0996, 5.50 \u00b1 0.10",
        "-0.3204, 0.016, \u22120.320 \u00b1 0.016"
    })
    void aValueGoesToThePlaceOfItsUncertainty(double value, double std, String shown) {
        assertThat(Numbers.withStd(Quantity.of(value, "1", std))).isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource({
        // the interval of five points is wider than two standard uncertainties: it decides
        "0.36521, 0.0095, 0.3439, 0.3866, 0.365, 0.344 to 0.387",
        "0.36521, 0.0300, 0.3439, 0.3866, 0.365, 0.344 to 0.387",
        "5.7391, 0.025, 5.681, 5.797, 5.739, 5.681 to 5.797",
        "1.7644, 0.0001, 1.7417, 1.7644, 1.764, 1.742 to 1.764"
    })
    void theCoarserOfUncertaintyAndHalfWidthDecides(
            double value, double std, double low, double high, String shown, String range) {
        Quantity quantity = new Quantity(value, null, low, high, 0.95, std);
        assertThat(Numbers.value(quantity)).isEqualTo(shown);
        assertThat(Numbers.interval(quantity)).isEqualTo("95\u00a0%: " + range);
    }

    @ParameterizedTest
    @CsvSource({
        "5.5, 3, 5.50",
        "1, 3, 1.00",
        "0, 3, 0",
        "-76, 3, \u221276.0",
        "8.0000001, 3, 8.00",
        "123456, 3, 123000",
        "0.012345, 3, 0.0123",
        "1.039e-7, 4, 1.039 \u00d7 10\u207b\u2077",
        "9.999, 3, 10.0",
        "12345678, 2, 1.2 \u00d7 10\u2077"
    })
    void aComputedNumberKeepsTheDigitsThatItHas(double value, int significant, String shown) {
        assertThat(Numbers.number(value, significant)).isEqualTo(shown);
    }

    @Test
    void aStatedNumberGetsNoDigitThatNobodyWrote() {
        assertThat(Numbers.stated(Quantity.of(12.7, "mm"))).isEqualTo("12.7\u00a0mm");
        assertThat(Numbers.stated(Quantity.of(22, "Cel"))).isEqualTo("22\u00a0\u00b0C");
        assertThat(Numbers.stated(Quantity.of(1.8, "g/cm3", 0.01))).isEqualTo("1.80 \u00b1 0.01\u00a0g/cm\u00b3");
        // what a change of units leaves at the end of a double is not a digit
        assertThat(Numbers.stated(Quantity.of(1.774, "g/cm3", 0.004000000000000001)))
                .isEqualTo("1.774 \u00b1 0.004\u00a0g/cm\u00b3");
        assertThat(Numbers.level(0.95)).isEqualTo("95\u00a0%");
        assertThat(Numbers.level(0.07)).isEqualTo("7\u00a0%");
        assertThat(Numbers.written(10.0, 4)).isEqualTo("10");
    }

    @Test
    void aProbabilityIsNeverZero() {
        assertThat(Numbers.probability(0.0)).isEqualTo("<\u00a00.001");
        assertThat(Numbers.probability(0.00099)).isEqualTo("<\u00a00.001");
        assertThat(Numbers.probability(0.5)).isEqualTo("0.50");
        assertThat(Numbers.probability(null)).isEqualTo("\u2013");
    }

    @Test
    void aSmallShareIsOnlyCalledSmall() {
        assertThat(Numbers.percentAbove(0.591, 0.1)).isEqualTo("59\u00a0%");
        assertThat(Numbers.percentAbove(9.7e-7, 0.1)).isEqualTo("<\u00a00.1\u00a0%");
    }

    @Test
    void aNeighbourLendsItsPlace() {
        Quantity burnout = Quantity.of(3.6936, "s", 0.0023);
        assertThat(Numbers.like(Quantity.of(3.68014, "s"), burnout)).isEqualTo("3.6801\u00a0s");
        assertThat(Numbers.like(Quantity.of(3.68014, "s"), null)).isEqualTo("3.68\u00a0s");
        assertThat(Numbers.like(Quantity.of(2.05, "s", 0.02), burnout)).isEqualTo("2.050 \u00b1 0.020\u00a0s");
    }

    @Test
    void absenceIsADash() {
        assertThat(Numbers.of(null)).isEqualTo("\u2013");
        assertThat(Numbers.value(null)).isEqualTo("\u2013");
        assertThat(Numbers.range(Quantity.of(1, "s"))).isEqualTo("\u2013");
    }

    /** Whatever it is asked: the text, read again, lies within half of the last digit that the uncertainty leaves. */
    @Test
    void noTextIsFartherOffThanItsUncertaintyHides() {
        SplittableRandom random = new SplittableRandom(20260101);
        for (int i = 0; i < 20_000; i++) {
            double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(-3, 6));
            double std = Math.abs(value) * Math.pow(10, -3 * random.nextDouble());
            String shown = Numbers.value(Quantity.of(value, "1", std));
            if (!shown.contains("\u00d7")) {
                double read = Double.parseDouble(shown.replace('\u2212', '-'));
                // two digits of the uncertainty: the last place is at most a tenth of it, half of that is rounded away
                assertThat(Math.abs(read - value)).as(value + " +- " + std).isLessThanOrEqualTo(0.0501 * std);
            }
        }
    }

    /** All digits of the double decide, at a tie as well: by java.math.BigDecimal, which holds all of them. */
    @Test
    void noShortcutRoundsOtherwise() {
        SplittableRandom random = new SplittableRandom(20261127);
        for (int i = 0; i < 200_000; i++) {
            int place = random.nextInt(10);
            double any = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(7));
            double power = Math.pow(10, place);
            // a value as it comes, one close to the middle between two texts, and the middle itself where a double is
            double value = switch (i % 3) {
                case 0 -> any;
                case 1 -> (Math.rint(any * power) + 0.5) / power;
                default -> Math.rint(any * 1024) / 1024;
            };
            BigDecimal exact = new BigDecimal(value);
            if (Math.abs(value) >= 1e-3) {
                assertThat(Numbers.decimals(value, place).replace('\u2212', '-'))
                        .isEqualTo(plain(exact.setScale(place, RoundingMode.HALF_EVEN)));
                BigDecimal rounded = exact.round(new MathContext(4, RoundingMode.HALF_EVEN));
                assertThat(Numbers.number(value, 4).replace('\u2212', '-'))
                        .isEqualTo(plain(rounded.setScale(rounded.scale() + 4 - rounded.precision())));
            }
        }
    }

    private static String plain(BigDecimal number) {
        return (number.scale() < 0 ? number.setScale(0) : number).toPlainString();
    }

    @Test
    void theTextIsTheSameInEveryLanguage() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-SA-u-nu-arab"));
            assertThat(Numbers.withStd(Quantity.of(6.943, "mm/s", 0.11))).isEqualTo("6.94 \u00b1 0.11\u00a0mm/s");
        } finally {
            Locale.setDefault(before);
        }
    }
}
