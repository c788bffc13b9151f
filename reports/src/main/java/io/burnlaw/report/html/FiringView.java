package io.burnlaw.report.html;

import io.burnlaw.report.chart.AlongChart;
import io.burnlaw.report.chart.Scales;
import io.burnlaw.report.chart.Sparkline;
import io.burnlaw.report.chart.TraceChart;
import io.burnlaw.report.document.ClosureRow;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.document.Rates;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A firing beside what its propellant holds of it.
 *
 * @param firing what is known of it
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

    /**
     * Another firing, to go to.
     *
     * @param name of its page's file, without the ending
     * @param id of it
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

    private Optional<Point> main() {
        return points.stream().filter(point -> !point.source().equals("dwell")).findFirst();
    }
}
