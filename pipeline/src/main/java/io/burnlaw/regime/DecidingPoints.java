package io.burnlaw.regime;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import java.util.ArrayList;
import java.util.List;

/**
 * Points on which the answer hangs.
 *
 * @param off       ids of the points that belong to no law
 * @param sentences what the search would find otherwise, where that differs
 */
record DecidingPoints(List<String> off, List<String> sentences) {

    DecidingPoints {
        off = List.copyOf(off);
        sentences = List.copyOf(sentences);
    }

    DecidingPoints(List<String> off) {
        this(off, List.of());
    }

    DecidingPoints withOff(String found, String otherwise) {
        return with(Words.points(off) + (off.size() == 1 ? " is" : " are")
                + " far from every law and not counted: the other points follow " + found + ". With "
                + (off.size() == 1 ? "it" : "them") + " the search finds " + otherwise + ". Fire "
                + (off.size() == 1 ? "that motor" : "those motors") + " again: "
                + (off.size() == 1 ? "that point decides" : "those points decide") + " the answer.");
    }

    DecidingPoints withCautioned(List<String> doubted, String found, String otherwise) {
        return with("The answer, " + found + ", depends on firings with a caution: without " + Words.points(doubted)
                + ", the search finds " + otherwise + ".");
    }

    private DecidingPoints with(String sentence) {
        List<String> more = new ArrayList<>(sentences);
        more.add(sentence);
        return new DecidingPoints(off, more);
    }

    List<Finding> findings() {
        return sentences.stream()
                .map(sentence -> Finding.of(FindingCode.FEW_FIRINGS_DECIDE, sentence))
                .toList();
    }

    /** {@return what the evidence says about these points; empty where there are none} */
    String words() {
        if (!sentences.isEmpty()) {
            return " " + String.join(" ", sentences);
        }
        return off.isEmpty()
                ? ""
                : " " + Words.points(off) + (off.size() == 1 ? " is" : " are")
                        + " far from every law; that does not change the answer.";
    }
}
