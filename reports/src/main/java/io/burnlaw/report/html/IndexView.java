package io.burnlaw.report.html;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Comparison;
import io.burnlaw.report.document.Plan;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * All that the first page shows.
 *
 * @param document the document
 * @param propellants with their pictures
 * @param firings with their small traces
 * @param overview all propellants in one picture; absent where there is one only
 * @param comparisons with their pictures
 * @param plans with their pictures
 * @param checksum SHA-256 of burnlaw.json
 */
public record IndexView(
        Characterization document,
        List<FormulationView> propellants,
        List<FiringView> firings,
        @Nullable DrawnFigure overview,
        List<Compared> comparisons,
        List<Planned> plans,
        String checksum) {

    /**
     * A comparison and its picture.
     *
     * @param comparison numbers
     * @param figure absent where there is no ratio
     */
    public record Compared(Comparison comparison, @Nullable DrawnFigure figure) {}

    /**
     * A plan and its picture.
     *
     * @param plan numbers
     * @param figure absent where no throat is planned
     */
    public record Planned(Plan plan, @Nullable DrawnFigure figure) {}

    /**
     * How many firings have a status.
     *
     * @param status such as {@code used}
     * @return their count
     */
    public long count(String status) {
        return firings.stream()
                .filter(view -> view.firing().status().equals(status))
                .count();
    }
}
