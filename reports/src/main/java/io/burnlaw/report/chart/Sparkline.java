package io.burnlaw.report.chart;

import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Firing.TraceHistory;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;

/** A trace small enough for a cell of a table. Firings of one table share the pressure axis, so that heights compare. */
public final class Sparkline {

    private static final double WIDTH = 120;
    private static final double HEIGHT = 30;
    private static final int COLUMNS = 60;

    private Sparkline() {}

    /**
     * Draws it.
     *
     * @param highest pressure of the table, MPa
     * @return an svg element that is hidden from screen readers, since the row has its numbers; empty text where there
     *         is no trace
     */
    public static String draw(Firing firing, double highest) {
        return draw(firing, 0, highest);
    }

    /**
     * Draws one whose pressure hardly changes, on an axis of its own.
     *
     * @return an svg element as {@link #draw(Firing, double)} gives it
     */
    public static String draw(Firing firing) {
        TraceHistory history = firing.traceHistory();
        if (history == null || history.pressure().isEmpty()) {
            return "";
        }
        double low = Collections.min(history.pressure());
        double high = Collections.max(history.pressure());
        return draw(firing, low - 0.05 * (high - low), high);
    }

    private static String draw(Firing firing, double lowest, double highest) {
        TraceHistory history = firing.traceHistory();
        if (history == null || history.pressure().size() < 2 || !(highest > lowest)) {
            return "";
        }
        List<Double> time = history.time();
        int samples = Math.min(time.size(), history.pressure().size());
        double first = time.get(0);
        double span = time.get(samples - 1) - first;
        if (!(span > 0)) {
            return "";
        }
        // the highest sample of each column is kept: a thinned line must not lose its peak
        double[] columns = new double[COLUMNS];
        boolean[] filled = new boolean[COLUMNS];
        for (int i = 0; i < samples; i++) {
            int column = (int) Math.max(0, Math.min(COLUMNS - 1.0, COLUMNS * (time.get(i) - first) / span));
            double pressure = history.pressure().get(i);
            columns[column] = filled[column] ? Math.max(columns[column], pressure) : pressure;
            filled[column] = true;
        }
        StringBuilder path = new StringBuilder();
        for (int i = 0; i < COLUMNS; i++) {
            if (filled[i]) {
                double share = Math.max(0, Math.min(1, (columns[i] - lowest) / (highest - lowest)));
                path.append(path.length() == 0 ? 'M' : 'L');
                Svg.number(path, WIDTH * (i + 0.5) / COLUMNS);
                path.append(' ');
                Svg.number(path, HEIGHT - 1.5 - (HEIGHT - 4) * share);
            }
        }
        return "<svg class=\"spark\" viewBox=\"0 0 " + Svg.number(WIDTH) + " " + Svg.number(HEIGHT) + "\" width=\""
                + Svg.number(WIDTH) + "\" height=\"" + Svg.number(HEIGHT) + "\" aria-hidden=\"true\">"
                + new Svg().line(0, HEIGHT - 1, WIDTH, HEIGHT - 1, Ink.GRID, "") + "<path d=\"" + path
                + "\" fill=\"none\" " + Svg.stroke(Ink.S1) + " stroke-width=\"1.4\"/></svg>";
    }

    /** {@return the pressure axis that the small traces of a table share: the highest absolute pressure drawn, MPa} */
    public static double highest(List<Firing> firings) {
        OptionalDouble highest = firings.stream()
                .filter(firing -> firing.traceHistory() != null)
                .flatMap(firing -> firing.traceHistory().pressure().stream())
                .mapToDouble(Double::doubleValue)
                .max();
        return highest.orElse(0);
    }
}
