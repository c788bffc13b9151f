package io.burnlaw.report.chart;

import static io.burnlaw.report.document.Unit.MPA;

import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.wording.Numbers;
import java.util.List;
import java.util.Optional;

/** Studentized residuals over pressure: what the law leaves. Nine in ten should lie between the dashed lines. */
public final class ResidualChart {

    /** Beyond this a residual is rare enough to be named. */
    private static final double NAMED = 2;

    private ResidualChart() {}

    /**
     * Draws it.
     *
     * @param formulation whose residuals
     * @param scales axes of the document, of which the pressure is used
     * @param frame sheet
     * @return the picture; empty where no point has a residual
     */
    public static Optional<Figure> draw(Formulation formulation, Scales scales, Frame frame) {
        List<Point> points = formulation.points().stream()
                .filter(point -> point.used() && point.standardizedResidual() != null)
                .toList();
        if (points.isEmpty()) {
            return Optional.empty();
        }
        double most = points.stream()
                .mapToDouble(ResidualChart::residual)
                .map(Math::abs)
                .max()
                .orElse(0);
        double end = Math.max(2.6, most * 1.15);
        Axis y = new Axis("studentized residual", -end, end, false);
        Picture picture = new Picture(frame.plain().lower(0.55), scales.pressure(), y);
        for (double level : new double[] {-NAMED, 0, NAMED}) {
            picture.ground()
                    .line(
                            0,
                            picture.py(level),
                            picture.width(),
                            picture.py(level),
                            level == 0 ? Ink.TEXT : Ink.MUTED,
                            level == 0 ? "" : Picture.dashes(Mark.Dash.DASHED));
        }
        List<Mark.Spot> spots = points.stream()
                .map(point -> Mark.Spot.of(MPA.value(point.pressure()), residual(point)))
                .toList();
        picture.mark(new Mark.Points(spots, Mark.Form.CIRCLE, false, 9, Ink.S1));
        for (Point point : points) {
            double p = MPA.value(point.pressure());
            picture.hit(p, residual(point), point.id() + ": residual " + Numbers.number(residual(point), 2));
            if (Math.abs(residual(point)) > NAMED) {
                boolean right = picture.px(p) < picture.width() * 0.7;
                picture.over()
                        .rimmed(
                                picture.px(p) + (right ? 9 : -9),
                                picture.py(residual(point)) + 4,
                                right ? "start" : "end",
                                Ink.TEXT,
                                point.id());
            }
        }
        long beyond = spots.stream().filter(spot -> Math.abs(spot.y()) > NAMED).count();
        return Optional.of(picture.done("Studentized residuals of " + points.size() + " points of "
                + formulation.title() + " over pressure; " + beyond + " beyond plus or minus 2."));
    }

    private static double residual(Point point) {
        Double residual = point.standardizedResidual();
        return residual == null ? 0 : residual;
    }
}
