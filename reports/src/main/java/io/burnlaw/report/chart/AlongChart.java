package io.burnlaw.report.chart;

import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Law.CurvePoint;
import io.burnlaw.report.document.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The rate along one burn over its pressure, beside the law of all firings. */
public final class AlongChart {

    private AlongChart() {}

    /**
     * Draws it.
     *
     * @param points of the propellant, at least those that came from the firing
     * @param scales axes of the document
     * @return the picture; empty where the rate along the burn is not known
     */
    public static Optional<Figure> draw(Firing firing, Formulation formulation, List<Point> points, Scales scales) {
        List<Mark.At> burn = LawChart.burn(firing.along());
        if (burn.size() < 2) {
            return Optional.empty();
        }
        Picture picture = new Picture(Frame.SHEET.lower(0.8), scales.pressure(), scales.rate());
        List<Law> laws = LawChart.laws(formulation);
        for (int i = 0; i < laws.size(); i++) {
            List<Mark.At> line = new ArrayList<>();
            for (CurvePoint point : laws.get(i).curve()) {
                line.add(new Mark.At(point.pressure(), point.rate()));
            }
            Mark mark = Mark.Lines.one(line, 1.8, Mark.Dash.DASHED, Ink.S2);
            if (i == 0) {
                picture.mark(mark, "law of all firings");
            } else {
                picture.mark(mark);
            }
        }
        picture.mark(Mark.Lines.one(burn, 1.6, Mark.Dash.SOLID, Ink.S1), "along this burn");
        PointMarks.draw(
                picture,
                points.stream()
                        .filter(point -> firing.id().equals(point.firing()))
                        .toList(),
                Ink.S1);
        return Optional.of(picture.done("Burning rate over absolute pressure along the burn of firing " + firing.id()
                + ", with the law of all firings of " + formulation.title() + "."));
    }
}
