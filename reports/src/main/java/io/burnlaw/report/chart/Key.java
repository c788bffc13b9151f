package io.burnlaw.report.chart;

import java.util.List;

/** The key below a plot: a sample of each mark and its words, in as many rows as the width needs. */
final class Key {

    private static final double ROW = 19;
    private static final double SAMPLE = 26;
    private static final double SHEET = 100;

    private final Svg svg = new Svg();
    private final double height;

    Key(List<Mark.Named> entries, double width) {
        double at = 0;
        double row = 0;
        for (Mark.Named entry : entries) {
            double needed = SAMPLE + 8 + Svg.widthOf(entry.words()) + 14;
            if (at > 0 && at + needed > width) {
                at = 0;
                row++;
            }
            double y = ROW * row + 11;
            sample(entry.mark(), at, y);
            svg.words(at + SAMPLE + 8, y + 4, "start", Ink.TEXT, Svg.cut(entry.words(), width - SAMPLE - 8));
            at += needed;
        }
        height = entries.isEmpty() ? 0 : ROW * (row + 1) + 4;
    }

    double height() {
        return height;
    }

    private void sample(Mark mark, double x, double y) {
        if (mark instanceof Mark.Lines lines) {
            svg.line(
                    x,
                    y,
                    x + SAMPLE,
                    y,
                    lines.ink(),
                    " stroke-width=\"" + Svg.number(lines.width()) + "\"" + Picture.dashes(lines.dash()));
        } else if (mark instanceof Mark.Band band) {
            svg.rect(x, y - 6, SAMPLE, 12, band.ink(), band.opacity());
        } else if (mark instanceof Mark.Points points) {
            // XChart paints nothing on a sheet as small as a sample: the point stands in the middle of a larger one
            Axis sheet = new Axis("", -SHEET / 2, SHEET / 2, false);
            Mark one = new Mark.Points(
                    List.of(Mark.Spot.of(0, 0)), points.form(), points.hollow(), points.size(), points.ink());
            svg.raw("<g transform=\"translate(" + Svg.number(x + SAMPLE / 2 - SHEET / 2) + " "
                    + Svg.number(y - SHEET / 2) + ")\">" + new MarkPainter(sheet, sheet, SHEET, SHEET).paint(one)
                    + "</g>");
        }
    }

    @Override
    public String toString() {
        return svg.toString();
    }
}
