package io.burnlaw.cli;

import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Closure;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Plan;
import io.burnlaw.report.document.PlannedThroat;
import java.io.PrintWriter;
import java.util.Locale;
import java.util.Optional;

/** What a law predicts, in a short line each: how well it gives back its own firings, and the next throat. */
final class PredictionLines {

    private static final String CAUTION =
            "A throat is named from predictions alone: it replaces neither a proof test, nor"
                    + " distance and shelter, nor the local law and a licensed person. burnlaw plan says more.";

    private PredictionLines() {}

    /**
     * Prints the lines of one formulation.
     *
     * @param formulation with its closure
     * @param document    with its plan
     * @param out         where
     */
    static void print(Formulation formulation, Characterization document, PrintWriter out) {
        boolean told = formulation.findings().stream()
                .anyMatch(finding -> finding.code().equals(FindingCode.POOR_CLOSURE.code()));
        Optional.ofNullable(formulation.closure())
                .filter(closure -> !told)
                .flatMap(PredictionLines::closure)
                .ifPresent(line -> out.println(Terminal.safe(line)));
        plan(formulation, document)
                .filter(plan -> plan.motor() != null)
                .ifPresent(plan -> out.println(Terminal.safe("next throat: " + words(plan))));
    }

    /**
     * Prints what belongs beside throats, where one is named.
     *
     * @param document of the campaign
     * @param out      where
     */
    static void caution(Characterization document, PrintWriter out) {
        if (document.plans().stream().anyMatch(plan -> plan.next() != null)) {
            out.println();
            out.println(CAUTION);
        }
    }

    private static Optional<Plan> plan(Formulation formulation, Characterization document) {
        return document.plans().stream()
                .filter(plan -> plan.formulation().equals(formulation.id()))
                .findFirst();
    }

    private static Optional<String> closure(Closure closure) {
        Double peak = closure.medianMaxPressureError();
        Double mean = closure.medianMeanPressureError();
        Double time = closure.medianBurnTimeError();
        if (peak == null || mean == null || time == null) {
            return Optional.empty();
        }
        return Optional.of("prediction check: each of "
                + ProblemList.count(closure.rows().size(), "firing") + " from the others, off by "
                + NumberFormat.percent(peak, 2) + " in peak pressure, " + NumberFormat.percent(mean, 2)
                + " in mean pressure, "
                + NumberFormat.percent(time, 2) + " in burn time (medians)");
    }

    private static String words(Plan plan) {
        PlannedThroat next = plan.next();
        if (next == null) {
            return "none is named; the report says why";
        }
        Double most = next.maxPressure().high();
        return NumberFormat.plain(next.throatDiameter().value(), 4) + " mm" + drill(next) + ", for a mean of "
                + NumberFormat.significant(next.equilibriumPressure().value(), 3) + " MPa"
                + (most == null || next.maxPressure().level() == null
                        ? ""
                        : ", the peak at most " + NumberFormat.significant(most, 3) + " MPa ("
                                + NumberFormat.plain(100 * next.maxPressure().level(), 4) + " %)");
    }

    /** The drill of that very size, unless its name is the size. */
    private static String drill(PlannedThroat throat) {
        return throat.drills().stream()
                .filter(each -> each.diameter() == throat.throatDiameter().value())
                .filter(each -> !each.series().equals("metric"))
                .findFirst()
                .map(each -> " (drill " + each.name().toUpperCase(Locale.ROOT) + ")")
                .orElse("");
    }
}
