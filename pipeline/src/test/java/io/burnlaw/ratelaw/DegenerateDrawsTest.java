package io.burnlaw.ratelaw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.PressureErrors;
import io.burnlaw.campaign.Weighting;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A draw in which all firings are at one pressure has no exponent. */
class DegenerateDrawsTest {

    /** Four firings, three of them within some standard deviation of ln P of each other. */
    private static Resampling resampling(double spread, Weighting weighting) {
        double half = spread * Math.sqrt(1.5);
        List<FitPoint> points = List.of(
                point("a", 2e6 * Math.exp(-half)), point("b", 2e6), point("c", 2e6 * Math.exp(half)), point("d", 6e6));
        return new Resampling((WeightedSolution) WeightedFit.fit(points, weighting, PressureErrors.NONE), points);
    }

    private static FitPoint point(String id, double pressure) {
        return new FitPoint(id, id, pressure, 0, Campaigns.truth(pressure) * (id.equals("b") ? 1.02 : 1), 0, 0);
    }

    @ParameterizedTest
    @EnumSource(
            value = Weighting.class,
            names = {"PROPORTIONAL", "CONSTANT"})
    void aThousandthOfTheCampaignsSpreadIsOnePressure(Weighting weighting) {
        // four equal weights: standard deviation of ln P ln(3)·sqrt(3)/4 = 0.476; for weights as the square of the rate
        // it is 0.53, and those of the three are the same
        assertThat(resampling(0.476e-3 * 0.8, weighting).refit(new int[] {1, 1, 1, 0}))
                .isNull();
        assertThat(resampling(0.530e-3 * 1.25, weighting).refit(new int[] {1, 1, 1, 0}))
                .isNotNull();
    }

    @Test
    void noReplicateIsMadeOfSuchADraw() {
        Resampling resampling = resampling(1e-5, Weighting.PROPORTIONAL);
        double[][] replicates = resampling.replicates(500, 4);
        // with the lone firing in it every draw has a slope between the firings at 2 MPa and it, off by 2 % at most
        assertThat(List.of(replicates))
                .hasSize(500)
                .allSatisfy(each ->
                        assertThat(each[1]).isCloseTo(Campaigns.EXPONENT, within(0.02 / Math.log(3) + 1e-3)));
    }

    @Test
    void theFiringWithoutWhichNothingIsLeftTakesTheLawOfAll() {
        Resampling resampling = resampling(1e-5, Weighting.PROPORTIONAL);
        double[][] left = resampling.jackknife();
        assertThat(left).hasDimensions(4, 2);
        // The same numbers are summed up in another order.
        assertThat(left[0]).containsExactly(resampling.refit(new int[] {0, 1, 1, 1}), within(1e-13));
        assertThat(left[2]).containsExactly(resampling.refit(new int[] {1, 1, 0, 1}), within(1e-13));
        assertThat(left[3]).containsExactly(resampling.refit(new int[] {1, 1, 1, 1}), within(1e-9));
    }
}
