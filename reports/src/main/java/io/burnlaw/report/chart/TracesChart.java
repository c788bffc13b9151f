package io.burnlaw.report.chart;

import static io.burnlaw.report.document.Unit.MM;
import static io.burnlaw.report.document.Unit.SECOND;

import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Firing.Events;
import io.burnlaw.report.document.Firing.TraceHistory;
import io.burnlaw.report.document.Formulation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** The overlaid traces of a propellant, each from its ignition on. */
public final class TracesChart {

    /** More cannot be told apart, and weigh on the page. */
    private static final int MOST = 60;

    /** A bend smaller than this cannot be seen, in units of the sheet. */
    private static final double SEEN = 0.5;

    /** The whole web, in which its course is given. */
    private static final int WEB = 1000;

    /** Five places that span more are a rise or a fall, in units of the sheet. */
    private static final double STEEP = 4;

    /**
     * A picture and what is on it.
     *
     * @param firings ids, in the order of the lines
     * @param webs    how far each of them has burned, for another horizontal axis: places on this one in tenths of a unit of
     *                the sheet, each followed by the web burned there in thousandths of the whole, from the second pair on as
     *                differences; between two places the web is linear, and beyond the first and the last it is not known
     */
    public record Drawn(Figure figure, List<String> firings, List<List<Integer>> webs) {
        public Drawn {
            firings = List.copyOf(firings);
            webs = List.copyOf(webs);
        }
    }

    private record Line(Firing firing, List<Mark.At> places) {}

    private TracesChart() {}

    /**
     * Draws it.
     *
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
                lines.add(new Line(firing, places));
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
                .map(line -> Simplified.of(quiet(line.places(), picture), SEEN, at -> on(picture, at)))
                .toList();
        picture.mark(new Mark.Lines(drawn, 1.2, Mark.Dash.SOLID, Ink.S1));
        return Optional.of(new Drawn(
                picture.done("Absolute pressure over time since ignition of " + lines.size() + " firings of "
                        + formulation.title() + "; each has its own page."),
                lines.stream().map(line -> line.firing().id()).toList(),
                lines.stream().map(line -> web(line.firing(), picture)).toList()));
    }

    /** As the reduction has it along the burn: after the ignition transient, up to the first burn-through. */
    private static List<Integer> web(Firing firing, Picture picture) {
        if (firing.along().size() < 2 || firing.web() == null || firing.events() == null) {
            return List.of();
        }
        double zero = SECOND.value(firing.events().ignition());
        double whole = MM.value(firing.web());
        List<Mark.At> course = firing.along().stream()
                .map(at -> new Mark.At(picture.px(at.time() - zero), WEB * at.web() / whole))
                .toList();
        List<Integer> numbers = new ArrayList<>();
        long x = 0;
        long y = 0;
        for (Mark.At at : Simplified.of(course, SEEN, UnaryOperator.identity())) {
            numbers.add((int) (Math.round(10 * at.x()) - x));
            numbers.add((int) (Math.round(at.y()) - y));
            x = Math.round(10 * at.x());
            y = Math.round(at.y());
        }
        return numbers;
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

    private static Mark.At on(Picture picture, Mark.At at) {
        return new Mark.At(picture.px(at.x()), picture.py(at.y()));
    }
}
