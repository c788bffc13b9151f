package io.burnlaw.report.html;

import io.burnlaw.report.chart.AlongChart;
import io.burnlaw.report.chart.OffLaw;
import io.burnlaw.report.chart.Scales;
import io.burnlaw.report.chart.Sparkline;
import io.burnlaw.report.chart.TraceChart;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Closure.ClosureRow;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Firing.Events;
import io.burnlaw.report.document.Firing.Rates;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.document.Unit;
import io.burnlaw.report.wording.Numbers;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A firing, with its points and predictions from its propellant.
 *
 * @param name of its page's file, without the ending
 * @param formulation its propellant; absent where the document does not hold it
 * @param spark its trace in small
 * @param points that came from it
 * @param closure what a law made without it predicted; absent where nothing was
 */
public record FiringView(
        Firing firing,
        String name,
        @Nullable Formulation formulation,
        String spark,
        List<Point> points,
        @Nullable ClosureRow closure) {

    /** Rates that differ by more, and burnouts that are a larger share of the burn time apart, are told [1]. */
    private static final double RATES_AGREE = 0.02;

    private static final double BURNOUTS_AGREE = 0.05;

    /**
     * A link to another firing.
     *
     * @param name of its page's file, without the ending
     */
    public record Neighbour(String name, String id) {}

    static FiringView of(Firing firing, String name, @Nullable ByFiring propellant, double highest) {
        return new FiringView(
                firing,
                name,
                propellant == null ? null : propellant.formulation(),
                "strand".equals(firing.kind()) ? Sparkline.draw(firing) : Sparkline.draw(firing, highest),
                propellant == null ? List.of() : propellant.points().getOrDefault(firing.id(), List.of()),
                propellant == null ? null : propellant.predictions().get(firing.id()));
    }

    /** {@return the same without what only its own page shows} */
    FiringView summary() {
        return new FiringView(firing.summary(), name, formulation, spark, points, closure);
    }

    @Nullable
    DrawnFigure trace() {
        return DrawnFigure.ifAny("trace-" + name, TraceChart.draw(firing));
    }

    @Nullable
    DrawnFigure along(Scales scales) {
        return formulation == null
                ? null
                : DrawnFigure.ifAny("along-" + name, AlongChart.draw(firing, formulation, points, scales));
    }

    /** {@return the titles of its findings, each once, or an empty text} */
    public String remarks() {
        return firing.findings().stream()
                .map(finding -> finding.title())
                .distinct()
                .collect(Collectors.joining("; "));
    }

    /** {@return whether the spread of its burnout is wide enough on the picture to be seen: some two units of the sheet} */
    public boolean burnoutShadeSeen() {
        Events events = firing.events();
        if (events == null) {
            return false;
        }
        Double std = Unit.SECOND.std(events.webBurnout());
        double shown = Unit.SECOND.value(events.end()) - Unit.SECOND.value(events.start());
        return std != null && 4 * std > 0.006 * shown;
    }

    /** {@return whether any of its findings has a place on the picture} */
    public boolean findingsMarked() {
        return firing.findings().stream()
                .anyMatch(finding ->
                        finding.at() != null && "s".equals(finding.at().unit()));
    }

    /** {@return whether it is a strand burned in a vessel, and no motor} */
    public boolean strand() {
        return "strand".equals(firing.kind());
    }

    /** {@return what to call it} */
    public String word() {
        return strand() ? "Strand" : "Firing";
    }

    /** {@return the pressure of its point, with what is known of it; absent where there is no point} */
    public @Nullable Quantity pressure() {
        return main().map(Point::pressure)
                .orElse(firing.rateMeanPressure() != null ? firing.rateMeanPressure() : firing.meanPressure());
    }

    /** {@return the rate of its point, with what is known of it; absent where there is no point} */
    public @Nullable Quantity rate() {
        Rates rates = firing.rate();
        return main().map(Point::rate)
                .orElse(
                        rates == null
                                ? null
                                : rates.massBalance() != null ? rates.massBalance() : rates.thicknessTime());
    }

    /** {@return how far apart the opinions on its burnout are [s]; absent where there are none} */
    public @Nullable Quantity burnoutsApart() {
        Events events = firing.events();
        if (events == null) {
            return null;
        }
        List<Double> opinions = List.of(
                events.webBurnout().value(),
                events.tangentBisector().value(),
                events.maximumCurvature().value());
        return Quantity.of(
                Collections.max(opinions) - Collections.min(opinions),
                events.webBurnout().unit());
    }

    /** {@return how far the firings of its propellant scatter about the law that holds at its pressure; absent without a law} */
    public @Nullable String scatter() {
        return formulation == null
                ? null
                : main().flatMap(point -> OffLaw.of(point, formulation))
                        .map(off -> Numbers.percent(off.scatter(), 2))
                        .orElse(null);
    }

    /** {@return what to say where its two rates or its burnouts disagree; absent where they agree} */
    public @Nullable String disagreement() {
        Double rates = firing.rate() == null ? null : firing.rate().difference();
        Quantity apart = burnoutsApart();
        Quantity time = firing.burnTime();
        boolean byRate = rates != null && Math.abs(rates) > RATES_AGREE;
        boolean byEnd = apart != null && time != null && apart.value() > BURNOUTS_AGREE * time.value();
        if (!byRate && !byEnd) {
            return null;
        }
        String ends = byEnd
                ? "the estimates of the burnout are " + Numbers.percent(apart.value() / time.value(), 2)
                        + " of the burn time apart"
                : "";
        String begin = byRate
                ? "The two rates differ by " + Numbers.percent(Math.abs(rates), 2) + " at one pressure"
                        + (byEnd ? ", and " + ends : "")
                : ends.substring(0, 1).toUpperCase(Locale.ROOT) + ends.substring(1);
        return begin + ": the web burned through unevenly, or the grain in the log is wrong."
                + (byRate ? " The uncertainty of the rate includes half of the difference." : "");
    }

    private Optional<Point> main() {
        return points.stream().filter(point -> !point.source().equals("dwell")).findFirst();
    }

    /**
     * What a propellant holds of each of its firings.
     *
     * @param points      by the id of their firing, or their own
     * @param predictions by the id of the firing
     */
    record ByFiring(Formulation formulation, Map<String, List<Point>> points, Map<String, ClosureRow> predictions) {

        /** By the id of the propellant. */
        static Map<String, ByFiring> of(Characterization document) {
            Map<String, ByFiring> propellants = new HashMap<>();
            document.formulations().forEach(each -> propellants.putIfAbsent(each.id(), of(each)));
            return propellants;
        }

        private static ByFiring of(Formulation formulation) {
            Map<String, List<Point>> points = new HashMap<>();
            for (Point point : formulation.points()) {
                Stream.of(point.id(), point.firing())
                        .filter(Objects::nonNull)
                        .distinct()
                        .forEach(id -> points.computeIfAbsent(id, none -> new ArrayList<>())
                                .add(point));
            }
            Map<String, ClosureRow> predictions = new HashMap<>();
            if (formulation.closure() != null) {
                formulation.closure().rows().forEach(row -> predictions.putIfAbsent(row.firing(), row));
            }
            return new ByFiring(formulation, points, predictions);
        }
    }
}
