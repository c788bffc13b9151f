package io.burnlaw.report.chart;

import static io.burnlaw.report.document.Unit.SECOND;

import io.burnlaw.report.document.Events;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.TraceHistory;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The traces of a propellant one over the other, each from its ignition on. */
public final class TracesChart {

    /** More cannot be told apart, and weigh on the page. */
    private static final int MOST = 60;

    /** A bend smaller than this cannot be seen, in units of the sheet. */
    private static final double SEEN = 0.5;

    /** Five places that span more are a rise or a fall, in units of the sheet. */
    private static final double STEEP = 4;

    /**
     * A picture and what is on it.
     *
     * @param figure the picture
     * @param firings ids, in the order of the lines
     */
    public record Drawn(Figure figure, List<String> firings) {
        public Drawn {
            firings = List.copyOf(firings);
        }
    }

    private record Line(String firing, List<Mark.At> places) {}

    private TracesChart() {}

    /**
     * Draws it.
     *
     * @param formulation whose firings
     * @param firings of it, with their traces
     * @return the picture; empty where fewer than two traces have events
     */
    public static Optional<Drawn> draw(Formulation formulation, List<Firing> firings) {
        int step = Math.max(1, (firings.size() + MOST - 1) / MOST);
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < firings.size(); i += step) {
            Firing firing = firings.get(i);
            List<Mark.At> places = places(firing);
            if (places.size() > 1) {
                lines.add(new Line(firing.id(), places));
            }
        }
        if (lines.size() < 2) {
            return Optional.empty();
        }
        double last = 0;
        double high = 0;
        for (Line line : lines) {
            for (Mark.At at : line.places()) {
                last = Math.max(last, at.x());
                high = Math.max(high, at.y());
            }
        }
        if (!(last > 0 && high > 0)) {
            return Optional.empty();
        }
        Axis time = new Axis("time since ignition, s", -0.05 * last, 1.02 * last, false);
        Picture picture =
                new Picture(Frame.SHEET.lower(0.85), time, new Axis(Scales.PRESSURE_TITLE, 0, 1.06 * high, false));
        List<List<Mark.At>> drawn = lines.stream()
                .map(line -> simplified(quiet(line.places(), picture), picture))
                .toList();
        picture.mark(new Mark.Lines(drawn, 1.2, Mark.Dash.SOLID, Ink.S1));
        return Optional.of(new Drawn(
                picture.done("Absolute pressure over time since ignition of " + lines.size() + " firings of "
                        + formulation.title() + "; each has a page of its own."),
                lines.stream().map(Line::firing).toList()));
    }

    private static List<Mark.At> places(Firing firing) {
        TraceHistory history = firing.traceHistory();
        Events events = firing.events();
        if (history == null || events == null) {
            return List.of();
        }
        double zero = SECOND.value(events.ignition());
        double from = Math.min(SECOND.value(events.start()), zero);
        double span = SECOND.value(events.end()) - from;
        return TraceChart.line(history.time(), history.pressure()).stream()
                .filter(at -> at.x() >= from - 0.05 * span && at.x() <= from + 1.05 * span)
                .map(at -> new Mark.At(at.x() - zero, at.y()))
                .toList();
    }

    /** The mean of five places in a row where the pressure hardly moves: noise would be most of the bytes. */
    private static List<Mark.At> quiet(List<Mark.At> line, Picture picture) {
        List<Mark.At> quiet = new ArrayList<>(line);
        for (int i = 2; i < line.size() - 2; i++) {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            double sum = 0;
            for (int k = i - 2; k <= i + 2; k++) {
                low = Math.min(low, line.get(k).y());
                high = Math.max(high, line.get(k).y());
                sum += line.get(k).y();
            }
            if (picture.py(low) - picture.py(high) < STEEP) {
                quiet.set(i, new Mark.At(line.get(i).x(), sum / 5));
            }
        }
        return quiet;
    }

    /** Without the places that are off the straight way between two others by less than can be seen (Douglas and Peucker 1973). */
    private static List<Mark.At> simplified(List<Mark.At> line, Picture picture) {
        boolean[] kept = new boolean[line.size()];
        kept[0] = true;
        kept[line.size() - 1] = true;
        keep(line, picture, 0, line.size() - 1, kept);
        List<Mark.At> left = new ArrayList<>();
        for (int i = 0; i < kept.length; i++) {
            if (kept[i]) {
                left.add(line.get(i));
            }
        }
        return left;
    }

    private static void keep(List<Mark.At> line, Picture picture, int from, int to, boolean[] kept) {
        double x0 = picture.px(line.get(from).x());
        double y0 = picture.py(line.get(from).y());
        double dx = picture.px(line.get(to).x()) - x0;
        double dy = picture.py(line.get(to).y()) - y0;
        double length = Math.hypot(dx, dy);
        int farthest = -1;
        double most = SEEN;
        for (int i = from + 1; i < to; i++) {
            double x = picture.px(line.get(i).x()) - x0;
            double y = picture.py(line.get(i).y()) - y0;
            double off = length > 0 ? Math.abs(dx * y - dy * x) / length : Math.hypot(x, y);
            if (off > most) {
                most = off;
                farthest = i;
            }
        }
        if (farthest > 0) {
            kept[farthest] = true;
            keep(line, picture, from, farthest, kept);
            keep(line, picture, farthest, to, kept);
        }
    }
}
