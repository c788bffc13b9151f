package io.burnlaw.report.chart;

import static io.burnlaw.report.document.Unit.MM_PER_S;
import static io.burnlaw.report.document.Unit.MPA;

import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Firing.Along;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Law.CurvePoint;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.wording.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Burning rate over pressure, both logarithmic: the points with their bars, the law with the band of its mean and the
 * band of the next firing, where the law changes, and the rate along single burns. Ranges without data are hatched.
 */
public final class LawChart {

    /** A letter is hardly ever wider, on the average of a line [px]. */
    private static final double LETTER = 7.8;

    private final Formulation formulation;
    private final Picture picture;
    private final Scales scales;

    private LawChart(Formulation formulation, Scales scales) {
        this.formulation = formulation;
        this.scales = scales;
        this.picture = new Picture(Frame.SHEET, scales.pressure(), scales.rate());
    }

    /**
     * Draws it.
     *
     * @param firings of the document; those of other propellants are passed over
     */
    public static Figure draw(Formulation formulation, List<Firing> firings, Scales scales) {
        return new LawChart(formulation, scales).figure(firings);
    }

    /**
     * Whether there are so many points that they are drawn as dots without bars.
     *
     * @return true where nothing else would be seen beside them
     */
    public static boolean crowded(Formulation formulation) {
        return PointMarks.crowded(formulation.points());
    }

    /**
     * The laws that hold: those of the regimes where there are several, else the single one.
     *
     * @return none, one, or one a regime from low to high pressure
     */
    public static List<Law> laws(Formulation formulation) {
        if (formulation.regimes() != null && formulation.regimes().laws().size() > 1) {
            return formulation.regimes().laws();
        }
        return formulation.singleLaw() == null ? List.of() : List.of(formulation.singleLaw());
    }

    private Figure figure(List<Firing> firings) {
        List<Law> laws = laws(formulation);
        boolean crowded = PointMarks.crowded(formulation.points());
        LawChanges changes = new LawChanges(formulation, picture, scales);
        changes.regimes(laws);
        outside(laws);
        for (int i = 0; i < laws.size(); i++) {
            band(laws.get(i), i == laws.size() - 1 && !crowded);
        }
        if (crowded) {
            PointMarks.draw(picture, formulation.points(), Ink.S1);
            for (int i = 0; i < laws.size(); i++) {
                edges(laws.get(i), i == laws.size() - 1);
            }
        } else {
            along(firings);
        }
        if (laws.size() > 1 && formulation.singleLaw() != null) {
            List<Mark.At> line = line(formulation.singleLaw(), CurvePoint::rate);
            picture.mark(Mark.Lines.one(line, 1.3, Mark.Dash.DASHED, Ink.MUTED), "one law for all");
        }
        for (int i = 0; i < laws.size(); i++) {
            List<Mark.At> line = line(laws.get(i), CurvePoint::rate);
            Mark mark = Mark.Lines.one(line, 2.2, Mark.Dash.SOLID, crowded ? Ink.TEXT : Ink.S1);
            if (i == laws.size() - 1 && !line.isEmpty()) {
                picture.mark(mark, "law");
            } else {
                picture.mark(mark);
            }
        }
        changes.mark();
        if (!crowded) {
            PointMarks.draw(picture, formulation.points(), Ink.S1);
        }
        outsiders();
        formulas(laws);
        return picture.done(description(laws));
    }

    /** Where a rate that rises with pressure leaves room: at the lower right. */
    private void formulas(List<Law> laws) {
        for (int i = 0; i < laws.size(); i++) {
            Law law = laws.get(i);
            String words = (law.regime() == null ? "" : law.regime() + ": ") + "r = " + Numbers.value(law.coefficient())
                    + "\u00b7P^" + Numbers.value(law.exponent());
            picture.over()
                    .rimmed(
                            picture.width() - 8,
                            picture.height() - 30 - 18 * (laws.size() - 1 - i),
                            "end",
                            Ink.TEXT,
                            i == laws.size() - 1 ? words + " (mm/s, MPa)" : words);
        }
    }

    private void outside(List<Law> laws) {
        if (laws.isEmpty()) {
            return;
        }
        picture.hatch(scales.pressure().low(), MPA.value(laws.get(0).pressureLow()));
        picture.hatch(
                MPA.value(laws.get(laws.size() - 1).pressureHigh()),
                scales.pressure().high());
    }

    /** A point that is not shown is told of where it would stand. */
    private void outsiders() {
        List<Point> outside = formulation.points().stream()
                .filter(point -> !scales.hold(point))
                .toList();
        int most = 3;
        for (int i = 0; i < Math.min(outside.size(), most); i++) {
            Point point = outside.get(i);
            boolean left = MPA.value(point.pressure()) < scales.pressure().high();
            boolean more = i == most - 1 && outside.size() > most;
            picture.over()
                    .rimmed(
                            left ? 8 : picture.width() - 8,
                            16 + 17 * i,
                            left ? "start" : "end",
                            Ink.MUTED,
                            more
                                    ? "and " + (outside.size() - most + 1) + " more outside the picture"
                                    : outsider(point));
        }
    }

