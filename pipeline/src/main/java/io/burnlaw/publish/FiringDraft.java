package io.burnlaw.publish;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.Severity;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Firing.Along;
import io.burnlaw.report.document.Firing.BudgetLine;
import io.burnlaw.report.document.Firing.Events;
import io.burnlaw.report.document.Firing.Rates;
import io.burnlaw.report.document.Firing.Throat;
import io.burnlaw.report.document.Firing.TimedSpan;
import io.burnlaw.report.document.Firing.TraceHistory;
import io.burnlaw.report.document.Quantity;
import java.util.List;
import org.jspecify.annotations.NullUnmarked;

/** A firing on its way into the document: what is not set is absent there. */
@NullUnmarked
final class FiringDraft {

    String kind;
    String trace;
    String note;
    Events events;
    Quantity burnTime;
    Quantity actionTime;
    Quantity web;
    Quantity meanPressure;
    Quantity maxPressure;
    Quantity rateMeanPressure;
    Rates rates;
    Quantity characteristicVelocity;
    Throat throat;
    Quantity totalImpulse;
    Quantity specificImpulse;
    Quantity thrustCoefficient;
    TraceHistory history;
    TimedSpan timed;
    List<BudgetLine> budget = List.of();
    List<Along> along = List.of();

    void budgetOf(RatePoint point) {
        budget = point.budget().stream()
                .map(line -> new BudgetLine(line.source(), line.std(), line.unit(), line.contribution(), line.share()))
                .toList();
    }

    /** The firing as it is used, or with a flag where something beyond a note was seen. */
    Firing used(String id, String formulation, List<Finding> findings) {
        boolean flagged = findings.stream().anyMatch(finding -> finding.severity() != Severity.NOTE);
        return firing(id, formulation, flagged ? "flagged" : "used", findings);
    }

    Firing rejected(String id, String formulation, List<Finding> findings) {
        return firing(id, formulation, "rejected", findings);
    }

    private Firing firing(String id, String formulation, String status, List<Finding> findings) {
        return new Firing(
                id,
                formulation,
                kind,
                status,
                trace,
                note,
                FindingDocument.of(findings),
                events,
                burnTime,
                actionTime,
                web,
                meanPressure,
                maxPressure,
                rateMeanPressure,
                rates,
                characteristicVelocity,
                throat,
                totalImpulse,
                specificImpulse,
                thrustCoefficient,
                budget,
                along,
                history,
                timed,
                null);
    }
}
