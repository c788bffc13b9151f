package io.burnlaw.publish;

import io.burnlaw.planning.GrainTable;
import io.burnlaw.prediction.IgnitionSpike;
import io.burnlaw.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** A table of grains as it stands in the document. */
final class GrainTableDocument {

    private GrainTableDocument() {}

    /**
     * The table.
     *
     * @param ignition of the firings so far
     * @param level    of the predictions [1]
     * @return the same in the document's units
     */
    static io.burnlaw.report.document.GrainTable of(GrainTable table, IgnitionSpike ignition, double level) {
        return new io.burnlaw.report.document.GrainTable(
                level,
                GrainTable.WITHIN,
                GrainTable.ENDS_WITHIN,
                GrainTable.SHORTEST,
                digits(Unit.MILLIMETRE.fromSi(table.smallest())),
                digits(Unit.MILLIMETRE.fromSi(table.largest())),
                digits(table.shapes().cores()),
                exponentials(table.shapes().lengths()),
                exponentials(table.ratios()),
                tenThousandths(table.start()),
                tenThousandths(table.mean()),
                tenThousandths(table.max()),
                tenThousandths(table.time()),
                column(table, row -> Unit.MEGAPASCAL.fromSi(row.pressure())),
                column(table, GrainTable.Steady::ratio),
                column(table, GrainTable.Steady::low),
                column(table, GrainTable.Steady::high),
                column(table, row -> Unit.MILLIMETRE_PER_SECOND.fromSi(row.rate())),
                digits(List.of(ignition.mean(), ignition.low(level), ignition.high(level))));
    }

    private static List<Double> column(GrainTable table, ToDoubleFunction<GrainTable.Steady> figure) {
        return table.steady().stream()
                .map(row -> digits(figure.applyAsDouble(row)))
                .toList();
    }

    private static List<Double> exponentials(List<Double> logarithms) {
        return logarithms.stream().map(each -> digits(StrictMath.exp(each))).toList();
    }

    private static List<Double> digits(List<Double> numbers) {
        return numbers.stream().map(GrainTableDocument::digits).toList();
    }

    /** Five digits: a hundredth of what the table promises, through the steepest law that has one. */
    private static double digits(double value) {
        return new BigDecimal(value).round(new MathContext(5)).doubleValue();
    }

    private static List<Integer> tenThousandths(List<Double> logarithms) {
        return logarithms.stream()
                .map(each -> (int) StrictMath.rint(10_000 * each))
                .toList();
    }
}
