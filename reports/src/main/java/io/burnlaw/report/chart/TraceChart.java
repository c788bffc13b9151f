package io.burnlaw.report.chart;

import static io.burnlaw.report.document.Unit.SECOND;

import io.burnlaw.report.document.Finding;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Firing.Events;
import io.burnlaw.report.document.Firing.TimedSpan;
import io.burnlaw.report.document.Firing.TraceHistory;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.wording.Numbers;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The pressure of one firing over time, with its events, its findings, and the prediction of the law. */
public final class TraceChart {

    private TraceChart() {}

    /** {@return the picture; empty where there is no trace to draw} */
    public static Optional<Figure> draw(Firing firing) {
        TraceHistory history = firing.traceHistory();
        boolean thrustOnly = history != null && history.pressure().isEmpty() && history.thrust() != null;
        List<Mark.At> line =
                history == null ? List.of() : line(history.time(), thrustOnly ? history.thrust() : history.pressure());
        if (history == null || line.size() < 2) {
            return Optional.empty();
        }
        List<Mark.At> simulated = history.simulatedTime() == null || history.simulatedPressure() == null
                ? List.of()
                : line(history.simulatedTime(), history.simulatedPressure());
        Picture picture = new Picture(
                Frame.SHEET,
                time(line, firing.events()),
                pressure(
                        line,
                        simulated,
                        "strand".equals(firing.kind()),
                        thrustOnly ? "thrust, N" : Scales.PRESSURE_TITLE));
        picture.mark(Mark.Lines.one(thinned(line, picture.width()), 1.4, Mark.Dash.SOLID, Ink.S1), "measured");
        if (simulated.size() > 1) {
            picture.mark(Mark.Lines.one(simulated, 1.8, Mark.Dash.DASHED, Ink.S2), "predicted from the others");
        }
        events(picture, firing.events());
        timed(picture, firing.timed());
        findings(picture, firing.findings(), line);
        hits(picture, line, thrustOnly ? " N" : " MPa");
        return Optional.of(picture.done(description(firing)));
    }

    private static Axis time(List<Mark.At> line, @Nullable Events events) {
        double first = line.get(0).x();
        double last = line.get(line.size() - 1).x();
        if (events != null) {
            // long quiet stretches before and after say nothing and would squeeze the burn
            double start = Math.min(SECOND.value(events.start()), SECOND.value(events.ignition()));
            double end = SECOND.value(events.end());
            double margin = Math.max(0.12 * (end - start), 0.02 * (last - first));
            first = Math.max(first, start - margin);
            last = Math.min(last, end + margin);
        }
        return last > first ? new Axis("time, s", first, last, false) : Axis.linear("time, s", first, first + 1, 0);
    }

    private static Axis pressure(List<Mark.At> line, List<Mark.At> simulated, boolean vessel, String title) {
        double high = 0;
        double low = 0;
        for (List<Mark.At> each : List.of(line, simulated)) {
            for (Mark.At at : each) {
                high = Math.max(high, at.y());
                low = Math.min(low, at.y());
            }
        }
        if (vessel) {
            // a vessel is full before the strand burns: from zero its rise would be a straight line
            double lowest = line.stream().mapToDouble(Mark.At::y).min().orElse(0);
            return Axis.linear(title, lowest, high, 0.12);
        }
        double top = high > 0 ? high * 1.06 : 1;
        return new Axis(title, low < 0 ? low - 0.03 * top : 0, top, false);
    }

    private static void events(Picture picture, @Nullable Events events) {
        if (events == null) {
            return;
        }
        double start = SECOND.value(events.start());
        double ignition = SECOND.value(events.ignition());
        if (Math.abs(picture.px(start) - picture.px(ignition)) > 2) {
            picture.mark(start, "A start", Ink.MUTED, Mark.Dash.DOTTED);
        }
        picture.mark(ignition, "B ignition", Ink.TEXT, Mark.Dash.DOTTED);
        picture.mark(SECOND.value(events.webBurnout()), "E web burnout", Ink.TEXT, Mark.Dash.DOTTED);
        picture.mark(SECOND.value(events.end()), "G end", Ink.MUTED, Mark.Dash.DOTTED);
        burnoutSpread(picture, events.webBurnout());
    }

