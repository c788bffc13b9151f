package io.burnlaw.report.chart;

import static io.burnlaw.report.document.Unit.MM_PER_S;
import static io.burnlaw.report.document.Unit.MPA;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Law.CurvePoint;
import io.burnlaw.report.document.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** All propellants of a campaign in one picture, each with its own colour, point form and dash. */
public final class OverviewChart {

    private static final Mark.Form[] FORMS = {
        Mark.Form.CIRCLE, Mark.Form.TRIANGLE, Mark.Form.SQUARE, Mark.Form.DIAMOND, Mark.Form.TRIANGLE_DOWN
    };
    private static final Mark.Dash[] DASHES = {Mark.Dash.SOLID, Mark.Dash.DASHED, Mark.Dash.DOTTED};

    private OverviewChart() {}

    /** {@return the picture; empty where fewer than two propellants have points} */
    public static Optional<Figure> draw(Characterization document, Scales scales) {
        List<Formulation> shown = document.formulations().stream()
                .filter(formulation -> !formulation.points().isEmpty())
                .toList();
        if (shown.size() < 2) {
            return Optional.empty();
        }
        Picture picture = new Picture(Frame.SHEET, scales.pressure(), scales.rate());
        for (int i = 0; i < shown.size(); i++) {
            // numbered as in the list beside the picture, which has those without points as well
            one(picture, shown.get(i), i, 1 + document.formulations().indexOf(shown.get(i)));
        }
        return Optional.of(picture.done("Burning rate over absolute pressure, both logarithmic, of "
                + shown.size() + " propellants: "
                + String.join(", ", shown.stream().map(Formulation::title).toList()) + "."));
    }

    private static void one(Picture picture, Formulation formulation, int number, int place) {
        Ink ink = Ink.series(number);
        Mark.Dash dash = DASHES[number % DASHES.length];
        Mark.At end = null;
        for (Law law : LawChart.laws(formulation)) {
            List<Mark.At> line = new ArrayList<>();
            for (CurvePoint point : law.curve()) {
                line.add(new Mark.At(point.pressure(), point.rate()));
            }
            picture.mark(Mark.Lines.one(line, 2, dash, ink));
            end = line.isEmpty() ? end : line.get(line.size() - 1);
        }
        List<Mark.Spot> spots = new ArrayList<>();
        for (Point point : formulation.points()) {
            if (point.used()) {
                double p = MPA.value(point.pressure());
                double r = MM_PER_S.value(point.rate());
                spots.add(Mark.Spot.of(p, r));
                picture.hit(p, r, formulation.id() + ", " + point.id());
            }
        }
        Mark points = new Mark.Points(spots, FORMS[number % FORMS.length], false, 6, ink);
        String words = place + " " + formulation.id();
        picture.mark(points, words);
        if (end != null) {
            picture.over().rimmed(picture.px(end.x()) + 3, picture.py(end.y()) - 3, "start", Ink.TEXT, "" + place);
        }
    }
}
