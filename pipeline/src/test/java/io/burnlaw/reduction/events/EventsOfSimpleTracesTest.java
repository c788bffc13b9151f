package io.burnlaw.reduction.events;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.burnlaw.campaign.Campaign.ReductionSettings;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class EventsOfSimpleTracesTest {

    private static final double AMBIENT = 1e5;

    /** Quiet, a straight rise of 20 ms from 0.5 s, a straight level part to 1.5 s, a fall over 30 ms or exponential. */
    private static UniformTrace trapezoid(double slope, double noise, long seed, double unit) {
        SplittableRandom random = new SplittableRandom(seed);
        int n = 2200;
        double[] time = new double[n];
        double[] pressure = new double[n];
        for (int i = 0; i < n; i++) {
            double t = i * 1e-3;
            double g;
            if (t < 0.5) {
                g = 0;
            } else if (t < 0.52) {
                g = (t - 0.5) / 0.02;
            } else if (t < 1.5) {
                g = 1 + slope * (t - 0.52);
            } else {
                g = (1 + slope * 0.98) * Math.max(0, 1 - (t - 1.5) / 0.03);
            }
            double gaussian =
                    Math.sqrt(-2 * Math.log(1 - random.nextDouble())) * Math.cos(2 * Math.PI * random.nextDouble());
            time[i] = t * unit;
            pressure[i] = AMBIENT + 5e6 * (g + noise * gaussian);
        }
        return UniformTrace.of(time, pressure, 0.3 * unit, 1.7 * unit);
    }

    private static EventFinder.Found found(UniformTrace record, double noise) {
        return EventFinder.find(record, AMBIENT, noise * 5e6, ReductionSettings.defaults())
                .orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "0.6, 0",
        "-0.5, 0",
        "0, 0.002",
        "0.6, 0.002",
        "-0.5, 0.002",
        "0, 0.02",
        "0.6, 0.02",
        "-0.5, 0.02"
    })
    void bothOpinionsFindTheCornerOfLevelRisingAndFallingTraces(double slope, double noise) {
        EventFinder.Found seen = found(trapezoid(slope, noise, 4, 1), noise);
        // Corners: 1.5 s; 10 % of the highest on the rise. 3 ms where it is clean: a few cells of smoothing round the
        // corner; 20 ms with 2 % noise, where the smoothing is 17 ms wide to each side
        double within = noise > 0.01 ? 0.02 : 0.003;
        double highest = 1 + Math.max(0, slope * 0.98);
        assertAll(
                () -> assertEquals(1.5, seen.bisector().orElseThrow(), within),
                () -> assertEquals(1.5, seen.curvature(), within),
                () -> assertEquals(0.5 + 0.02 * 0.1 * highest, seen.crossing(), within),
                () -> assertEquals(0.5, seen.tangent(), within));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-3, 0.37, 20})
    void eventsScaleWithTime(double unit) {
        EventFinder.Found one = found(trapezoid(0.3, 0.002, 5, 1), 0.002);
        EventFinder.Found other = found(trapezoid(0.3, 0.002, 5, unit), 0.002);
        assertAll(
                () -> assertEquals(one.crossing(), other.crossing() / unit, 1e-6),
                () -> assertEquals(
                        one.bisector().orElseThrow(), other.bisector().orElseThrow() / unit, 1e-6),
                () -> assertEquals(one.curvature(), other.curvature() / unit, 1e-6));
    }

    @Test
    void theBurnoutThatIsAskedForByNameIsThatOfTheTrace() {
        EventFinder.Found seen = found(trapezoid(0.3, 0.002, 6, 1), 0.002);
        assertTrue(seen.burnout(ReductionSettings.BurnoutEvent.MEAN_WEB).isEmpty());
        assertEquals(seen.bisector(), seen.burnout(ReductionSettings.BurnoutEvent.TANGENT_BISECTOR));
        assertEquals(
                seen.curvature(),
                seen.burnout(ReductionSettings.BurnoutEvent.MAXIMUM_CURVATURE).orElseThrow());
    }

    @Test
    void aThresholdOfTheCampaignMovesTheIgnition() {
        UniformTrace record = trapezoid(0, 0, 7, 1);
        ReductionSettings late = new ReductionSettings(
                ReductionSettings.Method.MASS_BALANCE, ReductionSettings.BurnoutEvent.MEAN_WEB, 0.5, 0.5);
        EventFinder.Found seen = EventFinder.find(record, AMBIENT, 0, late).orElseThrow();
        assertAll(
                // 0.5 and 1.5 s with half of 20 and 30 ms; 1 ms: a cell
                () -> assertEquals(0.510, seen.crossing(), 1e-3), () -> assertEquals(1.515, seen.actionEnd(), 1e-3));
    }
}
