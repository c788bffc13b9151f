package io.burnlaw.report.chart;

import static io.burnlaw.report.document.Unit.MPA;

import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Regimes.Break;
import io.burnlaw.report.wording.Numbers;
import java.util.List;
import java.util.Optional;

/** Residuals from the law, in percent, over pressure; about nineteen points in twenty should be in the shaded band. */
public final class ResidualChart {

    private ResidualChart() {}

    /**
     * Draws it.
     *
     * @param scales axes of the document, of which the pressure is used
     * @return the picture; empty where no point has a law
     */
    public static Optional<Figure> draw(Formulation formulation, Scales scales) {
        List<PointOffLaw> points = formulation.points().stream()
                .flatMap(point -> OffLaw.of(point, formulation).map(off -> new PointOffLaw(point, off)).stream())
                .toList();
        if (points.isEmpty()) {
            return Optional.empty();
        }
        double most = points.stream()
                .map(PointOffLaw::off)
                .mapToDouble(off -> Math.max(Math.abs(off.share()), 1.3 * OffLaw.NAMED * off.scatter()))
                .max()
                .orElse(0);
        double end = Math.max(115 * most, 0.1);
        Axis y = new Axis("measured rate minus law, % of the law", -end, end, false);
        Picture picture = new Picture(Frame.SHEET.lower(0.55), scales.pressure(), y);
        shade(picture, formulation);
        picture.ground().line(0, picture.py(0), picture.width(), picture.py(0), Ink.TEXT, "");
        List<Mark.Spot> spots = points.stream()
                .map(each -> Mark.Spot.of(
                        MPA.value(each.point().pressure()), 100 * each.off().share()))
                .toList();
        picture.mark(new Mark.Points(spots, Mark.Form.CIRCLE, false, 6, Ink.S1));
        points.forEach(each -> words(picture, each.point(), each.off()));
        long beyond =
                points.stream().map(PointOffLaw::off).filter(OffLaw::named).count();
        return Optional.of(picture.done("How far " + points.size() + " points of " + formulation.title()
                + " are off the law, in percent, over pressure; " + beyond + " beyond two standard deviations."));
    }

    private record PointOffLaw(Point point, OffLaw off) {}

    /** Two standard deviations to each side, over the range of each law. */
    private static void shade(Picture picture, Formulation formulation) {
        List<Law> laws = LawChart.laws(formulation);
        for (Law law : laws) {
            double left = Math.max(0, picture.px(MPA.value(law.pressureLow())));
            double right = Math.min(picture.width(), picture.px(MPA.value(law.pressureHigh())));
            double top = picture.py(100 * OffLaw.NAMED * law.residualScatter());
            double foot = picture.py(-100 * OffLaw.NAMED * law.residualScatter());
            if (right > left && foot > top) {
                picture.ground().rect(left, top, right - left, foot - top, Ink.S1, 0.13);
            }
        }
        if (formulation.regimes() != null && laws.size() > 1) {
            for (Break change : formulation.regimes().breaks()) {
                double at = picture.px(MPA.value(change.pressure()));
                picture.ground().line(at, 0, at, picture.height(), Ink.MUTED, Picture.dashes(Mark.Dash.DASHED));
            }
        }
    }

    private static void words(Picture picture, Point point, OffLaw off) {
        double p = MPA.value(point.pressure());
        double y = 100 * off.share();
        picture.hit(p, y, point.id() + ": " + Numbers.percent(off.share(), 2) + " off the law");
        if (off.named()) {
            boolean right = picture.px(p) < picture.width() * 0.7;
            picture.over()
                    .rimmed(
                            picture.px(p) + (right ? 9 : -9),
                            picture.py(y) + 4,
                            right ? "start" : "end",
                            Ink.TEXT,
                            point.id());
        }
    }
}
