package io.burnlaw.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;
import static org.assertj.core.data.Percentage.withPercentage;

import io.burnlaw.campaign.Hardware;
import io.burnlaw.planning.PlannedThroat.Drill;
import io.burnlaw.planning.PlannedThroat.ThroatAnswer;
import io.burnlaw.prediction.IgnitionSpike;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.PiecewiseLaw;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class PlannerTest {

    private static final PlanOptions OPTIONS = PlanOptions.defaults();

    private final List<FitPoint> points = PlannedMotors.points(8, 1e6, 3e6, 0.4, 0.03, new SplittableRandom(5));
    private final PlanBasis basis = PlannedMotors.basis(points, PlannedMotors.hardware(7.5e6));

    private Plan.Planned planned(PlanBasis of) {
        return Planner.plan(of, OPTIONS).match(plan -> plan, refused -> {
            throw new AssertionError(refused.sentence());
        });
    }

    @Test
    void nothingThatIsNamedCouldPassTheCaseLimitOverTheSafetyFactor() {
        Plan.Planned plan = planned(basis);
        assertThat(plan.allowedPressure()).isCloseTo(7.5e6 / 1.5 + PlannedMotors.AMBIENT, offset(1.0));
        List<PlannedThroat> named = new ArrayList<>(plan.ladder());
        named.add(plan.next().orElseThrow());
        assertThat(named).hasSizeGreaterThan(4).allSatisfy(each -> {
            assertThat(each.allowed()).isTrue();
            // 0.1 %: the search for the smallest throat stops there
            assertThat(each.maxPressure().high()).isLessThanOrEqualTo(1.001 * plan.allowedPressure());
            assertThat(each.maxPressure().high())
                    .isGreaterThan(each.maxPressure().value());
            assertThat(each.diameter()).isGreaterThanOrEqualTo(plan.smallestThroat());
            assertThat(each.drills())
                    .allSatisfy(drill -> assertThat(drill.diameter()).isGreaterThanOrEqualTo(plan.smallestThroat()));
        });
        assertThat(plan.cautions()).anySatisfy(each -> assertThat(each).contains("local law"));
    }

    @Test
    void theLadderClimbsOverTheRange() {
        Plan.Planned plan = planned(basis);
        assertThat(plan.ladder())
                .extracting(each -> each.meanPressure().value())
                .isSorted();
        double first = plan.ladder().get(0).meanPressure().value();
        double last = plan.ladder().get(plan.ladder().size() - 1).meanPressure().value();
        assertThat(last / first).isGreaterThan(4);
    }

    @Test
    void theThroatForAPressureGivesIt() {
        ThroatAnswer.Found found = (ThroatAnswer.Found) Planner.throatFor(basis, OPTIONS, 2e6);
        ThroatAnswer.Found exact = (ThroatAnswer.Found) Planner.throat(basis, OPTIONS, found.exact());
        assertThat(exact.throat().meanPressure().value()).isCloseTo(2e6, withPercentage(0.11));
        // the nearest drill lies within 0.05 mm of 10.8 mm: 0.5 % in diameter, 1.6 % in pressure
        assertThat(found.throat().meanPressure().value()).isCloseTo(2e6, withPercentage(1.7));
        assertThat(found.throat().diameter())
                .isEqualTo(found.throat().drills().get(0).diameter());
    }

    @Test
    void onlyDrillsAtHandAreNamed() {
        PlanOptions metric = OPTIONS.with(EnumSet.of(Drill.Series.METRIC));
        Plan.Planned plan = (Plan.Planned) Planner.plan(basis, metric);
        assertThat(plan.ladder())
                .flatExtracting(PlannedThroat::drills)
                .extracting(Drill::series)
                .containsOnly(Drill.Series.METRIC);
    }

    @Test
    void aThroatThatIsTooSmallIsShownWithItsRefusal() {
        ThroatAnswer.Found found = (ThroatAnswer.Found) Planner.throat(basis, OPTIONS, 0.008);
        assertThat(found.throat().allowed()).isFalse();
        assertThat(found.throat().refusal().orElseThrow())
                .contains("Not to be drilled", "above 5.10 MPa", "case limit of 7.50 MPa over a safety factor of 1.5");
    }

    @Test
    void aPressureAboveTheLimitIsRefused() {
        ThroatAnswer.None none = (ThroatAnswer.None) Planner.throatFor(basis, OPTIONS, 6e6);
        assertThat(none.reason()).contains("6.00 MPa", "above 5.10 MPa", "case limit of 7.50 MPa");
    }

    @Test
    void aPressureWhoseUpperPredictionIsAboveTheLimitIsRefused() {
        ThroatAnswer.None none = (ThroatAnswer.None) Planner.throatFor(basis, OPTIONS, 4.9e6);
        assertThat(none.reason()).contains("upper prediction of its peak");
    }

    @Test
    void anExponentOfOneOrMoreIsRefused() {
        PlanBasis steep = PlannedMotors.basis(
                PlannedMotors.points(8, 1e6, 3e6, 1.1, 0.01, new SplittableRandom(5)), PlannedMotors.hardware(7.5e6));
        Plan.Refused refused = (Plan.Refused) Planner.plan(steep, OPTIONS);
        assertThat(refused.sentence()).contains("the exponent is 1.", "no motor has a steady pressure");
        assertThat(Planner.throat(steep, OPTIONS, 0.011)).isInstanceOf(ThroatAnswer.None.class);
        assertThat(Planner.throatFor(steep, OPTIONS, 2e6)).isInstanceOf(ThroatAnswer.None.class);
    }

    @Test
    void anExponentThatMayReachOneIsRefused() {
        PlanBasis unsure = PlannedMotors.basis(
                PlannedMotors.points(4, 1e6, 1.6e6, 0.8, 0.05, new SplittableRandom(5)), PlannedMotors.hardware(7.5e6));
        Plan.Refused refused = (Plan.Refused) Planner.plan(unsure, OPTIONS);
        assertThat(refused.sentence()).contains("its interval reaches 1");
    }

    @Test
    void withoutALimitNothingAboveWhatWasFiredIsNamed() {
        PlanBasis without = PlannedMotors.basis(points, new Hardware(OptionalDouble.empty(), 1));
        Plan.Planned plan = planned(without);
        assertThat(plan.allowedPressure()).isEqualTo(3e6);
        assertThat(plan.cautions()).anySatisfy(each -> assertThat(each).contains("No limit of the case is stated"));
    }

    @Test
    void withoutALimitAndWithoutAFiringNothingIsNamed() {
        PlanBasis nothing = new PlanBasis(
                "guess",
                basis.law(),
                List.of(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                basis.motor(),
                "bates",
                0.02,
                0,
                new Hardware(OptionalDouble.empty(), 1),
                OptionalDouble.empty(),
                IgnitionSpike.NONE,
                List.of());
        Plan.Refused refused = (Plan.Refused) Planner.plan(nothing, OPTIONS);
        assertThat(refused.sentence()).contains("State the limit of the case");
    }

    @Test
    void aCaseThatStandsTooLittleIsToldSo() {
        PlanBasis weak = PlannedMotors.basis(points, PlannedMotors.hardware(0.6e6));
        Plan.Refused refused = (Plan.Refused) Planner.plan(weak, OPTIONS);
        assertThat(refused.sentence()).contains("No throat is named", "case limit of 0.600 MPa");
    }

    @Test
    void theNextFiringShrinksTheExponentMostOfAllRungs() {
        Plan.Planned plan = planned(basis);
        double least = plan.ladder().stream()
                .mapToDouble(each -> each.exponentStdAfter().orElseThrow())
                .min()
                .orElseThrow();
        assertThat(plan.next().orElseThrow().exponentStdAfter().orElseThrow()).isLessThan(1.03 * least);
    }

    @Test
    void aSlowRegimeIsKeptBelowAndItsThroatIsNamed() {
        PlannedMotors.Slow slow = PlannedMotors.slowRegime(new SplittableRandom(9));
        Plan.Planned plan = planned(slow.basis());
        assertThat(plan.ladder())
                .allSatisfy(each -> assertThat(each.meanPressure().value()).isGreaterThan(1e6));
        double limit = plan.slowRegimeThroat().orElseThrow();
        assertThat(plan.ladder().get(0).diameter()).isLessThan(limit * 1.1);
        // at the throat named, the lower end of the prediction just holds at the threshold
        ThroatAnswer.Found held = (ThroatAnswer.Found) Planner.throat(slow.basis(), OPTIONS, 0.98 * limit);
        assertThat(held.throat().meanPressure().low()).isGreaterThan(0.9e6);
        ThroatAnswer.Found fallen = (ThroatAnswer.Found) Planner.throat(slow.basis(), OPTIONS, 1.25 * limit);
        assertThat(fallen.throat().meanPressure().low()).isLessThan(0.9e6);
    }

    @Test
    void twoSteadyPressuresAreTold() {
        PlannedMotors.Slow slow = PlannedMotors.slowRegime(new SplittableRandom(9));
        double limit = planned(slow.basis()).slowRegimeThroat().orElseThrow();
        ThroatAnswer.Found both = (ThroatAnswer.Found) Planner.throat(slow.basis(), OPTIONS, 0.98 * limit);
        assertThat(both.throat().otherEquilibria())
                .isNotEmpty()
                .allSatisfy(each -> assertThat(each).isLessThan(1e6));
    }

    @Test
    void moreFiringsAreWantedWhereTheScatterIsLarger() {
        PlanBasis rough = PlannedMotors.basis(
                PlannedMotors.points(8, 1e6, 3e6, 0.4, 0.06, new SplittableRandom(5)), PlannedMotors.hardware(7.5e6));
        int few = planned(basis).firingsToExponent().orElseThrow();
        int many = planned(rough).firingsToExponent().orElse(1000);
        assertThat(few).isBetween(2, 30);
        assertThat(many).isGreaterThan(2 * few);
    }

    @Test
    void theBreakIsSharpenedNearIt() {
        List<FitPoint> bent = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(3);
        for (int i = 0; i < 16; i++) {
            double pressure = 0.5e6 * Math.pow(8, i / 15.0);
            double u = Math.log(pressure / 1.5e6);
            double rate = 6e-3 * Math.exp((u < 0 ? 0.6 : 0.1) * u + 0.02 * random.nextGaussian());
            bent.add(new FitPoint("f" + i, "f" + i, pressure, 0, rate, 0, 0));
        }
        PiecewiseLaw law = new PiecewiseLaw(
                List.of(
                        PlannedMotors.fit(
                                bent.stream().filter(p -> p.pressure() < 1.5e6).toList()),
                        PlannedMotors.fit(
                                bent.stream().filter(p -> p.pressure() >= 1.5e6).toList())),
                List.of(1.5e6));
        PlanBasis of = new PlanBasis(
                "bent",
                law,
                bent,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                PlannedMotors.motor(),
                "bates",
                0.02,
                0,
                PlannedMotors.hardware(9e6),
                OptionalDouble.empty(),
                IgnitionSpike.NONE,
                List.of());
        Plan.Planned plan = (Plan.Planned) Planner.plan(of, OPTIONS.with(PlanOptions.Goal.BREAK));
        assertThat(plan.next().orElseThrow().meanPressure().value()).isBetween(0.75e6, 3e6);
        assertThat(plan.sentence()).contains("It narrows the break at 1.50 MPa most");
    }
}