    private static void timed(Picture picture, @Nullable TimedSpan timed) {
        if (timed != null) {
            picture.mark(SECOND.value(timed.begin()), "begin", Ink.TEXT, Mark.Dash.DOTTED);
            picture.mark(SECOND.value(timed.end()), "end", Ink.TEXT, Mark.Dash.DOTTED);
        }
    }

    private static void burnoutSpread(Picture picture, Quantity burnout) {
        Double std = SECOND.std(burnout);
        if (std != null) {
            double left = picture.px(SECOND.value(burnout) - 2 * std);
            double right = picture.px(SECOND.value(burnout) + 2 * std);
            picture.ground().rect(left, 0, right - left, picture.height(), Ink.TEXT, 0.12);
        }
    }

    /** Numbered as in the list of findings on the page. */
    private static void findings(Picture picture, List<Finding> findings, List<Mark.At> line) {
        for (int i = 0; i < findings.size(); i++) {
            Quantity at = findings.get(i).at();
            if (at == null || !"s".equals(at.unit())) {
                continue;
            }
            double px = picture.px(at.value());
            if (px < 0 || px > picture.width()) {
                continue;
            }
            double py = Math.max(picture.py(pressureAt(line, at.value())) - 10, 14);
            picture.over()
                    .raw("<path d=\"M" + Svg.number(px) + " " + Svg.number(py + 8) + "l-10 -18h20z\" "
                            + Svg.fill(Ink.S2) + "/>");
            picture.over()
                    .raw("<text x=\"" + Svg.number(px) + "\" y=\"" + Svg.number(py)
                            + "\" text-anchor=\"middle\" font-size=\"10\" font-weight=\"700\" " + Svg.fill(Ink.PAPER)
                            + ">" + (i + 1)
                            + "</text>");
        }
    }

    private static double pressureAt(List<Mark.At> line, double time) {
        for (Mark.At at : line) {
            if (at.x() >= time) {
                return at.y();
            }
        }
        return line.get(line.size() - 1).y();
    }

    private static void hits(Picture picture, List<Mark.At> line, String unit) {
        int step = Math.max(1, line.size() / 60);
        for (int i = 0; i < line.size(); i += step) {
            Mark.At at = line.get(i);
            picture.hit(at.x(), at.y(), Numbers.number(at.x(), 4) + " s: " + Numbers.number(at.y(), 3) + unit);
        }
    }

    /** At most the first, the lowest and the highest sample of each pixel: more cannot be seen. */
    private static List<Mark.At> thinned(List<Mark.At> line, double pixels) {
        int run = (int) Math.ceil(line.size() / pixels);
        if (run < 4) {
            return line;
        }
        List<Mark.At> thinned = new ArrayList<>();
        for (int from = 0; from < line.size(); from += run) {
            List<Mark.At> part = line.subList(from, Math.min(from + run, line.size()));
            Mark.At low =
                    part.stream().min(Comparator.comparingDouble(Mark.At::y)).orElseThrow();
            Mark.At high =
                    part.stream().max(Comparator.comparingDouble(Mark.At::y)).orElseThrow();
            part.stream()
                    .filter(at -> at == part.get(0) || at == low || at == high)
                    .forEach(thinned::add);
        }
        return thinned;
    }

    static List<Mark.At> line(List<Double> xs, List<Double> ys) {
        List<Mark.At> line = new ArrayList<>();
        for (int i = 0; i < Math.min(xs.size(), ys.size()); i++) {
            line.add(new Mark.At(xs.get(i), ys.get(i)));
        }
        return line;
    }

    private static String description(Firing firing) {
        boolean strand = "strand".equals(firing.kind());
        StringBuilder words = new StringBuilder(
                        firing.traceHistory() != null
                                        && firing.traceHistory().pressure().isEmpty()
                                ? "Thrust over time of "
                                : "Absolute pressure over time of ")
                .append(strand ? "strand " : "firing ")
                .append(firing.id());
        if (firing.maxPressure() != null) {
            words.append(", highest ").append(Numbers.withStd(firing.maxPressure()));
        }
        if (firing.burnTime() != null) {
            words.append(", burn time ").append(Numbers.withStd(firing.burnTime()));
        }
        if (firing.timed() != null) {
            words.append(", from ")
                    .append(Numbers.like(firing.timed().begin(), firing.burnTime()))
                    .append(" to ")
                    .append(Numbers.like(firing.timed().end(), firing.burnTime()));
        }
        return words.append(strand ? "." : ". The events are in the table below.")
                .toString();
    }
}
