package io.burnlaw.report.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Words right of a plot, each tied by a thin line to the end of its curve, pushed apart where ends lie close. */
final class LeaderLabels {

    private static final double APART = 17;
    private static final double WORDS = 26;

    private final Svg svg = new Svg();

    LeaderLabels(List<Mark.Named> entries, Picture picture) {
        List<Mark.Named> ordered = new ArrayList<>(entries);
        ordered.sort(Comparator.comparingDouble(entry -> target(entry, picture)));
        double[] places = new double[ordered.size()];
        for (int i = 0; i < places.length; i++) {
            double wanted = target(ordered.get(i), picture);
            places[i] = i == 0 ? Math.max(wanted, 4) : Math.max(wanted, places[i - 1] + APART);
        }
        for (int i = places.length - 1; i >= 0; i--) {
            double lowest = i == places.length - 1 ? picture.height() - 2 : places[i + 1] - APART;
            places[i] = Math.min(places[i], lowest);
        }
        for (int i = 0; i < places.length; i++) {
            Mark.Named entry = ordered.get(i);
            Mark.At end = entry.end();
            if (end != null) {
                double from = Math.min(picture.px(end.x()), picture.width());
                svg.raw("<path d=\"M" + Svg.number(from) + " " + Svg.number(target(entry, picture)) + "L"
                        + Svg.number(picture.width() + 8) + " " + Svg.number(places[i]) + "H"
                        + Svg.number(picture.width() + WORDS - 4) + "\" fill=\"none\" " + Svg.stroke(Ink.MUTED)
                        + " stroke-width=\"0.8\"/>");
                svg.words(
                        picture.width() + WORDS,
                        places[i] + 4,
                        "start",
                        Ink.TEXT,
                        Svg.cut(entry.words(), picture.roomRight() - WORDS));
            }
        }
    }

    private static double target(Mark.Named entry, Picture picture) {
        Mark.At end = entry.end();
        return end == null ? 0 : Math.max(0, Math.min(picture.height(), picture.py(end.y())));
    }

    @Override
    public String toString() {
        return svg.toString();
    }
}
