package io.burnlaw.publish;

import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.campaign.Choice;
import io.burnlaw.grain.Grain;
import io.burnlaw.planning.PlanBasis;
import io.burnlaw.planning.PlanOptions;
import io.burnlaw.planning.PlannedThroat.Drill;
import io.burnlaw.planning.PlannedThroat.Predicted;
import io.burnlaw.planning.PlannedThroat.ThroatAnswer;
import io.burnlaw.planning.Planner;
import io.burnlaw.quantity.Unit;
import io.burnlaw.report.document.Plan;
import io.burnlaw.report.document.Plan.DrillChoice;
import io.burnlaw.report.document.Plan.PlannedAnswer;
import io.burnlaw.report.document.Plan.PlannedMotor;
import io.burnlaw.report.document.Plan.PlannedThroat;
import io.burnlaw.report.document.Plan.ThroatRemark;
import io.burnlaw.report.document.Plan.ThroatTable;
import io.burnlaw.report.document.Quantity;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A plan as it stands in the document. */
public final class PlanDocument {

    /** Rows of the grain's table; its jumps and bends have rows of their own. */
    private static final int ROWS = 40;

    private PlanDocument() {}

    /**
     * The plan of one formulation.
     *
     * @param plan  or refusal
     * @param basis that it was made from; empty where there was none to make one from
     * @param level of its predictions [1]
     * @return the same in the document's words
     */
    public static Plan of(io.burnlaw.planning.Plan plan, Optional<PlanBasis> basis, double level) {
        return plan.match(
                planned -> new Plan(
                        planned.formulation(),
                        planned.grain(),
                        pressure(planned.allowedPressure()),
                        planned.allowedBecause(),
                        planned.next().map(each -> throat(each, level)).orElse(null),
                        planned.ladder().stream()
                                .map(each -> throat(each, level))
                                .toList(),
                        length(OptionalDouble.of(planned.smallestThroat())),
                        length(planned.slowRegimeThroat()),
                        planned.firingsToExponent().isPresent()
                                ? (Integer) planned.firingsToExponent().getAsInt()
                                : null,
                        basis.map(PlanDocument::motor).orElse(null),
                        planned.sentence(),
                        planned.cautions(),
                        null,
                        planned.table()
                                .flatMap(table -> basis.map(from -> table(table, from, level)))
                                .orElse(null),
                        basis.flatMap(from -> Planner.anyGrain(
                                                from, PlanOptions.defaults().withLevel(level))
                                        .map(table -> GrainTableDocument.of(table, from.ignition(), level)))
                                .orElse(null)),
                refused -> new Plan(
                        refused.formulation(),
                        refused.grain(),
                        pressure(refused.allowedPressure()),
                        null,
                        null,
                        List.of(),
                        null,
                        null,
                        null,
                        basis.map(PlanDocument::motor).orElse(null),
                        refused.sentence(),
                        refused.cautions(),
                        null,
                        null,
                        null));
    }

    /**
     * A question to a plan, with its answer.
     *
     * @param level of its predictions [1]
     * @return the same in the document's words
     */
    public static PlannedAnswer answer(String question, ThroatAnswer answer, double level) {
        return answer.match(
                found -> new PlannedAnswer(
                        question,
                        throat(found.throat(), level),
                        found.exact() == found.throat().diameter() ? null : length(OptionalDouble.of(found.exact())),
                        null),
                none -> new PlannedAnswer(question, null, null, none.reason()));
    }

    /**
     * A throat.
     *
     * @param level of these [1]
     * @return the same in the document's words
     */
    public static PlannedThroat throat(io.burnlaw.planning.PlannedThroat throat, double level) {
        return new PlannedThroat(
                Quantity.of(Unit.MILLIMETRE.fromSi(throat.diameter()), Unit.MILLIMETRE.ucum()),
                throat.drills().stream().map(PlanDocument::drill).toList(),
                predicted(throat.meanPressure(), level),
                predicted(throat.maxPressure(), level),
                throat.burnTime().isPresent() ? Quantity.of(throat.burnTime().getAsDouble(), Unit.SECOND.ucum()) : null,
                throat.allowed(),
                throat.refusal().orElse(null),
                throat.otherEquilibria().stream().map(Unit.MEGAPASCAL::fromSi).toList(),
                throat.exponentStdAfter().isPresent()
                        ? (Double) throat.exponentStdAfter().getAsDouble()
                        : null,
                throat.remark().orElse(null));
    }

    private static DrillChoice drill(Drill drill) {
        return new DrillChoice(Choice.word(drill.series()), drill.name(), Unit.MILLIMETRE.fromSi(drill.diameter()));
    }

