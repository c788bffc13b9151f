package io.burnlaw.reduction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Campaign.ReductionSettings.Method;
import io.burnlaw.reduction.point.BudgetLine;
import io.burnlaw.reduction.point.RatePoint;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Lines of the budget that can be had by hand. */
class FiringBudgetTest {

    private static final DoubleUnaryOperator LAW = FiringBench.law(6.5, 0.35);
    private static final double NOISE = 0.002;

    private static Reduction.Reduced fired(Method method) {
        return FiringBench.fire(
                        FiringBench.Case.bates(4, 38e-3, 14e-3, 60e-3, 9e-3).noise(NOISE), LAW, 21)
                .reduced(method);
    }

    private static BudgetLine line(Reduction.Reduced reduced, String source) {
        return reduced.points().get(0).budget().stream()
                .filter(each -> each.source().equals(source))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @EnumSource(
            value = Method.class,
            names = {"MASS_BALANCE", "THICKNESS_TIME"})
    void contributionsAddUpAsSquares(Method method) {
        RatePoint point = fired(method).points().get(0);
        List<BudgetLine> lines = point.budget();
        double sum = lines.stream()
                .mapToDouble(each -> each.contribution() * each.contribution())
                .sum();
        assertThat(point.rateStd() / point.rate()).isCloseTo(Math.sqrt(sum), within(1e-12));
        assertThat(lines).hasSize(12).isSortedAccordingTo((a, b) -> Double.compare(b.contribution(), a.contribution()));
    }

    @ParameterizedTest
    @EnumSource(
            value = Method.class,
            names = {"MASS_BALANCE", "THICKNESS_TIME"})
    void webMethodAndNoiseAreThoseOfTheTable(Method method) {
        Reduction.Reduced reduced = fired(method);
        // 0.03 mm, at least, of 12 mm
        BudgetLine web = line(reduced, "web");
        assertThat(web.std()).isBetween(0.03e-3, 0.04e-3);
        assertThat(web.contribution()).isCloseTo(web.std() / reduced.web().value(), within(1e-12));
        assertThat(line(reduced, "reduction method").contribution()).isEqualTo(0.0015);
        BudgetLine noise = line(reduced, "noise");
        double top = reduced.maxPressure() - FiringBench.AMBIENT;
        // as it was put in, to a few per cent of a standard deviation from some hundred samples
        assertThat(noise.std()).isCloseTo(NOISE * top, within(0.15 * NOISE * top));
        double samples = reduced.events().burnTime() / 1e-3;
        assertThat(noise.contribution())
                .isCloseTo(
                        noise.std() / reduced.points().get(0).pressures().powerMean(1) / Math.sqrt(samples),
                        within(0.02 * noise.contribution()));
    }

    @Test
    void eventsMoveThicknessOverTimeByTheirShareOfTheBurnTime() {
        Reduction.Reduced reduced = fired(Method.THICKNESS_TIME);
        double burnTime = reduced.events().burnTime();
        BudgetLine burnout = line(reduced, "web burnout");
        assertThat(burnout.std()).isEqualTo(reduced.events().webBurnoutStd());
        assertThat(burnout.contribution()).isCloseTo(burnout.std() / burnTime, within(1e-12));
        BudgetLine ignition = line(reduced, "ignition");
        assertThat(ignition.std()).isEqualTo(reduced.events().ignitionStd());
        // r = w/(tE - tB) has the same derivative; what is referred to the mean web takes some of it back
        assertThat(ignition.contribution())
                .isBetween(0.5 * ignition.std() / burnTime, 1.05 * ignition.std() / burnTime);
    }

    @Test
    void aThroatThatNobodyMeasuredAfterwardsMayHaveChanged() {
        Reduction.Reduced reduced = fired(Method.MASS_BALANCE);
        BudgetLine throat = line(reduced, "change of the throat");
        // 0.3 % of 9 mm
        assertThat(throat.std()).isCloseTo(0.027e-3, within(0.01e-3));
        // an area that grows by 2·0.3 % over the burn lets the later half pass more: some parts in ten thousand
        assertThat(throat.contribution()).isBetween(1e-5, 3e-3);
        Reduction.Reduced measured = FiringBench.fire(
                        FiringBench.Case.bates(4, 38e-3, 14e-3, 60e-3, 9e-3).eroding(9.001e-3), LAW, 21)
                .reduced(Method.MASS_BALANCE);
        // both readings: sqrt(2)·0.02 mm
        assertThat(line(measured, "change of the throat").std()).isCloseTo(0.0283e-3, within(0.0001e-3));
    }

    @Test
    void theRatioOfSpecificHeatsIsThatOfNoStatement() {
        Reduction.Reduced reduced = fired(Method.MASS_BALANCE);
        assertThat(line(reduced, "ratio of specific heats").std()).isEqualTo(0.03);
        assertThat(line(reduced, "sensor zero").contribution()).isGreaterThan(0).isLessThan(2e-3);
        assertThat(line(reduced, "chamber volume").contribution())
                .isGreaterThan(0)
                .isLessThan(2e-3);
    }
}
