package io.burnlaw.report.chart;

import java.util.List;

/** What XChart paints. */
sealed interface Mark {

    /** The form of a point. */
    enum Form {
        CIRCLE,
        SQUARE,
        DIAMOND,
        TRIANGLE,
        TRIANGLE_DOWN,
        CROSS
    }

    /** The form of a line. */
    enum Dash {
        SOLID,
        DASHED,
        DOTTED
    }

    /** A pair of coordinates on the axes' scales. */
    record At(double x, double y) {}

    /** A point with bars of its own length to both sides; 0 for none. */
    record Spot(double x, double y, double xLow, double xHigh, double yLow, double yHigh) {

        static Spot of(double x, double y) {
            return new Spot(x, y, x, x, y, y);
        }
    }

    /** Points of one form. */
    record Points(List<Spot> spots, Form form, boolean hollow, double size, Ink ink) implements Mark {}

    /** Lines of one look. */
    record Lines(List<List<At>> lines, double width, Dash dash, Ink ink) implements Mark {

        static Lines one(List<At> line, double width, Dash dash, Ink ink) {
            return new Lines(List.of(line), width, dash, ink);
        }
    }

    /** The area between two lines over the same x. */
    record Band(List<At> upper, List<At> lower, double opacity, Ink ink) implements Mark {}

    /**
     * A key that stands for a mark.
     *
     * @param mark of which form, line or band is shown
     * @param words beside it
     */
    record Named(Mark mark, String words) {}
}
