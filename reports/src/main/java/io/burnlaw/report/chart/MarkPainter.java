package io.burnlaw.report.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.util.List;
import java.util.Locale;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;

/**
 * Has XChart paint marks into SVG, and nothing but marks: it draws words as outlines of glyphs, which nobody can search
 * or have read out, and which differ by the fonts of the machine. The marks fill the sheet edge to edge, so that a place
 * on an axis is its share of the sheet, and no font is asked for.
 */
final class MarkPainter {

    /** A bend smaller than this cannot be seen, in units of the sheet. */
    private static final double SEEN = 0.05;

    private final Axis x;
    private final Axis y;
    private final int width;
    private final int height;
    private final MarkSheet sheet;

    MarkPainter(Axis x, Axis y, double width, double height) {
        this.x = x;
        this.y = y;
        this.width = (int) width;
        this.height = (int) height;
        this.sheet = new MarkSheet(x, y, this.width, this.height);
    }

    /** The marks as SVG elements, with the plot's upper left corner at 0, 0. */
    String paint(Mark mark) {
        sheet.clear();
        boolean something = mark instanceof Mark.Points points
                ? points(points)
                : mark instanceof Mark.Lines lines ? lines(lines) : band((Mark.Band) mark);
        if (!something) {
            return "";
        }
        MarkGraphics graphics = new MarkGraphics();
        sheet.paint(graphics);
        StringBuilder svg = new StringBuilder(graphics.svg());
        if (mark instanceof Mark.Points points && points.hollow()) {
            hollow(points, svg);
        }
        return svg.toString();
    }

    /** XChart fills its markers; a spot of paper on it makes one hollow. */
    private void hollow(Mark.Points points, StringBuilder svg) {
        for (Mark.Spot spot : points.spots()) {
            if (x.holds(spot.x()) && y.holds(spot.y())) {
                svg.append("<circle cx=\"")
                        .append(Svg.number(x.share(spot.x()) * width))
                        .append("\" cy=\"")
                        .append(Svg.number((1 - y.share(spot.y())) * height))
                        .append("\" r=\"")
                        .append(Svg.number(points.size() * 0.27))
                        .append("\" ")
                        .append(Svg.fill(Ink.PAPER))
                        .append("/>");
            }
        }
    }

