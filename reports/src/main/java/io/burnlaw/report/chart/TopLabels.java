package io.burnlaw.report.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Words above a plot, each tied to its line, pushed apart in one row; in two rows where one is too short. */
final class TopLabels {

    private static final double ROW = 17;
    private static final double GAP = 9;

    /**
     * Words over a line.
     *
     * @param words above it
     */
    record Label(double at, String words, Ink ink) {}

    private final Svg svg = new Svg();
    private final int rows;

    TopLabels(List<Label> labels, double left, double right) {
        List<Label> ordered = new ArrayList<>(labels);
        ordered.sort(Comparator.comparingDouble(Label::at));
        double needed = ordered.stream()
                .mapToDouble(label -> Svg.widthOf(label.words()) + GAP)
                .sum();
        rows = ordered.isEmpty() ? 0 : needed <= right - left ? 1 : 2;
        for (int row = 0; row < rows; row++) {
            List<Label> here = new ArrayList<>();
            for (int i = row; i < ordered.size(); i += rows) {
                here.add(ordered.get(i));
            }
            row(here, row, left, right);
        }
    }

    private void row(List<Label> labels, int row, double left, double right) {
        double[] starts = new double[labels.size()];
        double free = left;
        for (int i = 0; i < starts.length; i++) {
            starts[i] = Math.max(labels.get(i).at() - width(labels, i) / 2, free);
            free = starts[i] + width(labels, i) + GAP;
        }
        double end = right;
        for (int i = starts.length - 1; i >= 0; i--) {
            starts[i] = Math.min(starts[i], end - width(labels, i));
            end = starts[i] - GAP;
        }
        balance(labels, starts, left);
        for (int i = 0; i < starts.length; i++) {
            Label label = labels.get(i);
            double middle = starts[i] + width(labels, i) / 2;
            double foot = Math.max(starts[i] + 4, Math.min(starts[i] + width(labels, i) - 4, label.at()));
            svg.line(label.at(), 0, foot, -5 - ROW * row, label.ink(), " stroke-width=\"0.8\"");
            svg.words(middle, -9 - ROW * row, "middle", Ink.TEXT, label.words());
        }
    }

    /** Moves a crowd of labels to the left, so that it stands about its lines and not right of them. */
    private static void balance(List<Label> labels, double[] starts, double left) {
        for (int i = 0; i < starts.length; ) {
            int last = i;
            double off = starts[i] + width(labels, i) / 2 - labels.get(i).at();
            while (last + 1 < starts.length && starts[last + 1] - starts[last] - width(labels, last) < GAP + 0.01) {
                last++;
                off += starts[last] + width(labels, last) / 2 - labels.get(last).at();
            }
            double room = starts[i] - (i == 0 ? left : starts[i - 1] + width(labels, i - 1) + GAP);
            double shift = Math.max(0, Math.min(room, off / (last - i + 1)));
            for (int k = i; k <= last; k++) {
                starts[k] -= shift;
            }
            i = last + 1;
        }
    }

    private static double width(List<Label> labels, int number) {
        return Svg.widthOf(labels.get(number).words());
    }

    double height() {
        return rows == 0 ? 0 : ROW * rows + 5;
    }

    @Override
    public String toString() {
        return svg.toString();
    }
}
