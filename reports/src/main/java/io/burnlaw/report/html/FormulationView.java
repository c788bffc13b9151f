package io.burnlaw.report.html;

import io.burnlaw.report.chart.ClosureChart;
import io.burnlaw.report.chart.LawChart;
import io.burnlaw.report.chart.ResidualChart;
import io.burnlaw.report.chart.Scales;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Closure;
import io.burnlaw.report.document.Finding;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Law;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A propellant with its pictures.
 *
 * @param formulation what is known of it
 * @param anchor id of its article, safe in HTML
 * @param law the picture of its law; absent where it has no point
 * @param residuals what the law leaves; absent where there is no law
 * @param closure predicted against measured; absent where nothing was predicted
 * @param worries findings of the law, gravest first
 * @param setAside how many of its firings were rejected
 * @param flagged how many of its firings were used with a remark
 * @param firings how many there are
 */
public record FormulationView(
        Formulation formulation,
        String anchor,
        @Nullable DrawnFigure law,
        @Nullable DrawnFigure residuals,
        @Nullable DrawnFigure closure,
        List<Finding> worries,
        long setAside,
        long flagged,
        long firings) {

    static FormulationView of(Characterization document, Formulation formulation, String anchor, Scales scales) {
        Closure closure = formulation.closure();
        List<Finding> worries = new ArrayList<>(formulation.findings());
        worries.sort(Comparator.comparingInt(finding -> Words.gravity(finding.severity())));
        return new FormulationView(
                formulation,
                "propellant-" + anchor,
                formulation.points().isEmpty()
                        ? null
                        : DrawnFigure.of(
                                "law-" + anchor,
                                frame -> LawChart.draw(formulation, document.firings(), scales, frame)),
                DrawnFigure.ifAny("residuals-" + anchor, frame -> ResidualChart.draw(formulation, scales, frame)),
                closure == null
                        ? null
                        : DrawnFigure.ifAny("closure-" + anchor, frame -> ClosureChart.draw(closure, scales, frame)),
                worries,
                count(document, formulation, "rejected"),
                count(document, formulation, "flagged"),
                document.firings().stream()
                        .filter(firing -> firing.formulation().equals(formulation.id()))
                        .count());
    }

    /** {@return the laws that hold: of the regimes where there are several, else the single one} */
    public List<Law> laws() {
        return LawChart.laws(formulation);
    }

    /** {@return whether nothing at all stands out} */
    public boolean calm() {
        Closure closure = formulation.closure();
        return worries.isEmpty()
                && setAside == 0
                && flagged == 0
                && formulation.notFitted() == null
                && (closure == null || !Boolean.FALSE.equals(closure.good()));
    }

    private static long count(Characterization document, Formulation formulation, String status) {
        return document.firings().stream()
                .filter(firing -> firing.formulation().equals(formulation.id()))
                .map(Firing::status)
                .filter(status::equals)
                .count();
    }
}
