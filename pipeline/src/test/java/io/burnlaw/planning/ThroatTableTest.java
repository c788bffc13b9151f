package io.burnlaw.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Hardware;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a page interpolates is what the planner gives. */
class ThroatTableTest {

    /** 0.1 %: a fifth of the last of three digits; the rows keep half of that at the middle between them. */
    private static final double CLOSE = 1e-3;

    static Stream<PlanBasis> motors() {
        var points = PlannedMotors.points(8, 1e6, 3e6, 0.4, 0.03, new SplittableRandom(5));
        return Stream.of(
                PlannedMotors.basis(points, PlannedMotors.hardware(7.5e6)),
                PlannedMotors.basis(points, new Hardware(OptionalDouble.empty(), 1)),
                PlannedMotors.slowRegime(new SplittableRandom(9)).basis());
    }

    @ParameterizedTest
    @MethodSource("motors")
    void aThousandThroatsBetweenItsRowsAreThoseOfThePlanner(PlanBasis basis) {
        PlanOptions options = PlanOptions.defaults();
        ThroatTable table = table(basis, options);
        SplittableRandom random = new SplittableRandom(20261129);
        double first = table.rows().get(0).diameter();
        double last = table.rows().get(table.rows().size() - 1).diameter();
        for (int i = 0; i < 1000; i++) {
            double diameter = first * Math.pow(last / first, random.nextDouble());
            int above = above(table.rows(), diameter);
            ThroatTable.Row low = table.rows().get(above - 1);
            ThroatTable.Row high = table.rows().get(above);
            if (Math.log(high.diameter() / low.diameter()) < ThroatTable.CLOSEST) {
                continue; // a jump is somewhere between these two
            }
            PlannedThroat planned =
                    Planner.throat(basis, options, diameter).match(found -> found.throat(), none -> null);
            assertThat(planned).as("%s m", diameter).isNotNull();
            close(
                    low,
                    high,
                    diameter,
                    planned.meanPressure().value(),
                    row -> row.meanPressure().value());
            close(
                    low,
                    high,
                    diameter,
                    planned.meanPressure().low(),
                    row -> row.meanPressure().low());
            close(
                    low,
                    high,
                    diameter,
                    planned.meanPressure().high(),
                    row -> row.meanPressure().high());
            close(
                    low,
                    high,
                    diameter,
                    planned.maxPressure().value(),
                    row -> row.maxPressure().value());
            close(
                    low,
                    high,
                    diameter,
                    planned.maxPressure().low(),
                    row -> row.maxPressure().low());
            close(
                    low,
                    high,
                    diameter,
                    planned.maxPressure().high(),
                    row -> row.maxPressure().high());
            close(low, high, diameter, planned.burnTime().orElseThrow(), ThroatTable.Row::burnTime);
            assertThat(table.remarks().stream()
                            .filter(each -> each.from() <= diameter && diameter <= each.to())
                            .map(ThroatTable.Remark::text)
                            .findFirst())
                    .isEqualTo(planned.remark());
        }
    }

    @ParameterizedTest
    @MethodSource("motors")
    void itsFirstRowIsTheSmallestThroatAndNoneMayPassTheLimit(PlanBasis basis) {
        Plan.Planned plan = (Plan.Planned) Planner.plan(basis, PlanOptions.defaults());
        List<ThroatTable.Row> rows = plan.table().orElseThrow().rows();
        // the logarithm there and back
        assertThat(rows.get(0).diameter()).isCloseTo(plan.smallestThroat(), within(1e-12));
        // a thousandth: what the search for the smallest throat leaves
        assertThat(rows)
                .allMatch(row -> row.maxPressure().high() <= plan.allowedPressure() * (1 + ThroatModel.TOLERANCE));
        assertThat(plan.table().orElseThrow().smaller()).contains(plan.allowedBecause());
        assertThat(rows.size()).isLessThan(120);
    }

    private static ThroatTable table(PlanBasis basis, PlanOptions options) {
        return ((Plan.Planned) Planner.plan(basis, options)).table().orElseThrow();
    }

    private static int above(List<ThroatTable.Row> rows, double diameter) {
        int above = 1;
        while (above < rows.size() - 1 && rows.get(above).diameter() < diameter) {
            above++;
        }
        return above;
    }

    private static void close(
            ThroatTable.Row low,
            ThroatTable.Row high,
            double diameter,
            double planned,
            ToDoubleFunction<ThroatTable.Row> figure) {
        double share = Math.log(diameter / low.diameter()) / Math.log(high.diameter() / low.diameter());
        double between = Math.pow(figure.applyAsDouble(low), 1 - share) * Math.pow(figure.applyAsDouble(high), share);
        assertThat(between / planned).as("%s m", diameter).isCloseTo(1, within(CLOSE));
    }
}
