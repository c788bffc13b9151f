package io.burnlaw.report.chart;

import static io.burnlaw.report.document.Unit.MM_PER_S;
import static io.burnlaw.report.document.Unit.MPA;

import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.document.Unit;
import io.burnlaw.report.wording.Numbers;
import java.util.List;
import java.util.function.Predicate;

/** Rate-pressure points as marks: the form tells where a point comes from, a hollow one is of lower grade. */
final class PointMarks {

    private static final List<String> SOURCES = List.of("firing", "timed", "dwell", "strand", "point");
    private static final List<String> WORDS =
            List.of("firing", "timed firing", "dwell of a firing", "strand", "direct point");
    private static final List<Mark.Form> FORMS =
            List.of(Mark.Form.CIRCLE, Mark.Form.TRIANGLE_DOWN, Mark.Form.SQUARE, Mark.Form.TRIANGLE, Mark.Form.DIAMOND);

    /** Bars and marks of more points than these would hide the law and one another. */
    private static final int FEW = 40;

    private PointMarks() {}

    /**
     * Whether there are so many points that they are drawn as dots without bars, under the law.
     *
     * @return for more than {@value #FEW}
     */
    static boolean crowded(List<Point> points) {
        return points.size() > FEW;
    }

    static void draw(Picture picture, List<Point> points, Ink ink) {
        for (int i = 0; i < SOURCES.size(); i++) {
            String source = SOURCES.get(i);
            kind(
                    picture,
                    points,
                    p -> p.used() && !p.lowerGrade() && p.source().equals(source),
                    FORMS.get(i),
                    false,
                    ink,
                    WORDS.get(i));
            kind(
                    picture,
                    points,
                    p -> p.used() && p.lowerGrade() && p.source().equals(source),
                    FORMS.get(i),
                    true,
                    ink,
                    WORDS.get(i) + ", lower grade (hollow)");
        }
        kind(picture, points, p -> !p.used(), Mark.Form.CROSS, false, Ink.MUTED, "not used in the fit");
        for (Point point : points) {
            double p = MPA.value(point.pressure());
            double r = MM_PER_S.value(point.rate());
            picture.hit(p, r, point.id(), words(point));
        }
    }

    private static String words(Point point) {
        return point.id() + ": " + Numbers.of(point.rate()) + " at " + Numbers.of(point.pressure())
                + (point.used() ? "" : ", not used");
    }

    private static void kind(
            Picture picture,
            List<Point> points,
            Predicate<Point> which,
            Mark.Form form,
            boolean hollow,
            Ink ink,
            String words) {
        boolean crowded = crowded(points);
        List<Mark.Spot> spots = points.stream()
                .filter(which)
                .map(crowded ? PointMarks::dot : PointMarks::spot)
                .toList();
        if (spots.stream().anyMatch(picture::shows)) {
            picture.mark(new Mark.Points(spots, form, hollow, crowded ? 3 : 6, ink), words);
        }
    }

    private static Mark.Spot dot(Point point) {
        return Mark.Spot.of(MPA.value(point.pressure()), MM_PER_S.value(point.rate()));
    }

    private static Mark.Spot spot(Point point) {
        double p = MPA.value(point.pressure());
        double r = MM_PER_S.value(point.rate());
        return new Mark.Spot(
                p,
                r,
                end(MPA, point.pressure(), -1),
                end(MPA, point.pressure(), 1),
                end(MM_PER_S, point.rate(), -1),
                end(MM_PER_S, point.rate(), 1));
    }

    /** An end of the bar: of the interval where there is one, else two standard uncertainties away; side 0: the value. */
    static double end(Unit unit, Quantity quantity, int side) {
        Double given = side < 0 ? unit.low(quantity) : unit.high(quantity);
        Double std = unit.std(quantity);
        double value = unit.value(quantity);
        return side == 0 ? value : given != null ? given : std != null ? value + side * 2 * std : value;
    }
}
