package io.burnlaw.report.html;

import io.burnlaw.report.chart.AlongChart;
import io.burnlaw.report.chart.Scales;
import io.burnlaw.report.chart.Sparkline;
import io.burnlaw.report.chart.TraceChart;
import io.burnlaw.report.document.Characterization;
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
 * A firing with its pictures and its neighbours.
 *
 * @param firing what is known of it
 * @param name of its page's file, without the ending
 * @param formulation its propellant; absent where the document does not hold it
 * @param spark its trace in small
 * @param trace its pressure over time; absent where there is none to draw
 * @param along its rate over pressure; absent where that is not known
 * @param points that came from it
 * @param closure what a law made without it predicted; absent where nothing was
 */
public record FiringView(
        Firing firing,
        String name,
        @Nullable Formulation formulation,
        String spark,
        @Nullable DrawnFigure trace,
        @Nullable DrawnFigure along,
        List<Point> points,
        @Nullable ClosureRow closure) {

    static FiringView of(Characterization document, Firing firing, String name, Scales scales, double highest) {
        Formulation formulation = document.formulations().stream()
                .filter(each -> each.id().equals(firing.formulation()))
                .findFirst()
                .orElse(null);
        return new FiringView(
                firing,
                name,
                formulation,
                "strand".equals(firing.kind()) ? Sparkline.draw(firing) : Sparkline.draw(firing, highest),
                DrawnFigure.ifAny("trace-" + name, frame -> TraceChart.draw(firing, frame)),
                formulation == null
                        ? null
                        : DrawnFigure.ifAny(
                                "along-" + name, frame -> AlongChart.draw(firing, formulation, scales, frame)),
                formulation == null
                        ? List.of()
                        : formulation.points().stream()
                                .filter(point -> firing.id().equals(point.firing())
                                        || firing.id().equals(point.id()))
                                .toList(),
                formulation == null || formulation.closure() == null
                        ? null
                        : formulation.closure().rows().stream()
                                .filter(row -> row.firing().equals(firing.id()))
                                .findFirst()
                                .orElse(null));
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
