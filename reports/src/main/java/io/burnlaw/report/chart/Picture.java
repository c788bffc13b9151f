package io.burnlaw.report.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * A picture in the making: a plot with axes, marks, and words around it. All coordinates are those of the plot, whose
 * upper left corner is 0, 0; how much room the words need is known only when all are there.
 */
final class Picture {

    /** Room for the words that say what goes up. They lie flat: upright words are hard to read. */
    private static final double TITLE = 26;

    /** Labels of an axis are so far apart on a phone [px]. */
    private static final double X_APART = 52;

    private static final double Y_APART = 28;

    private final Frame frame;
    private final Axis x;
    private final Axis y;
    private final MarkPainter painter;
    private final Svg ground = new Svg();
    private final Svg marks = new Svg();
    private final Svg over = new Svg();
    private final Svg hits = new Svg();
    private final List<Mark.Named> named = new ArrayList<>();
    private final List<TopLabels.Label> top = new ArrayList<>();

    Picture(Frame frame, Axis x, Axis y) {
        this.frame = frame;
        this.x = x;
        this.y = y;
        this.painter = new MarkPainter(x, y, frame.plotWidth(), frame.height());
    }

    double width() {
        return frame.plotWidth();
    }

    double height() {
        return frame.height();
    }

    double px(double value) {
        return x.share(value) * width();
    }

    double py(double value) {
        return (1 - y.share(value)) * height();
    }

    boolean shows(Mark.Spot spot) {
        return x.holds(spot.x()) && y.holds(spot.y());
    }

    /** Below the marks. */
    Svg ground() {
        return ground;
    }

    /** Above the marks. */
    Svg over() {
        return over;
    }

    Picture mark(Mark mark) {
        marks.raw(painter.paint(mark));
        return this;
    }

    /** A mark with words in the key. */
    Picture mark(Mark mark, String words) {
        named.add(new Mark.Named(mark, words));
        return mark(mark);
    }

    /** Words above the plot, over a place. */
    Picture above(double at, String words, Ink ink) {
        if (x.holds(at)) {
            top.add(new TopLabels.Label(px(at), words, ink));
        }
        return this;
    }

    /** A line down the plot with words above it. */
    Picture mark(double at, String words, Ink ink, Mark.Dash dash) {
        if (x.holds(at)) {
            over.line(px(at), 0, px(at), height(), ink, " stroke-width=\"1.3\"" + dashes(dash));
        }
        return above(at, words, ink);
    }

    /** Words that show when the pointer is near a place. */
    Picture hit(double atX, double atY, String words) {
        return hit(atX, atY, "", words);
    }

    /** The same with the id of the point that is there, for scripts. */
    Picture hit(double atX, double atY, String id, String words) {
        if (x.holds(atX) && y.holds(atY)) {
            hits.raw("<circle class=\"hit\"" + (id.isEmpty() ? "" : " data-id=\"" + Svg.escape(id) + "\"") + " cx=\""
                    + Svg.number(px(atX)) + "\" cy=\"" + Svg.number(py(atY))
                    + "\" r=\"9\"><title>" + Svg.escape(words)
                    + "</title></circle>");
        }
        return this;
    }

    /** Slanting lines where the picture shows what nobody measured. */
    Picture hatch(double from, double to) {
        double left = Math.max(0, px(Math.max(from, x.low())));
        double right = Math.min(width(), px(Math.min(to, x.high())));
        if (right - left < 1) {
            return this;
        }
        StringBuilder path = new StringBuilder();
        for (double start = left - height(); start < right; start += 11) {
            double x1 = Math.max(start, left);
            double x2 = Math.min(start + height(), right);
            if (x2 > x1) {
                path.append(String.format(
                        Locale.ROOT,
                        "M%s %sL%s %s",
                        Svg.number(x1),
                        Svg.number(height() - (x1 - start)),
                        Svg.number(x2),
                        Svg.number(height() - (x2 - start))));
            }
        }
        ground.raw("<path d=\"" + path + "\" fill=\"none\" " + Svg.stroke(Ink.GRID) + "/>");
        return this;
    }

    static String dashes(Mark.Dash dash) {
        return switch (dash) {
            case SOLID -> "";
            case DASHED -> " stroke-dasharray=\"7 4\"";
            case DOTTED -> " stroke-dasharray=\"1.5 4\" stroke-linecap=\"round\"";
        };
    }

