package io.burnlaw.cli;

import io.burnlaw.cli.Burnlaw.ExitCode;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Closure;
import io.burnlaw.report.document.Finding;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Plan;
import io.burnlaw.report.document.Plan.PlannedThroat;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.table.RateTable;
import io.burnlaw.report.table.TypedTable;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The result on a terminal: the answer for each formulation, its points, and what was rejected. */
final class ResultTable {

    private static final String POINT = "point";
    private static final String RESIDUAL = "standardized_residual";
    private static final String REMARK = "remark";

    private static final Pattern SENTENCE_END = Pattern.compile("(?<=[.?!]) (?=[A-Z]|[rn] )");

    /** More rows than these run off the screen. */
    private static final int MOST_POINTS = 60;

    /** A residual that one point in some hundred has by chance, in standard deviations. */
    private static final double FAR_OFF = 2.5;

    private ResultTable() {}

    /** Prints the result. */
    static void print(Characterization document, PrintWriter out) {
        out.println(Terminal.safe(document.campaign().title()));
        Map<String, String> cautions = new HashMap<>();
        List<Firing> rejected = new ArrayList<>();
        // once for all: each look at a firing makes it anew
        for (Firing firing : document.firings()) {
            String told = cautions(firing);
            if (!told.isEmpty()) {
                cautions.put(firing.id(), told);
            }
            if (firing.status().equals("rejected")) {
                rejected.add(firing);
            }
        }
        for (Formulation formulation : document.formulations()) {
            out.println();
            out.println(Terminal.safe(formulation.title() + " (" + formulation.id() + ")"));
            // one fact a line
            sentences(formulation.verdict()).forEach(sentence -> out.println(Terminal.safe("  " + sentence)));
            if (formulation.notFitted() != null) {
                out.println(Terminal.safe("  " + formulation.notFitted().mend()));
            }
            formulation.findings().stream()
                    .filter(finding -> !formulation.verdict().contains(finding.message()))
                    .forEach(finding -> out.println(Terminal.safe("  " + finding.code() + ": " + finding.message())));
            if (formulation.batches() != null) {
                out.println(Terminal.safe("  batches: " + formulation.batches().sentence()));
            }
            if (!formulation.points().isEmpty()) {
                table(points(RateTable.of(formulation), cautions), out);
            }
            PredictionLines.print(formulation, document, out);
        }
        PredictionLines.caution(document, out);
        ComparisonTable.sentences(document).forEach(sentence -> {
            out.println();
            out.println(Terminal.safe(sentence));
        });
        if (!rejected.isEmpty()) {
            out.println();
            out.println("Rejected:");
            rejected.forEach(firing -> out.println(Terminal.safe("  " + firing.id() + ": "
                    + firing.findings().stream()
                            .filter(finding -> finding.severity().equals("rejection"))
                            .map(finding -> finding.message().strip())
                            .collect(Collectors.joining("; ")))));
        }
        out.println();
    }

    /** {@return the sentences of a text, one after the other} */
    static List<String> sentences(String text) {
        return List.of(SENTENCE_END.split(text));
    }

    /** {@return the exit code of a result: done, or done with rejections} */
    static ExitCode exitCode(Characterization document) {
        boolean rejected =
                document.firings().stream().anyMatch(firing -> firing.status().equals("rejected") && !setAside(firing));
        boolean unfitted = document.formulations().stream().anyMatch(formulation -> formulation.singleLaw() == null);
        return rejected || unfitted ? ExitCode.DONE_WITH_REJECTIONS : ExitCode.DONE;
    }

    private static boolean setAside(Firing firing) {
        return firing.findings().stream().anyMatch(finding -> finding.code().equals(FindingCode.SET_ASIDE.code()));
    }

    /** Where there is no room for the remarks, they follow below the table. */
    private static void table(TerminalTable points, PrintWriter out) {
        String text = ConsoleWriter.fitted(out, points, List.of("residual", REMARK));
        boolean below = text.lines().anyMatch(line -> line.startsWith("columns left out: ") && line.contains(REMARK));
        out.println(Terminal.safe(
                below
                        ? ConsoleWriter.fitted(out, points, List.of(REMARK, "residual"))
                                .replaceFirst("\\ncolumns left out: .*", "")
                        : text));
        if (below) {
            List<String> remarks = points.columns().get(REMARK);
            IntStream.range(0, points.rows())
                    .filter(row -> !remarks.get(row).isEmpty())
                    .forEach(row -> out.println(
                            Terminal.safe("  " + points.columns().get(POINT).get(row) + ": " + remarks.get(row))));
        }
    }

