package io.burnlaw.report.chart;

import static io.burnlaw.report.document.Unit.MM;
import static io.burnlaw.report.document.Unit.MPA;

import io.burnlaw.report.document.Plan;
import io.burnlaw.report.document.Plan.PlannedThroat;
import io.burnlaw.report.document.Plan.ThroatTable;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.wording.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Pressure over throat diameter: the predictions for each planned throat, with the allowed pressure. */
public final class LadderChart {

    private LadderChart() {}

    /** {@return the picture; empty where no throat is planned} */
    public static Optional<Figure> draw(Plan plan) {
        List<PlannedThroat> throats = plan.ladder();
        if (throats.isEmpty()) {
            return Optional.empty();
        }
        Double limit = plan.allowedPressure() == null ? null : MPA.value(plan.allowedPressure());
        Picture picture = new Picture(Frame.SHEET.lower(0.85), diameter(plan), pressure(throats, limit));
        if (limit != null && picture.py(limit) > 0) {
            picture.ground().rect(0, 0, picture.width(), picture.py(limit), Ink.S2, 0.12);
            picture.over()
                    .line(0, picture.py(limit), picture.width(), picture.py(limit), Ink.S2, " stroke-width=\"1.8\"");
        }
        if (plan.slowRegimeThroat() != null) {
            picture.mark(
                    MM.value(plan.slowRegimeThroat()),
                    "slow regime above " + Numbers.stated(plan.slowRegimeThroat()),
                    Ink.TEXT,
                    Mark.Dash.DASHED);
        }
        if (limit != null && picture.py(limit) > 0) {
            picture.over()
                    .rimmed(
                            picture.width() - 6,
                            picture.py(limit) - 6,
                            "end",
                            Ink.TEXT,
                            "not allowed above " + Numbers.stated(plan.allowedPressure()));
        }
        curves(picture, plan.throatTable());
        points(picture, throats, Ink.S1, Mark.Form.CIRCLE, "mean over the burn", false);
        points(picture, throats, Ink.S2, Mark.Form.TRIANGLE, "highest over the burn", true);
        others(picture, throats);
        return Optional.of(picture.done("Predicted absolute pressure over throat diameter for " + throats.size()
                + " throats. " + plan.sentence() + " The numbers are in the table below."));
    }

    private static void curves(Picture picture, @Nullable ThroatTable table) {
        if (table == null) {
            return;
        }
        picture.mark(new Mark.Band(
                TraceChart.line(table.throat(), table.maxHigh()),
                TraceChart.line(table.throat(), table.maxLow()),
                0.15,
                Ink.S2));
        picture.mark(new Mark.Band(
                TraceChart.line(table.throat(), table.meanHigh()),
                TraceChart.line(table.throat(), table.meanLow()),
                0.15,
                Ink.S1));
        picture.mark(Mark.Lines.one(TraceChart.line(table.throat(), table.max()), 1.4, Mark.Dash.SOLID, Ink.S2));
        picture.mark(Mark.Lines.one(TraceChart.line(table.throat(), table.mean()), 1.4, Mark.Dash.SOLID, Ink.S1));
    }

    private static Axis diameter(Plan plan) {
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        for (PlannedThroat throat : plan.ladder()) {
            low = Math.min(low, MM.value(throat.throatDiameter()));
            high = Math.max(high, MM.value(throat.throatDiameter()));
        }
        if (plan.slowRegimeThroat() != null) {
            double slow = MM.value(plan.slowRegimeThroat());
            // a boundary far away would squeeze the ladder into a corner
            high = slow < high + (high - low) ? Math.max(high, slow) : high;
        }
        ThroatTable table = plan.throatTable();
        if (table != null) {
            low = Math.min(low, table.throat().get(0));
            high = Math.max(high, table.throat().get(table.throat().size() - 1));
        }
        return Axis.linear("throat diameter, mm", low, high, high > low ? 0.08 : 0.2);
    }

    private static Axis pressure(List<PlannedThroat> throats, @Nullable Double limit) {
        double high = limit == null ? 0 : limit;
        for (PlannedThroat throat : throats) {
            high = Math.max(high, Math.max(MPA.value(throat.maxPressure()), MPA.value(throat.equilibriumPressure())));
        }
        // upper predictions beyond any bearing are cut: their bars end at the edge
        return new Axis(Scales.PRESSURE_TITLE, 0, high * 1.25, false);
    }

    private static void points(
            Picture picture, List<PlannedThroat> throats, Ink ink, Mark.Form form, String words, boolean highest) {
        List<Mark.Spot> spots = new ArrayList<>();
        for (PlannedThroat throat : throats) {
            Quantity pressure = highest ? throat.maxPressure() : throat.equilibriumPressure();
            double d = MM.value(throat.throatDiameter());
            double p = MPA.value(pressure);
            Double low = MPA.low(pressure);
            Double high = MPA.high(pressure);
            spots.add(new Mark.Spot(d, p, d, d, low == null ? p : low, high == null ? p : high));
            picture.hit(
                    d,
                    p,
                    Numbers.stated(throat.throatDiameter()) + ": " + words + " " + Numbers.of(pressure)
                            + (throat.allowed() ? "" : ", not allowed"));
        }
        picture.mark(new Mark.Points(spots, form, false, 6, ink), words);
    }

    private static void others(Picture picture, List<PlannedThroat> throats) {
        List<Mark.Spot> spots = new ArrayList<>();
        for (PlannedThroat throat : throats) {
            for (double other : throat.otherEquilibria()) {
                spots.add(Mark.Spot.of(MM.value(throat.throatDiameter()), other));
            }
        }
        if (!spots.isEmpty()) {
            picture.mark(new Mark.Points(spots, Mark.Form.CIRCLE, true, 6, Ink.S1), "another equilibrium");
        }
    }
}
