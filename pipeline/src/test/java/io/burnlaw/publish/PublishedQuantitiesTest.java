package io.burnlaw.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.quantity.Unit;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PublishedQuantitiesTest {

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void aCourseKeepsEightDigitsOfItsRangeAndWritesNoMore(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < 300; round++) {
            double range = StrictMath.pow(10, random.nextDouble(-9, 12));
            double least = random.nextDouble(-1, 1) * range;
            double[] pascal =
                    random.doubles(40).map(share -> least + share * range).toArray();
            List<Double> published = PublishedQuantities.course(pascal, Unit.PASCAL);
            double spread = Arrays.stream(pascal).max().getAsDouble()
                    - Arrays.stream(pascal).min().getAsDouble();
            double step = StrictMath.pow(10, StrictMath.floor(StrictMath.log10(spread)) - 7);
            for (int i = 0; i < pascal.length; i++) {
                // Half a step of rounding, and the last bit of the value itself.
                assertThat(published.get(i)).isCloseTo(pascal[i], within(0.5 * step + Math.ulp(pascal[i])));
                // Beyond eight digits of the range one more stands before them where the values lie far from zero.
                assertThat(new BigDecimal(published.get(i).toString())
                                .stripTrailingZeros()
                                .precision())
                        .isLessThanOrEqualTo(9);
            }
        }
    }

    @Test
    void aClockThatBeganLongAgoKeepsItsSteps() {
        double[] time = {1.7e9, 1.7e9 + 0.001, 1.7e9 + 0.25};
        assertThat(PublishedQuantities.course(time, Unit.SECOND)).containsExactly(1.7e9, 1.7e9 + 0.001, 1.7e9 + 0.25);
    }

    @Test
    void aCourseThatStandsStillOrHasNothingInItStaysAsItIs() {
        assertThat(PublishedQuantities.course(new double[] {1 / 3.0, 1 / 3.0}, Unit.SECOND))
                .containsExactly(1 / 3.0, 1 / 3.0);
        assertThat(PublishedQuantities.course(new double[0], Unit.SECOND)).isEmpty();
    }
}