    private static TerminalTable points(TypedTable<?> points, Map<String, String> cautions) {
        int[] rows = IntStream.range(0, points.size())
                .filter(row -> points.size() <= MOST_POINTS || standsOut(points, row, cautions))
                .limit(MOST_POINTS)
                .toArray();
        String title = rows.length == points.size()
                ? "points"
                : rows.length + " of " + points.size()
                        + " points: those with a remark or far from the law; all are in rates.csv";
        return TerminalTable.of(title, rows.length)
                .with(POINT, i -> points.words(POINT, rows[i]))
                .with("pressure [MPa]", i -> figure(points.quantity("pressure", rows[i])))
                .with("rate [mm/s]", i -> figure(points.quantity("rate", rows[i])))
                .with("residual", i -> residual(points.number(RESIDUAL, rows[i])))
                .with(REMARK, i -> remark(points, rows[i], cautions));
    }

    private static boolean standsOut(TypedTable<?> points, int row, Map<String, String> cautions) {
        Double residual = points.number(RESIDUAL, row);
        return !remark(points, row, cautions).isEmpty() || residual != null && Math.abs(residual) > FAR_OFF;
    }

    private static String figure(Quantity quantity) {
        Double std = quantity.std();
        return std == null || std == 0
                ? NumberFormat.significant(quantity.value(), 3)
                : NumberFormat.withStd(quantity.value(), std) + " ± " + NumberFormat.withStd(std, std);
    }

    private static String residual(@Nullable Double studentized) {
        return studentized == null ? "" : NumberFormat.decimals(studentized, 1);
    }

    private static String remark(TypedTable<?> points, int row, Map<String, String> cautions) {
        String reason = points.words("reason", row);
        String firing = points.words("firing", row);
        return !reason.isEmpty()
                ? "not used: " + reason
                : Stream.of(
                                points.truth("lower_grade", row) ? "lower grade" : "",
                                points.words(POINT, row).equals(firing) ? cautions.getOrDefault(firing, "") : "")
                        .filter(each -> !each.isEmpty())
                        .collect(Collectors.joining("; "));
    }

    /** What its findings caution of: whoever reads only the terminal shall see that a firing is used with a doubt. */
    private static String cautions(Firing firing) {
        return firing.findings().stream()
                .filter(finding -> finding.severity().equals("caution"))
                .map(Finding::code)
                .distinct()
                .collect(Collectors.joining(", "));
    }

    /** What a law predicts, in a short line each: how well it gives back its own firings, and the next throat. */
    private static final class PredictionLines {

        private static final String CAUTION =
                "These throats come from predictions alone. They replace neither a proof test, nor distance and"
                        + " shelter, nor the local law and a licensed person. More throats: burnlaw plan";

        private PredictionLines() {}

        /** Prints the lines of one formulation. */
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

        /** Prints what belongs beside throats, where one is named. */
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
            return Optional.of("prediction check: "
                    + ProblemList.count(closure.rows().size(), "firing")
                    + ", each predicted from the others. Median error: peak pressure " + NumberFormat.percent(peak, 2)
                    + ", mean pressure " + NumberFormat.percent(mean, 2) + ", burn time "
                    + NumberFormat.percent(time, 2));
        }

        private static String words(Plan plan) {
            PlannedThroat next = plan.next();
            if (next == null) {
                return "none; the report says why";
            }
            Double most = next.maxPressure().high();
            return NumberFormat.plain(next.throatDiameter().value(), 4) + " mm" + drill(next) + ". Predicted: mean "
                    + NumberFormat.significant(next.equilibriumPressure().value(), 3) + " MPa"
                    + (most == null || next.maxPressure().level() == null
                            ? ""
                            : ", peak at most " + NumberFormat.significant(most, 3) + " MPa ("
                                    + NumberFormat.plain(
                                            100 * next.maxPressure().level(), 4) + " %)");
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
}