    private boolean points(Mark.Points points) {
        List<Mark.Spot> spots = points.spots().stream()
                .filter(spot -> x.holds(spot.x()) && y.holds(spot.y()))
                .toList();
        if (spots.isEmpty()) {
            return false;
        }
        sheet.getStyler().setMarkerSize((int) points.size());
        // bars first, so that points lie on them; XChart has bars in y only and of equal length to both sides
        int number = 0;
        for (Mark.Spot spot : spots) {
            number = bar(number, spot.xLow(), spot.y(), spot.xHigh(), spot.y(), points.ink());
            number = bar(number, spot.x(), spot.yLow(), spot.x(), spot.yHigh(), points.ink());
        }
        XYSeries series = sheet.addSeries(
                "points",
                spots.stream().mapToDouble(Mark.Spot::x).toArray(),
                spots.stream().mapToDouble(Mark.Spot::y).toArray());
        series.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.Scatter);
        series.setMarker(marker(points.form()));
        series.setMarkerColor(points.ink().standIn(255));
        series.setLineColor(points.ink().standIn(255));
        return true;
    }

    private int bar(int number, double x1, double y1, double x2, double y2, Ink ink) {
        if (x1 == x2 && y1 == y2) {
            return number;
        }
        // the foot of a bar may lie below zero, which a logarithmic axis cannot show: the bar ends at the edge
        line(
                "bar " + number,
                new double[] {inside(x, x1), inside(x, x2)},
                new double[] {inside(y, y1), inside(y, y2)},
                1.4,
                Mark.Dash.SOLID,
                ink);
        return number + 1;
    }

    private static double inside(Axis axis, double value) {
        return Math.min(Math.max(value, axis.low()), axis.high());
    }

    private boolean lines(Mark.Lines lines) {
        int number = 0;
        for (List<Mark.At> line : lines.lines()) {
            List<Mark.At> shown = shown(line);
            if (shown.size() > 1) {
                line(
                        "line " + number,
                        shown.stream().mapToDouble(Mark.At::x).toArray(),
                        shown.stream().mapToDouble(Mark.At::y).toArray(),
                        lines.width(),
                        lines.dash(),
                        lines.ink());
                number++;
            }
        }
        return number > 0;
    }

    private List<Mark.At> shown(List<Mark.At> line) {
        List<Mark.At> drawable = line.stream().filter(this::drawable).toList();
        return drawable.size() < 3
                ? drawable
                : Simplified.of(
                        drawable, SEEN, at -> new Mark.At(x.share(at.x()) * width, (1 - y.share(at.y())) * height));
    }

    private boolean drawable(Mark.At at) {
        return Double.isFinite(at.x())
                && Double.isFinite(at.y())
                && (!x.logarithmic() || at.x() > 0)
                && (!y.logarithmic() || at.y() > 0);
    }

    private void line(String name, double[] xs, double[] ys, double width, Mark.Dash dash, Ink ink) {
        XYSeries series = sheet.addSeries(name, xs, ys);
        series.setLineColor(ink.standIn(255));
        series.setLineStyle(stroke(width, dash));
    }

    private boolean band(Mark.Band band) {
        List<Mark.At> upper = shown(band.upper());
        List<Mark.At> lower = shown(band.lower());
        if (upper.size() < 2 || lower.size() < 2) {
            return false;
        }
        int points = upper.size() + lower.size();
        double[] xs = new double[points];
        double[] ys = new double[points];
        for (int i = 0; i < points; i++) {
            // forward along the upper edge, back along the lower one
            Mark.At at = i < upper.size() ? upper.get(i) : lower.get(points - 1 - i);
            xs[i] = at.x();
            ys[i] = at.y();
        }
        XYSeries series = sheet.addSeries("band", xs, ys);
        series.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.PolygonArea);
        series.setFillColor(band.ink().standIn((int) Math.round(255 * band.opacity())));
        series.setLineColor(new Color(0, 0, 0, 0));
        return true;
    }

    private static BasicStroke stroke(double width, Mark.Dash dash) {
        float[] pattern = switch (dash) {
            case SOLID -> null;
            case DASHED -> new float[] {7, 4};
            case DOTTED -> new float[] {1.5f, 4};
        };
        return new BasicStroke((float) width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 10, pattern, 0);
    }

    private static Marker marker(Mark.Form form) {
        return switch (form) {
            case CIRCLE -> SeriesMarkers.CIRCLE;
            case SQUARE -> SeriesMarkers.SQUARE;
            case DIAMOND -> SeriesMarkers.DIAMOND;
            case TRIANGLE -> SeriesMarkers.TRIANGLE_UP;
            case TRIANGLE_DOWN -> SeriesMarkers.TRIANGLE_DOWN;
            case CROSS -> SeriesMarkers.CROSS;
        };
    }

    /**
     * A chart of XChart that shows marks and nothing else, edge to edge: its labels, ticks, titles and legend are switched
     * off. Its axes are those of the picture whatever the marks are, so they are laid out once, while there are none; each
     * time it is painted, only the plot is. Left to itself XChart goes over all numbers of a mark six times for ticks that it
     * does not show, three quarters of its time.
     */
    private static final class MarkSheet extends XYChart {

        MarkSheet(Axis x, Axis y, int width, int height) {
            super(width, height);
            XYStyler styler = getStyler();
            styler.setLocale(Locale.ROOT);
            styler.setLegendVisible(false)
                    .setChartTitleVisible(false)
                    .setPlotContentSize(1.0)
                    .setChartPadding(0)
                    .setPlotBorderVisible(false)
                    .setPlotBackgroundColor(new Color(0, 0, 0, 0))
                    .setChartBackgroundColor(new Color(0, 0, 0, 0));
            styler.setAxisTitlesVisible(false);
            styler.setAxisTicksVisible(false);
            styler.setAxisTicksMarksVisible(false);
            styler.setAxisTicksLineVisible(false);
            styler.setPlotGridLinesVisible(false);
            styler.setPlotMargin(0);
            // XChart works ticks out even where it shows none; an axis that is too short for two of them is left alone,
            // and
            // words of one's own spare the making of formats for numbers
            styler.setXAxisTickMarkSpacingHint(Integer.MAX_VALUE);
            styler.setYAxisTickMarkSpacingHint(Integer.MAX_VALUE);
            setCustomXAxisTickLabelsFormatter(tick -> "");
            setCustomYAxisTickLabelsFormatter(tick -> "");
            styler.setXAxisMin(x.low());
            styler.setXAxisMax(x.high());
            styler.setYAxisMin(y.low());
            styler.setYAxisMax(y.high());
            axisPair.paint(new MarkGraphics());
            // after the ticks, whose formats a logarithmic axis would make all the same
            styler.setXAxisLogarithmic(x.logarithmic());
            styler.setYAxisLogarithmic(y.logarithmic());
        }

        /** Takes all marks away. */
        void clear() {
            seriesMap.clear();
        }

        /** Paints the marks, which must have all their colours, strokes and markers: there are no defaults here. */
        void paint(Graphics2D graphics) {
            plot.paint(graphics);
        }
    }
}
