package io.burnlaw.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AxisTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0.85 | 4.8 | 1 1.5 2 2.5 3 4",
                "0.09 | 5.1 | 0.1 0.2 0.3 0.5 1 2 3 5",
                "0.01 | 900 | 0.01 0.03 0.1 0.3 1 3 10 30 100 300",
                "4.2 | 7.6 | 4.5 5 6 7",
                "2.6 | 3.3 | 2.6 2.7 2.8 2.9 3.0 3.1 3.2 3.3"
            })
    void aLogarithmicAxisLabelsAsManyDigitsAsHaveRoom(double low, double high, String labels) {
        Axis axis = new Axis("", low, high, true);
        assertThat(labels(axis.ticks(0.09))).containsExactly(labels.split(" "));
    }

    @Test
    void everyDigitOfADecadeHasATickAndTheDecadeIsStrong() {
        List<Axis.Tick> ticks = new Axis("", 0.5, 20, true).ticks(0.09);
        assertThat(ticks)
                .extracting(Axis.Tick::value)
                .containsExactly(0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 20.0);
        assertThat(ticks.stream().filter(Axis.Tick::strong))
                .extracting(Axis.Tick::value)
                .containsExactly(1.0, 10.0);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0 | 3.6 | 0.0 0.5 1.0 1.5 2.0 2.5 3.0 3.5",
                "-3 | 3 | \u22123 \u22122 \u22121 0 1 2 3",
                "0 | 950 | 0 100 200 300 400 500 600 700 800 900"
            })
    void aLinearAxisIsLabelledInRoundSteps(double low, double high, String labels) {
        assertThat(labels(new Axis("", low, high, false).ticks(0.09))).containsExactly(labels.split(" "));
    }

    @Test
    void labelsNeverCollideWhateverTheRange() {
        SplittableRandom random = new SplittableRandom(7);
        for (int i = 0; i < 2_000; i++) {
            double low = Math.pow(10, random.nextDouble(-4, 3));
            Axis axis = new Axis("", low, low * Math.pow(10, random.nextDouble(0.05, 5)), random.nextBoolean());
            double apart = random.nextDouble(0.05, 0.3);
            double last = Double.NEGATIVE_INFINITY;
            for (Axis.Tick tick : axis.ticks(apart)) {
                assertThat(axis.holds(tick.value())
                                || Math.abs(axis.share(tick.value())) < 1e-9
                                || Math.abs(axis.share(tick.value()) - 1) < 1e-9)
                        .as("tick %s of %s", tick, axis)
                        .isTrue();
                if (!tick.label().isEmpty()) {
                    // one part in 1e9: a tick at the end of an even step may be off by the last bit
                    assertThat(axis.share(tick.value()) - last)
                            .as("%s of %s", tick, axis)
                            .isGreaterThan(apart - 1e-9);
                    last = axis.share(tick.value());
                }
            }
        }
    }

    @Test
    void itHoldsWhatItWasMadeFor() {
        Axis axis = Axis.logarithmic("", List.of(0.5, 2.0, 7.0));
        assertThat(axis.low()).isLessThan(0.5);
        assertThat(axis.high()).isGreaterThan(7);
        assertThat(Axis.logarithmic("", List.of(3.0)).high()
                        / Axis.logarithmic("", List.of(3.0)).low())
                .as("one pressure is no reason for a picture of its noise")
                .isGreaterThanOrEqualTo(2 - 1e-12);
        assertThat(Axis.logarithmic("", List.of())).isEqualTo(new Axis("", 1, 10, true));
    }

    @Test
    void anAxisWithoutLengthIsAFaultOfTheCaller() {
        assertThatThrownBy(() -> new Axis("pressure", 2, 2, false))
                .hasMessageContaining("pressure")
                .hasMessageContaining("2.0");
        assertThatThrownBy(() -> new Axis("pressure", 0, 2, true)).hasMessageContaining("0.0");
        assertThatThrownBy(() -> new Axis("pressure", Double.NaN, 2, false)).hasMessageContaining("NaN");
    }

    private static List<String> labels(List<Axis.Tick> ticks) {
        return ticks.stream()
                .map(Axis.Tick::label)
                .filter(label -> !label.isEmpty())
                .toList();
    }
}