    private static PlannedMotor motor(PlanBasis basis) {
        Grain grain = basis.motor().grain();
        TreeSet<Double> webs = new TreeSet<>();
        for (int i = 0; i <= ROWS; i++) {
            webs.add(grain.burnout() * i / ROWS);
        }
        for (double at : grain.breaks()) {
            // just before a jump of the surface and just after it
            webs.add(at * (1 - 1e-6));
            webs.add(Math.min(grain.burnout(), at));
        }
        return new PlannedMotor(
                webs.stream().map(Unit.MILLIMETRE::fromSi).toList(),
                webs.stream()
                        .map(web -> Unit.SQUARE_MILLIMETRE.fromSi(grain.surface(web)))
                        .toList(),
                Quantity.of(Unit.CUBIC_CENTIMETRE.fromSi(basis.motor().freeVolume()), Unit.CUBIC_CENTIMETRE.ucum()),
                Quantity.of(
                        Unit.KILOGRAM_PER_CUBIC_METRE.fromSi(basis.motor().density()),
                        Unit.KILOGRAM_PER_CUBIC_METRE.ucum()),
                Quantity.of(basis.motor().gas().characteristicVelocity(), Unit.METRE_PER_SECOND.ucum()),
                basis.motor().gas().specificHeatRatio(),
                pressure(basis.motor().ambientPressure()),
                basis.strengthStd(),
                Unit.MILLIMETRE.fromSi(basis.throatStd()),
                pressure(basis.slowBelow()),
                pressure(basis.fastAbove()),
                pressure(basis.highestFired()),
                basis.ignition().mean(),
                basis.ignition().std(),
                basis.remarks());
    }

    private static ThroatTable table(io.burnlaw.planning.ThroatTable table, PlanBasis basis, double level) {
        Grain grain = basis.motor().grain();
        double greatest = Stream.concat(
                        IntStream.rangeClosed(0, ROWS).mapToObj(i -> grain.burnout() * i / ROWS),
                        Arrays.stream(grain.breaks()).boxed())
                .mapToDouble(grain::surface)
                .max()
                .orElseThrow();
        return new ThroatTable(
                level,
                column(table, row -> Unit.MILLIMETRE.fromSi(row.diameter())),
                column(table, row -> greatest / new Nozzle(row.diameter()).throatArea()),
                column(table, row -> Unit.MEGAPASCAL.fromSi(row.meanPressure().value())),
                column(table, row -> Unit.MEGAPASCAL.fromSi(row.meanPressure().low())),
                column(table, row -> Unit.MEGAPASCAL.fromSi(row.meanPressure().high())),
                column(table, row -> Unit.MEGAPASCAL.fromSi(row.maxPressure().value())),
                column(table, row -> Unit.MEGAPASCAL.fromSi(row.maxPressure().low())),
                column(table, row -> Unit.MEGAPASCAL.fromSi(row.maxPressure().high())),
                column(table, io.burnlaw.planning.ThroatTable.Row::burnTime),
                table.remarks().stream()
                        .map(each -> new ThroatRemark(
                                digits(Unit.MILLIMETRE.fromSi(each.from())),
                                digits(Unit.MILLIMETRE.fromSi(each.to())),
                                each.text()))
                        .toList(),
                table.smaller(),
                table.larger());
    }

    private static List<Double> column(
            io.burnlaw.planning.ThroatTable table, ToDoubleFunction<io.burnlaw.planning.ThroatTable.Row> figure) {
        return table.rows().stream()
                .map(row -> digits(figure.applyAsDouble(row)))
                .toList();
    }

    /** Seven digits: a tenth of the step between the closest rows, and a thousandth of what the table promises. */
    private static double digits(double value) {
        return new BigDecimal(value).round(new MathContext(7)).doubleValue();
    }

    private static Quantity predicted(Predicted predicted, double level) {
        // JSON knows no infinity: without an upper limit there is no interval
        boolean bounded = Double.isFinite(predicted.high());
        return new Quantity(
                Unit.MEGAPASCAL.fromSi(predicted.value()),
                Unit.MEGAPASCAL.ucum(),
                bounded ? (Double) Unit.MEGAPASCAL.fromSi(predicted.low()) : null,
                bounded ? (Double) Unit.MEGAPASCAL.fromSi(predicted.high()) : null,
                bounded ? (Double) level : null,
                null);
    }

    private static Quantity pressure(double pascal) {
        return Quantity.of(Unit.MEGAPASCAL.fromSi(pascal), Unit.MEGAPASCAL.ucum());
    }

    private static @Nullable Quantity pressure(OptionalDouble pascal) {
        return pascal.isPresent() ? pressure(pascal.getAsDouble()) : null;
    }

    private static @Nullable Quantity length(OptionalDouble metres) {
        return metres.isPresent()
                ? Quantity.of(Unit.MILLIMETRE.fromSi(metres.getAsDouble()), Unit.MILLIMETRE.ucum())
                : null;
    }
}
