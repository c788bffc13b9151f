package io.burnlaw.report.chart;

import io.burnlaw.report.document.Comparison;
import io.burnlaw.report.document.Comparison.RatioPoint;
import io.burnlaw.report.wording.Numbers;
import java.util.List;
import java.util.Optional;

/** Rate of a candidate over rate of its baseline, over the pressures that both share, with its simultaneous band. */
public final class RatioChart {

    private RatioChart() {}

    /**
     * Draws it.
     *
     * @param all comparisons of the document, which share the axis of the ratio
     * @param scales axes of the document, of which the pressure is used
     * @return the picture; empty where there is no ratio
     */
    public static Optional<Figure> draw(Comparison comparison, List<Comparison> all, Scales scales) {
        List<RatioPoint> ratio = comparison.ratio();
        if (ratio.size() < 2) {
            return Optional.empty();
        }
        double low = 1;
        double high = 1;
        for (Comparison each : all) {
            for (RatioPoint point : each.ratio()) {
                low = Math.min(low, point.low());
                high = Math.max(high, point.high());
            }
        }
        Axis y = Axis.linear("rate over baseline's rate", low, high, 0.12);
        Picture picture = new Picture(Frame.SHEET.lower(0.62), scales.pressure(), y);
        picture.hatch(scales.pressure().low(), ratio.get(0).pressure());
        picture.hatch(ratio.get(ratio.size() - 1).pressure(), scales.pressure().high());
        picture.ground().line(0, picture.py(1), picture.width(), picture.py(1), Ink.TEXT, " stroke-width=\"1.4\"");
        List<Mark.At> upper =
                ratio.stream().map(p -> new Mark.At(p.pressure(), p.high())).toList();
        List<Mark.At> lower =
                ratio.stream().map(p -> new Mark.At(p.pressure(), p.low())).toList();
        List<Mark.At> middle =
                ratio.stream().map(p -> new Mark.At(p.pressure(), p.value())).toList();
        picture.mark(new Mark.Band(upper, lower, 0.25, Ink.S1), "band");
        picture.mark(Mark.Lines.one(middle, 2.2, Mark.Dash.SOLID, Ink.S1), "ratio");
        int step = Math.max(1, ratio.size() / 12);
        for (int i = 0; i < ratio.size(); i += step) {
            RatioPoint point = ratio.get(i);
            picture.hit(point.pressure(), point.value(), words(point));
        }
        return Optional.of(picture.done("Rate of " + comparison.candidate() + " over rate of " + comparison.baseline()
                + " over absolute pressure. " + comparison.verdict()));
    }

    private static String words(RatioPoint point) {
        return "at " + Numbers.number(point.pressure(), 3) + " MPa: " + Numbers.number(point.value(), 3) + " ("
                + Numbers.number(point.low(), 3) + " to " + Numbers.number(point.high(), 3) + ")";
    }
}
