package io.burnlaw.cli;

import io.burnlaw.validation.StudyReport;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Counts what mutants were answered, and what of it was wrong. */
final class MutantTally {

    private static final Pattern WORDS_OF_JAVA =
            Pattern.compile("Exception|\\bjava\\.|JsonToken|\\bjavax\\.|com\\.fasterxml"
                    + "|org\\.apache|io\\.burnlaw|\\bat line \\d+ of class|@[0-9a-f]{6,}|\\bInfinity\\b");

    private static final Pattern GUARDED = Pattern.compile("The program failed on [^.]*");

    private final String kind;
    private final int[] codes = new int[4];
    private final Map<String, Integer> counts = new TreeMap<>();
    private final Map<String, Integer> wrong = new TreeMap<>();

    MutantTally(String kind) {
        this.kind = kind;
        for (String each : new String[] {"guarded", "law kept", "others unchanged", "check as run", "as a process"}) {
            counts.put(each, 0);
        }
    }

    void judge(Answer answer, String mutant, long seed) {
        boolean known = answer.code() >= 0 && answer.code() <= 2;
        codes[known ? answer.code() : 3]++;
        if (!known) {
            wrong(
                    "exit code " + answer.code() + " "
                            + answer.err().lines().limit(2).toList(),
                    mutant,
                    seed);
        }
        boolean data = answer.out().startsWith("{");
        String told = data ? answer.err() : answer.out() + answer.err();
        Matcher java = WORDS_OF_JAVA.matcher(told);
        // what the file said may be repeated
        if (java.find() && !mutant.contains(java.group())) {
            wrong(
                    "words of Java: "
                            + told.substring(Math.max(0, java.start() - 150), Math.min(told.length(), java.end() + 80)),
                    mutant,
                    seed);
        }
        Matcher fault = GUARDED.matcher(data ? answer.out() : told);
        if (fault.find()) {
            count("guarded");
            wrong("guarded: " + fault.group(), mutant, seed);
        }
    }

    void count(String what) {
        counts.merge(what, 1, Integer::sum);
    }

    void wrong(String what, String mutant, long seed) {
        System.out.println("WRONG " + seed + " " + mutant + " -> " + what);
        wrong.merge(what, 1, Integer::sum);
    }

    Map<String, Integer> wrong() {
        return wrong;
    }

    /** So that a study that is ended early leaves what it did. */
    void leaveNowAndThen(long seed) {
        if ((codes[0] + codes[1] + codes[2] + codes[3]) % 100 == 0) {
            leave(seed);
        }
    }

    /** Leaves a row for docs/validation.md. */
    void leave(long seed) {
        StringBuilder head = new StringBuilder("kind,seed,mutants,exit_0,exit_1,exit_2,other");
        StringBuilder row = new StringBuilder(String.format(
                Locale.ROOT,
                "%s,%d,%d,%d,%d,%d,%d",
                kind,
                seed,
                codes[0] + codes[1] + codes[2] + codes[3],
                codes[0],
                codes[1],
                codes[2],
                codes[3]));
        counts.forEach((what, count) -> {
            head.append(',').append(what.replace(' ', '_'));
            row.append(',').append(count);
        });
        int all = wrong.values().stream().mapToInt(each -> each).sum();
        StudyReport.row(kind + "-" + seed, head + ",wrong", row + "," + all);
    }
}
