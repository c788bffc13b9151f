package io.burnlaw.report.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/** Lines without the places that are off the straight way between two others by less than can be seen (Douglas and Peucker 1973). */
final class Simplified {

    private final List<Mark.At> line;
    private final double seen;
    private final boolean[] kept;

    private Simplified(List<Mark.At> line, double seen) {
        this.line = line;
        this.seen = seen;
        this.kept = new boolean[line.size()];
    }

    /**
     * Leaves places out.
     *
     * @param line    at least one place
     * @param seen    what can be seen, in units of the sheet
     * @param onSheet where a place is on the sheet
     * @return the first, the last, and those between that are needed
     */
    static List<Mark.At> of(List<Mark.At> line, double seen, UnaryOperator<Mark.At> onSheet) {
        Simplified on = new Simplified(line.stream().map(onSheet).toList(), seen);
        on.kept[0] = true;
        on.kept[line.size() - 1] = true;
        on.keep(0, line.size() - 1);
        List<Mark.At> left = new ArrayList<>();
        for (int i = 0; i < on.kept.length; i++) {
            if (on.kept[i]) {
                left.add(line.get(i));
            }
        }
        return left;
    }

    private void keep(int from, int to) {
        double x0 = line.get(from).x();
        double y0 = line.get(from).y();
        double dx = line.get(to).x() - x0;
        double dy = line.get(to).y() - y0;
        double length = Math.hypot(dx, dy);
        int farthest = -1;
        double most = seen;
        for (int i = from + 1; i < to; i++) {
            double x = line.get(i).x() - x0;
            double y = line.get(i).y() - y0;
            double off = length > 0 ? Math.abs(dx * y - dy * x) / length : Math.hypot(x, y);
            if (off > most) {
                most = off;
                farthest = i;
            }
        }
        if (farthest > 0) {
            kept[farthest] = true;
            keep(from, farthest);
            keep(farthest, to);
        }
    }
}
