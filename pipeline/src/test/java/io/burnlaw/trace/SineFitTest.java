package io.burnlaw.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import io.burnlaw.trace.Hum.LineSearch;
import io.burnlaw.trace.SineFit.Blocks;
import io.burnlaw.trace.SineFit.Turns;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SineFitTest {

    @Test
    @Oracle(
            value = "StrictMath.sin and cos of the Java platform (fdlibm), 200,000 angles",
            agreement = "absolute 2e-15")
    void cosineAndSineAreThoseOfThePlatform() {
        double[] turns = new SplittableRandom(1).doubles(200_000, -1000, 1000).toArray();
        double[] cosine = new double[turns.length];
        double[] sine = new double[turns.length];
        Turns.cosineAndSine(turns, cosine, sine);
        double worst = 0;
        for (int i = 0; i < turns.length; i++) {
            double angle = 2 * Math.PI * (turns[i] - Math.rint(turns[i]));
            worst = Math.max(worst, Math.abs(cosine[i] - StrictMath.cos(angle)));
            worst = Math.max(worst, Math.abs(sine[i] - StrictMath.sin(angle)));
        }
        // Two doublings carry the last bit of the polynomial eightfold.
        assertThat(worst).isLessThan(2e-15);
    }

    @ParameterizedTest
    @ValueSource(doubles = {49.9, 50, 50.07, 99.9, 150.1})
    void aLineIsFoundAtItsFrequencyWithItsAmplitude(double frequency) {
        double mains = Math.rint(frequency / 50) * 50;
        double[] time = SyntheticRecord.time(2000);
        SineFit fit = SineFit.of(time, noisy(time, frequency, 0.5, 3), 0);
        SineFit.Line line = fit.best(mains);
        // 5,000 samples of unit noise: 4 sqrt(2/5000); a record of 2.5 s cannot tell frequencies much closer than 0.03
        // Hz.
        assertThat(line.amplitude()).isCloseTo(0.5, within(0.08));
        assertThat(line.frequency()).isCloseTo(frequency, within(0.05));
    }

    @Test
    void theQuickLookMissesNoLineThatTheFitFinds() {
        int found = 0;
        for (int seed = 0; seed < 60; seed++) {
            double[] time = SyntheticRecord.time(seed % 2 == 0 ? 1000 : 2500);
            double frequency = (1 + seed % 3) * 50 + 0.1 * ((seed % 7) - 3) / 3;
            double amplitude = Math.sqrt((15 + seed % 20) * 4.0 / time.length);
            SineFit fit = SineFit.of(time, noisy(time, frequency, amplitude, seed), 0);
            // As many together as at 1 kHz and 2.5 kHz leave six blocks in a period of 150 Hz.
            Blocks blocks = Blocks.of(time, noisy(time, frequency, amplitude, seed), seed % 2 == 0 ? 1 : 2);
            LineSearch search = LineSearch.of(SineFit.of(blocks, blocks.mean(), 0), 50, 3);
            for (int harmonic = 1; harmonic <= 3; harmonic++) {
                if (fit.best(50 * harmonic).z() > 20) {
                    found++;
                    assertThat(search.mayHold(harmonic, 20)).isTrue();
                }
            }
        }
        assertThat(found).isGreaterThan(20);
    }

    @Test
    void theQuickLookPassesHardlyAnyNoiseOn() {
        int passed = 0;
        for (int seed = 0; seed < 50; seed++) {
            double[] time = SyntheticRecord.time(1000);
            LineSearch search = LineSearch.of(SineFit.of(time, noisy(time, 50, 0, seed), 0), 50, 3);
            for (int harmonic = 1; harmonic <= 3; harmonic++) {
                passed += search.mayHold(harmonic, 20) ? 1 : 0;
            }
        }
        // 150 looks of some five independent frequencies each, chance exp(-10).
        assertThat(passed).isLessThanOrEqualTo(1);
    }

    private static double[] noisy(double[] time, double frequency, double amplitude, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] values = new double[time.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = amplitude * StrictMath.sin(2 * Math.PI * frequency * time[i] + seed) + random.nextGaussian();
        }
        return values;
    }
}
