package io.burnlaw.report.chart;

import java.util.List;

/** Draws invisible marks in advance: the first one of each kind takes a hundred times as long as the next. */
public final class FirstMarks {

    private FirstMarks() {}

    /** Paints them, on axes of both kinds. */
    public static void paint() {
        List<Mark.At> line = List.of(new Mark.At(2, 3), new Mark.At(5, 6));
        List<Mark> marks = List.of(
                new Mark.Points(List.of(new Mark.Spot(3, 3, 2, 4, 2, 4)), Mark.Form.CIRCLE, true, 9, Ink.S1),
                Mark.Lines.one(line, 1.5, Mark.Dash.DASHED, Ink.S1),
                new Mark.Band(line, line, 0.2, Ink.S1));
        for (boolean logarithmic : new boolean[] {true, false}) {
            Axis axis = new Axis("", 1, 10, logarithmic);
            marks.forEach(mark -> new MarkPainter(axis, axis, 100, 100).paint(mark));
        }
    }
}
