package io.burnlaw.report.chart;

import static io.burnlaw.report.document.Unit.MPA;
import static io.burnlaw.report.document.Unit.SECOND;

import io.burnlaw.report.document.Closure;
import io.burnlaw.report.document.Closure.ClosureRow;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.document.Unit;
import io.burnlaw.report.wording.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Predicted minus measured for each firing, by a law that was fitted without it, in percent, over mean pressure. */
public final class ClosureChart {

    private ClosureChart() {}

    /**
     * Draws it.
     *
     * @param scales axes of the document, of which the pressure is used
     * @return the picture; empty where there is no row
     */
    public static Optional<Figure> draw(Closure closure, Scales scales) {
        List<ClosureRow> rows = closure.rows();
        if (rows.isEmpty()) {
            return Optional.empty();
        }
        double most = 2;
        for (ClosureRow row : rows) {
            most = Math.max(most, Math.abs(error(MPA, row.maxPressurePredicted(), row.maxPressureMeasured())));
            most = Math.max(most, Math.abs(error(MPA, row.meanPressurePredicted(), row.meanPressureMeasured())));
            most = Math.max(most, Math.abs(error(SECOND, row.burnTimePredicted(), row.burnTimeMeasured())));
        }
        Axis y = new Axis("predicted minus measured, %", -1.15 * most, 1.15 * most, false);
        Picture picture = new Picture(Frame.SHEET.lower(0.62), scales.pressure(), y);
        picture.ground().line(0, picture.py(0), picture.width(), picture.py(0), Ink.TEXT, " stroke-width=\"1.4\"");
        series(
                picture,
                rows,
                "highest pressure",
                Mark.Form.TRIANGLE,
                Ink.S2,
                row -> error(MPA, row.maxPressurePredicted(), row.maxPressureMeasured()));
        series(
                picture,
                rows,
                "mean pressure",
                Mark.Form.CIRCLE,
                Ink.S1,
                row -> error(MPA, row.meanPressurePredicted(), row.meanPressureMeasured()));
        series(
                picture,
                rows,
                "burn time",
                Mark.Form.SQUARE,
                Ink.S3,
                row -> error(SECOND, row.burnTimePredicted(), row.burnTimeMeasured()));
        return Optional.of(picture.done("Predicted minus measured highest pressure, mean pressure and burn time of "
                + rows.size() + " firings, in percent, over mean pressure. " + closure.sentence()));
    }

    /** Relative error in per cent. */
    static double error(Unit unit, Quantity predicted, Quantity measured) {
        return 100 * (unit.value(predicted) / unit.value(measured) - 1);
    }

    private static void series(
            Picture picture,
            List<ClosureRow> rows,
            String words,
            Mark.Form form,
            Ink ink,
            Function<ClosureRow, Double> error) {
        List<Mark.Spot> spots = new ArrayList<>();
        for (ClosureRow row : rows) {
            double p = MPA.value(row.meanPressureMeasured());
            spots.add(Mark.Spot.of(p, error.apply(row)));
            picture.hit(
                    p,
                    error.apply(row),
                    row.firing() + ": " + words + " " + Numbers.number(error.apply(row), 2) + " %");
        }
        picture.mark(new Mark.Points(spots, form, false, 6, ink), words);
    }
}