    Figure done(String description) {
        TopLabels labels = new TopLabels(top, -frame.left() + 4, frame.width() - frame.left() - 4);
        Key key = new Key(named, frame.width() - 12);
        double above = TITLE + labels.height();
        double below = 44;
        Svg body = new Svg();
        body.words(4, 14, "start", Ink.TEXT, y.title());
        body.raw("<g class=\"plot\" data-x=\"" + x.ends() + "\" data-y=\"" + y.ends() + "\" data-size=\""
                + Svg.number(width()) + " " + Svg.number(height()) + "\" transform=\"translate("
                + Svg.number(frame.left()) + " " + Svg.number(above) + ")\">");
        body.raw(axes()).raw(ground.toString());
        body.raw("<svg width=\"" + Svg.number(width()) + "\" height=\"" + Svg.number(height())
                        + "\" overflow=\"hidden\">")
                .raw(marks.toString())
                .raw("</svg>");
        body.raw("<g class=\"over\">").raw(over.toString());
        body.raw(labels.toString());
        body.raw("</g>");
        if (!hits.toString().isEmpty()) {
            body.raw("<g class=\"hits\" fill=\"none\" pointer-events=\"all\">" + hits + "</g>");
        }
        body.raw("</g>");
        double keyTop = above + height() + below;
        body.raw("<g transform=\"translate(8 " + Svg.number(keyTop) + ")\">" + key + "</g>");
        return new Figure(frame.width(), keyTop + key.height() + 6, description, body.toString());
    }

    private String axes() {
        Svg svg = new Svg();
        ticks(svg.raw("<g class=\"across\">"), x, "middle", X_APART);
        ticks(svg.raw("</g><g class=\"up\">"), y, "end", Y_APART);
        svg.raw("</g><path d=\"M0 0V" + Svg.number(height()) + "H" + Svg.number(width()) + "\" fill=\"none\" "
                + Svg.stroke(Ink.MUTED) + "/>");
        svg.words(width() / 2, height() + 36, "middle", Ink.TEXT, x.title());
        return svg.toString();
    }

    /** Lines of one weight are one path: an element each would weigh on the page. */
    private void ticks(Svg svg, Axis axis, String anchor, double apart) {
        Set<Double> always = labelled(axis, apart);
        Map<String, StringBuilder> lines = new TreeMap<>();
        StringBuilder labels = new StringBuilder();
        StringBuilder small = new StringBuilder();
        for (Axis.Tick tick : ticks(axis, apart)) {
            boolean named = !tick.label().isEmpty();
            String at = Svg.number(axis == x ? px(tick.value()) : py(tick.value()));
            lines.computeIfAbsent(tick.strong() ? "1.2" : named ? "0.8" : "0.5", none -> new StringBuilder())
                    .append(
                            axis == x
                                    ? "M" + at + " 0V" + Svg.number(height())
                                    : "M0 " + at + "H" + Svg.number(width()));
            small.append(
                    axis == x
                            ? "M" + at + " " + Svg.number(height()) + (named ? "v4" : "v2")
                            : "M0 " + at + (named ? "h-4" : "h-2"));
            if (named) {
                labels.append("<text x=\"" + (axis == x ? at : "-7") + "\" y=\""
                        + Svg.number(axis == x ? height() + 17 : py(tick.value()) + 4)
                        + (always.contains(tick.value()) ? "\">" : "\" class=\"more\">") + Svg.escape(tick.label())
                        + "</text>");
            }
        }
        lines.forEach((weight, path) -> svg.raw("<path d=\"" + path + "\" fill=\"none\" " + Svg.stroke(Ink.GRID)
                + " stroke-width=\"" + weight + "\"/>"));
        svg.raw("<path d=\"" + small + "\" fill=\"none\" " + Svg.stroke(Ink.MUTED) + "/>");
        svg.raw("<g text-anchor=\"" + anchor + "\" " + Svg.fill(Ink.TEXT) + ">" + labels + "</g>");
    }

    /** With the labels for which there is room on a large screen, where they only add to those of a phone. */
    private List<Axis.Tick> ticks(Axis axis, double apart) {
        double length = axis == x ? width() : height();
        List<Axis.Tick> many = axis.ticks(0.6 * apart / length);
        return labels(many).containsAll(labelled(axis, apart)) ? many : axis.ticks(apart / length);
    }

    private Set<Double> labelled(Axis axis, double apart) {
        return labels(axis.ticks(apart / (axis == x ? width() : height())));
    }

    private static Set<Double> labels(List<Axis.Tick> ticks) {
        return ticks.stream()
                .filter(tick -> !tick.label().isEmpty())
                .map(Axis.Tick::value)
                .collect(Collectors.toSet());
    }
}