    private String outsider(Point point) {
        String name = "outside: " + point.id();
        String whole = name + ", " + Numbers.bare(MM_PER_S.of(point.rate())) + " mm/s at "
                + Numbers.bare(MPA.of(point.pressure())) + " MPa";
        return whole.length() * LETTER > picture.width() - 16 ? name : whole;
    }

    private void band(Law law, boolean worded) {
        String level = level(law);
        band(law, CurvePoint::predictionLow, CurvePoint::predictionHigh, 0.13, worded ? level + "next firing" : null);
        band(law, CurvePoint::confidenceLow, CurvePoint::confidenceHigh, 0.3, worded ? level + "mean rate" : null);
    }

    private void band(
            Law law,
            Function<CurvePoint, @Nullable Double> low,
            Function<CurvePoint, @Nullable Double> high,
            double opacity,
            @Nullable String words) {
        List<Mark.At> upper = line(law, high);
        List<Mark.At> lower = line(law, low);
        if (upper.size() < 2 || lower.size() != upper.size()) {
            return;
        }
        Mark mark = new Mark.Band(upper, lower, opacity, Ink.S1);
        if (words == null) {
            picture.mark(mark);
        } else {
            picture.mark(mark, words);
        }
    }

    /** Of bands that lie under many points. */
    private void edges(Law law, boolean worded) {
        String level = level(law);
        edges(
                law,
                CurvePoint::predictionLow,
                CurvePoint::predictionHigh,
                Mark.Dash.DASHED,
                worded ? level + "next firing" : "");
        edges(
                law,
                CurvePoint::confidenceLow,
                CurvePoint::confidenceHigh,
                Mark.Dash.DOTTED,
                worded ? level + "mean rate" : "");
    }

    private void edges(
            Law law,
            Function<CurvePoint, @Nullable Double> low,
            Function<CurvePoint, @Nullable Double> high,
            Mark.Dash dash,
            String words) {
        List<List<Mark.At>> lines = Stream.of(line(law, low), line(law, high))
                .filter(line -> line.size() > 1)
                .toList();
        if (lines.isEmpty()) {
            return;
        }
        Mark mark = new Mark.Lines(lines, 1.1, dash, Ink.TEXT);
        if (words.isEmpty()) {
            picture.mark(mark);
        } else {
            picture.mark(mark, words);
        }
    }

    private static String level(Law law) {
        return law.exponent().level() == null
                ? ""
                : Numbers.level(law.exponent().level()) + " ";
    }

    /** Of burns that nothing is said of: one that was blocked or burned unevenly would look like a law of its own. */
    private void along(List<Firing> firings) {
        List<List<Mark.At>> lines = new ArrayList<>();
        for (Firing firing : firings) {
            if (firing.formulation().equals(formulation.id())
                    && firing.status().equals("used")
                    && !firing.along().isEmpty()) {
                lines.add(burn(firing.along()));
            }
        }
        if (!lines.isEmpty()) {
            picture.mark(new Mark.Lines(lines, 0.8, Mark.Dash.SOLID, Ink.MUTED), "rate along single burns");
        }
    }

    /** Some two dozen places a burn: more cannot be seen, and weigh on the page. */
    static List<Mark.At> burn(List<Along> along) {
        int step = Math.max(1, along.size() / 24);
        List<Mark.At> line = new ArrayList<>();
        for (int i = 0; i < along.size(); i += step) {
            line.add(new Mark.At(along.get(i).pressure(), along.get(i).rate()));
        }
        return line;
    }

    private static List<Mark.At> line(Law law, Function<CurvePoint, @Nullable Double> what) {
        List<Mark.At> line = new ArrayList<>();
        for (CurvePoint point : law.curve()) {
            Double value = what.apply(point);
            if (value != null) {
                line.add(new Mark.At(point.pressure(), value));
            }
        }
        return line;
    }

    private String description(List<Law> laws) {
        StringBuilder words = new StringBuilder("Burning rate over absolute pressure, both logarithmic, of ")
                .append(formulation.title())
                .append(": ")
                .append(formulation.points().size())
                .append(formulation.points().size() == 1 ? " point" : " points");
        for (Law law : laws) {
            words.append("; ")
                    .append(law.regime() == null ? "law" : law.regime() + " law")
                    .append(" with exponent ")
                    .append(Numbers.value(law.exponent()))
                    .append(" from ")
                    .append(Numbers.number(MPA.value(law.pressureLow()), 3))
                    .append(" to ")
                    .append(Numbers.number(MPA.value(law.pressureHigh()), 3))
                    .append(" MPa, ")
                    .append(Numbers.number(MM_PER_S.value(law.coefficient()), 3))
                    .append(" mm/s at 1 MPa");
        }
        return words.append(". The points are in the table below.").toString();
    }
}
