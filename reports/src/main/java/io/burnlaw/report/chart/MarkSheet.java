package io.burnlaw.report.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.util.Locale;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.style.XYStyler;

/**
 * A chart of XChart that shows marks and nothing else, edge to edge: its labels, ticks, titles and legend are switched
 * off. Its axes are those of the picture whatever the marks are, so they are laid out once, while there are none; each
 * time it is painted, only the plot is. Left to itself XChart goes over all numbers of a mark six times for ticks that it
 * does not show, three quarters of its time.
 */
final class MarkSheet extends XYChart {

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
        // XChart works ticks out even where it shows none; an axis that is too short for two of them is left alone, and
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
