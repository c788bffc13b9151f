package io.burnlaw.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Contrast on the ground, by the formula of WCAG 2.2 (relative luminance, contrast ratio). */
class InkTest {

    @ParameterizedTest
    @EnumSource(names = {"TEXT", "MUTED"})
    void wordsStandOut(Ink ink) {
        // 1.4.3: 4.5 for text of this size
        assertThat(contrast(ink.light(), Ink.PAPER.light())).isGreaterThanOrEqualTo(4.5);
        assertThat(contrast(ink.dark(), Ink.PAPER.dark())).isGreaterThanOrEqualTo(4.5);
    }

    @ParameterizedTest
    @EnumSource(names = {"S1", "S2", "S3"})
    void marksStandOut(Ink ink) {
        // 1.4.11: 3 for what is needed to understand a picture
        assertThat(contrast(ink.light(), Ink.PAPER.light())).isGreaterThanOrEqualTo(3);
        assertThat(contrast(ink.dark(), Ink.PAPER.dark())).isGreaterThanOrEqualTo(3);
    }

    @ParameterizedTest
    @CsvSource({"#000000, #ffffff, 21", "#777777, #ffffff, 4.48", "#ffffff, #ffffff, 1"})
    void theFormulaGivesThePublishedRatios(String one, String other, double ratio) {
        // W3C, Understanding SC 1.4.3: black on white 21:1; #777777 on white 4.48:1 (rounded there to two places)
        assertThat(contrast(one, other)).isCloseTo(ratio, org.assertj.core.data.Offset.offset(0.005));
    }

    private static double contrast(String one, String other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(String colour) {
        double[] weights = {0.2126, 0.7152, 0.0722};
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            double c = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
            sum += weights[i] * (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
        }
        return sum;
    }
}
