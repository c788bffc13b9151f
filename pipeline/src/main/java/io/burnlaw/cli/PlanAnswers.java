package io.burnlaw.cli;

import static io.burnlaw.quantity.NumberFormat.megapascal;

import io.burnlaw.campaign.Choice;
import io.burnlaw.planning.Plan;
import io.burnlaw.planning.PlanBasis;
import io.burnlaw.planning.PlanOptions;
import io.burnlaw.planning.PlannedThroat;
import io.burnlaw.planning.PlannedThroat.Drill;
import io.burnlaw.planning.PlannedThroat.Predicted;
import io.burnlaw.planning.PlannedThroat.ThroatAnswer;
import io.burnlaw.planning.Planner;
import io.burnlaw.publish.PlanDocument;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import io.burnlaw.report.table.ThroatTable;
import io.burnlaw.report.table.TypedTable;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What was planned for one propellant, with what was asked beside.
 *
 * @param basis that it was made from; empty where there was none to make one from
 * @param level of its predictions [1]
 * @param asked in the order in which it was asked
 */
record PlanAnswers(Plan plan, Optional<PlanBasis> basis, double level, List<Asked> asked) {

    /** A question with its answer. */
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
        table.cautions(plan.cautions().isEmpty() ? Plan.CAUTIONS : plan.cautions());
    }

    /** A plan on a terminal: the advice, the throats with their predictions, and what to read before one is drilled. */
    private static final class PlanTable {

        private final double level;
        private final PrintWriter out;

        /**
         * A table.
         *
         * @param level of the predictions [1]
         * @param out   where it is printed
         */
        PlanTable(double level, PrintWriter out) {
            this.level = level;
            this.out = out;
        }

        /** Prints a plan. */
        void print(Plan plan) {
            // one fact a line
            for (String sentence : ResultTable.sentences(plan.sentence())) {
                out.println(Terminal.safe(sentence));
            }
            out.println(Terminal.safe("grain: " + plan.grain()));
            plan.match(this::planned, refused -> refused.allowedPressure());
        }

        private Plan planned(Plan.Planned plan) {
            out.println("allowed: " + megapascal(plan.allowedPressure()) + " MPa absolute, " + plan.allowedBecause());
            if (plan.slowRegimeThroat().isPresent()) {
                out.println("slow regime: above a throat of "
                        + millimetre(plan.slowRegimeThroat().getAsDouble()) + " mm the motor may burn slowly");
            }
            List<PlannedThroat> throats = new ArrayList<>(plan.ladder());
            plan.next()
                    .filter(next -> throats.stream().noneMatch(each -> each.diameter() == next.diameter()))
                    .ifPresent(next -> throats.add(0, next));
            if (!throats.isEmpty()) {
                out.println(Terminal.safe(narrowed("throats", throats, plan.next())));
                remarks(throats);
            }
            return plan;
        }

        /**
         * Prints what was asked of single throats and pressures.
         *
         * @param question as it was asked
         */
        void print(String question, ThroatAnswer answer) {
            out.println();
            out.println(Terminal.safe(question));
            answer.match(this::found, none -> {
                out.println(Terminal.safe(none.reason()));
                return none;
            });
        }

        private ThroatAnswer found(ThroatAnswer.Found found) {
            out.println(Terminal.safe(narrowed("answer", List.of(found.throat()), Optional.empty())));
            if (found.exact() != found.throat().diameter()) {
                out.println("exact diameter: " + NumberFormat.plain(Unit.MILLIMETRE.fromSi(found.exact()), 4) + " mm");
            }
            remarks(List.of(found.throat()));
            return found;
        }

        /** Prints what to read before a throat is drilled. */
        void cautions(List<String> cautions) {
            out.println();
            out.println("Before you act on a number:");
            cautions.forEach(caution -> out.println(Terminal.safe("  - " + caution)));
        }

        private String narrowed(String title, List<PlannedThroat> throats, Optional<PlannedThroat> next) {
            TypedTable<io.burnlaw.report.document.Plan.PlannedThroat> table = ThroatTable.of(
                    throats.stream()
                            .map(each -> PlanDocument.throat(each, level))
                            .toList(),
                    next.map(each -> PlanDocument.throat(each, level)).orElse(null));
            TerminalTable shown = TerminalTable.of(title, table.size())
                    .with(
                            "throat [mm]",
                            row -> NumberFormat.plain(table.number("throat", row), 4)
                                    + (table.truth("next", row) ? " next" : ""))
                    .with(
                            "nearest drills",
                            row -> throats.get(row).drills().stream()
                                    .map(PlanTable::stamped)
                                    .collect(Collectors.joining(", ")))
                    .with(
                            "mean [MPa] (" + percent() + ")",
                            row -> predicted(throats.get(row).meanPressure()))
                    .with(
                            "peak [MPa] (" + percent() + ")",
                            row -> predicted(throats.get(row).maxPressure()))
                    .with("burn time [s]", row -> figure(table.number("burn_time", row), 3))
                    .with("u(n) after", row -> figure(table.number("exponent_uncertainty", row), 2))
                    .with("allowed", row -> table.truth("allowed", row) ? "yes" : "NO");
            return ConsoleWriter.fitted(
                    out,
                    shown,
                    List.of("u(n) after", "nearest drills", "burn time [s]", "mean [MPa] (" + percent() + ")"));
        }

        private static String figure(@Nullable Double value, int digits) {
            return value == null ? "" : NumberFormat.significant(value, digits);
        }

        private void remarks(List<PlannedThroat> throats) {
            for (PlannedThroat each : throats) {
                String at = "  " + millimetre(each.diameter()) + " mm: ";
                each.refusal().ifPresent(reason -> out.println(Terminal.safe(at + reason)));
                each.remark().ifPresent(remark -> out.println(Terminal.safe(at + remark)));
                if (!each.otherEquilibria().isEmpty()) {
                    out.println(at + "The motor may also stay at "
                            + each.otherEquilibria().stream()
                                    .map(NumberFormat::megapascal)
                                    .collect(Collectors.joining(" or at "))
                            + " MPa: more than one steady pressure is possible.");
                }
            }
        }

        private String percent() {
            return NumberFormat.plain(100 * level, 4) + " %";
        }

        private static String stamped(Drill drill) {
            return drill.series() == Drill.Series.LETTER
                    ? Choice.word(drill.series()) + " " + drill.name()
                    : drill.series() == Drill.Series.FRACTION ? drill.name() + " in" : drill.name();
        }

        private static String predicted(Predicted value) {
            return Double.isFinite(value.high())
                    ? NumberFormat.withInterval(
                            Unit.MEGAPASCAL.fromSi(value.value()),
                            Unit.MEGAPASCAL.fromSi(value.low()),
                            Unit.MEGAPASCAL.fromSi(value.high()))
                    : megapascal(value.value()) + " (from " + megapascal(value.low()) + ", no upper limit)";
        }

        private static String millimetre(double length) {
            return NumberFormat.plain(Unit.MILLIMETRE.fromSi(length), 4);
        }
    }
}
