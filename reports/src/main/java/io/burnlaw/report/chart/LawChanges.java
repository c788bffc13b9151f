package io.burnlaw.report.chart;

import static io.burnlaw.report.document.Unit.MPA;

import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Formulation.Threshold;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.document.Regimes.Break;
import io.burnlaw.report.wording.Numbers;
import java.util.List;

/** Where a law changes: the ground of each regime with its name, and a line at each break or threshold. */
record LawChanges(Formulation formulation, Picture picture, Scales scales) {

    /** Below all marks. */
    void regimes(List<Law> laws) {
        if (laws.size() < 2) {
            return;
        }
        double from = scales.pressure().low();
        for (int i = 0; i < laws.size(); i++) {
            double to =
                    i < laws.size() - 1 ? boundary(i, laws) : scales.pressure().high();
            double left = picture.px(Math.max(from, scales.pressure().low()));
            double right = picture.px(Math.min(to, scales.pressure().high()));
            if (i % 2 == 0 && right > left) {
                picture.ground().rect(left, 0, right - left, picture.height(), Ink.GRID, 0.45);
            }
            String name = laws.get(i).regime();
            if (name != null && right - left > Svg.widthOf(name) + 6) {
                picture.over().rimmed((left + right) / 2, picture.height() - 9, "middle", Ink.MUTED, name);
            }
            from = to;
        }
    }

    private double boundary(int below, List<Law> laws) {
        List<Break> breaks = formulation.regimes() == null
                ? List.of()
                : formulation.regimes().breaks();
        return below < breaks.size()
                ? MPA.value(breaks.get(below).pressure())
                : MPA.value(laws.get(below).pressureHigh());
    }

    /** Above the lines of the laws. */
    void mark() {
        Threshold threshold = formulation.threshold();
        if (threshold != null && MPA.low(threshold.pressure()) == null) {
            gap(threshold);
        } else if (threshold != null) {
            change(threshold.pressure(), "threshold", Ink.S2, Mark.Dash.SOLID);
        }
        List<Break> breaks = formulation.regimes() == null
                ? List.of()
                : formulation.regimes().breaks();
        for (Break change : breaks) {
            boolean same = threshold != null
                    && Math.abs(MPA.value(change.pressure()) / MPA.value(threshold.pressure()) - 1) < 0.01;
            if (!same) {
                change(change.pressure(), change.kind().equals("jump") ? "jump" : "change", Ink.TEXT, Mark.Dash.DASHED);
            }
        }
    }

    /** Where only the points on both sides are known, a line in their middle would claim too much. */
    private void gap(Threshold threshold) {
        double from = formulation.points().stream()
                .filter(point -> threshold.below().contains(point.id()))
                .mapToDouble(point -> MPA.value(point.pressure()))
                .max()
                .orElse(MPA.value(threshold.pressure()));
        double to = formulation.points().stream()
                .filter(point -> threshold.above().contains(point.id()))
                .mapToDouble(point -> MPA.value(point.pressure()))
                .min()
                .orElse(MPA.value(threshold.pressure()));
        double left = Math.max(0, picture.px(from));
        double right = Math.min(picture.width(), picture.px(to));
        if (right > left) {
            picture.ground().rect(left, 0, right - left, picture.height(), Ink.S2, 0.12);
            picture.above(
                    Math.sqrt(Math.max(from, scales.pressure().low())
                            * Math.min(to, scales.pressure().high())),
                    "threshold " + Numbers.number(from, 2) + " to " + Numbers.number(to, 2) + " MPa",
                    Ink.S2);
        }
    }

    private void change(Quantity pressure, String word, Ink ink, Mark.Dash dash) {
        double at = MPA.value(pressure);
        Double low = MPA.low(pressure);
        Double high = MPA.high(pressure);
        if (low != null && high != null) {
            double left = picture.px(Math.max(low, scales.pressure().low()));
            double right = picture.px(Math.min(high, scales.pressure().high()));
            if (right > left) {
                picture.ground().rect(left, 0, right - left, picture.height(), ink, 0.1);
            }
        }
        picture.mark(at, word + " " + Numbers.value(pressure) + " MPa", ink, dash);
    }
}
