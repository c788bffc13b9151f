package io.burnlaw.report.html;

import io.burnlaw.report.chart.ClosureChart;
import io.burnlaw.report.chart.LawChart;
import io.burnlaw.report.chart.ResidualChart;
import io.burnlaw.report.chart.Scales;
import io.burnlaw.report.chart.TracesChart;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Closure;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.Finding;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Formulation.FasterAnswer;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.MadeOnDemand;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A propellant with its pictures.
 *
 * @param anchor id of its article, safe in HTML
 * @param law the picture of its law; absent where it has no point
 * @param residuals what the law leaves; absent where there is no law
 * @param closure predicted against measured; absent where nothing was predicted
 * @param traces of its firings, one over the other; absent where there are fewer than two
 * @param worries findings of the law, gravest first
 * @param setAside how many of its firings were rejected
 * @param flagged how many of its firings were used with a caution
 * @param firings how many there are
 * @param additive what the comparison with its baseline says, in one sentence each
 */
public record FormulationView(
        Formulation formulation,
        String anchor,
        @Nullable DrawnFigure law,
        @Nullable DrawnFigure residuals,
        @Nullable DrawnFigure closure,
        @Nullable Traces traces,
        List<Finding> worries,
        long setAside,
        long flagged,
        long firings,
        List<String> additive) {

    /**
     * Overlaid traces.
     *
     * @param firings ids, in the order of the lines, as a list in JSON
     * @param webs    how far each has burned, as a list in JSON
     */
    public record Traces(DrawnFigure figure, String firings, String webs) {}

    /** Of three lines on a phone, less some for the counts of firings. */
    private static final int MOST_LETTERS = 110;

    static FormulationView of(
            Characterization document, List<Firing> firings, Formulation formulation, String anchor, Scales scales) {
        int[] own = IntStream.range(0, firings.size())
                .filter(i -> firings.get(i).formulation().equals(formulation.id()))
                .toArray();
        List<Firing> drawn =
                new MadeOnDemand<>(own.length, i -> document.firings().get(own[i]));
        Closure closure = formulation.closure();
        List<Finding> worries = new ArrayList<>(formulation.findings());
        worries.sort(Comparator.comparingInt(finding -> Words.gravity(finding.severity())));
        return new FormulationView(
                formulation,
                "propellant-" + anchor,
                formulation.points().isEmpty()
                        ? null
                        : DrawnFigure.of("law-" + anchor, LawChart.draw(formulation, drawn, scales)),
                DrawnFigure.ifAny("residuals-" + anchor, ResidualChart.draw(formulation, scales)),
                closure == null ? null : DrawnFigure.ifAny("closure-" + anchor, ClosureChart.draw(closure, scales)),
                TracesChart.draw(formulation, drawn)
                        .map(traces -> new Traces(
                                DrawnFigure.of("traces-" + anchor, traces.figure()),
                                DocumentFile.text(traces.firings()).strip(),
                                traces.webs().toString().replace(" ", "")))
                        .orElse(null),
                worries,
                count(firings, own, "rejected"),
                count(firings, own, "flagged"),
                own.length,
                document.comparisons().stream()
                        .filter(comparison -> comparison.candidate().equals(formulation.id()))
                        .map(comparison -> firstSentence(comparison.verdict()))
                        .toList());
    }

    /** The first screen has room for what came of it; how it was tested stands below. */
    private static String firstSentence(String verdict) {
        int end = verdict.indexOf(". ");
        return end < 0 ? verdict : verdict.substring(0, end + 1);
    }

    /** {@return whether the picture of the law has room for dots only} */
    public boolean crowded() {
        return LawChart.crowded(formulation);
    }

    /** {@return the pressures needed to burn faster; of the answers that it cannot be had only the first} */
    public List<FasterAnswer> faster() {
        List<FasterAnswer> answers = new ArrayList<>();
        for (FasterAnswer answer : formulation.faster()) {
            answers.add(answer);
            if (answer.pressure() == null) {
                break;
            }
        }
        return answers;
    }

    /** {@return the cautions in a few words, for a line of their own; empty where nothing stands out} */
    public String briefly() {
        List<String> words = new ArrayList<>();
        if (formulation.notFitted() != null) {
            words.add("no law");
        }
        worries.stream().map(Finding::title).distinct().forEach(words::add);
        if (setAside > 0) {
            words.add(setAside + " of " + firings + " firings rejected");
        }
        if (predictionsOff()) {
            words.add("poor predictions");
        }
        return String.join("; ", words);
    }

    /** {@return the laws that hold: of the regimes where there are several, else the single one} */
    public List<Law> laws() {
        return LawChart.laws(formulation);
    }

    /** {@return whether nothing but notes stands out} */
    public boolean calm() {
        return worries.stream().allMatch(finding -> finding.severity().equals("note"))
                && setAside == 0
                && flagged == 0
                && formulation.notFitted() == null
                && !predictionsOff();
    }

    /** {@return what to worry about in at most three lines of the first screen, counts of firings apart; empty where these are all} */
    public String verdict() {
        if (formulation.notFitted() != null) {
            return "No law: " + formulation.notFitted().reason() + " "
                    + formulation.notFitted().mend();
        }
        StringBuilder words = new StringBuilder(formulation.caution() == null ? "" : formulation.caution());
        for (Finding worry : worries) {
            boolean said = formulation.threshold() != null && worry.code().equals("slow-regime");
            if (!said && !worry.severity().equals("note")) {
                String whole = worry.title() + ": " + firstSentence(worry.message());
                boolean room = words.length() + whole.length() < MOST_LETTERS;
                words.append(words.isEmpty() ? "" : " ").append(room ? whole : worry.title() + ".");
            }
        }
        if (words.isEmpty() && setAside == 0 && flagged == 0 && !predictionsOff()) {
            words.append("No problems found. The next firing can still differ.");
        }
        return words.toString();
    }

    /** {@return how many firings gave no point or were used with a caution, in words; empty where there are none} */
    public String doubtful() {
        return Stream.of(
                        setAside == 0 ? "" : setAside + " gave no point",
                        flagged == 0 ? "" : flagged + (flagged == 1 ? " is" : " are") + " used with a caution")
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
    }

    /** {@return whether the law misses what it should give back} */
    public boolean predictionsOff() {
        Closure closure = formulation.closure();
        return closure != null && Boolean.FALSE.equals(closure.good());
    }

    private static long count(List<Firing> firings, int[] own, String status) {
        return Arrays.stream(own)
                .filter(i -> firings.get(i).status().equals(status))
                .count();
    }
}
