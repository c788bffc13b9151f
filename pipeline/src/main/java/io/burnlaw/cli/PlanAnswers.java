package io.burnlaw.cli;

import io.burnlaw.planning.Cautions;
import io.burnlaw.planning.Plan;
import io.burnlaw.planning.PlanBasis;
import io.burnlaw.planning.PlanOptions;
import io.burnlaw.planning.Planner;
import io.burnlaw.planning.ThroatAnswer;
import io.burnlaw.publish.PlanDocument;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What was planned for one propellant, with what was asked beside.
 *
 * @param plan  or refusal
 * @param basis that it was made from; empty where there was none to make one from
 * @param level of its predictions [1]
 * @param asked in the order in which it was asked
 */
record PlanAnswers(Plan plan, Optional<PlanBasis> basis, double level, List<Asked> asked) {

    /**
     * A question with its answer.
     *
     * @param question in words
     * @param answer   to it
     */
    record Asked(String question, ThroatAnswer answer) {}

    PlanAnswers {
        asked = List.copyOf(asked);
    }

    /** Plans, and answers for each diameter [m] and each mean pressure [Pa, absolute]. */
    static PlanAnswers of(PlanBasis basis, PlanOptions options, List<Double> diameters, List<Double> pressures) {
        List<Asked> asked = new ArrayList<>();
        for (double diameter : diameters) {
            asked.add(new Asked(
                    "a throat of " + NumberFormat.plain(Unit.MILLIMETRE.fromSi(diameter), 4) + " mm",
                    Planner.throat(basis, options, diameter)));
        }
        for (double pressure : pressures) {
            asked.add(new Asked(
                    "a mean of " + NumberFormat.plain(Unit.MEGAPASCAL.fromSi(pressure), 4) + " MPa absolute",
                    Planner.throatFor(basis, options, pressure)));
        }
        return new PlanAnswers(Planner.plan(basis, options), Optional.of(basis), options.level(), asked);
    }

    /** The answer where there is nothing to plan from. */
    static PlanAnswers none(Plan.Refused refused, PlanOptions options) {
        return new PlanAnswers(refused, Optional.empty(), options.level(), List.of());
    }

    /** {@return whether a plan, and each throat that was asked for, may be drilled} */
    boolean named() {
        return plan instanceof Plan.Planned
                && asked.stream()
                        .allMatch(each ->
                                each.answer().match(found -> found.throat().allowed(), none -> false));
    }

    /** {@return the same in the document's words} */
    io.burnlaw.report.document.Plan document() {
        io.burnlaw.report.document.Plan plain = PlanDocument.of(plan, basis, level);
        return asked.isEmpty()
                ? plain
                : plain.with(asked.stream()
                        .map(each -> PlanDocument.answer(each.question(), each.answer(), level))
                        .toList());
    }

    void print(PrintWriter out) {
        if (basis.isEmpty()) {
            out.println(Terminal.safe(plan.sentence()));
            return;
        }
        PlanTable table = new PlanTable(level, out);
        table.print(plan);
        asked.forEach(each -> table.print(each.question() + ":", each.answer()));
        table.cautions(plan.cautions().isEmpty() ? Cautions.ALWAYS : plan.cautions());
    }
}
