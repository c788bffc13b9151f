package io.burnlaw.cli;

import io.burnlaw.characterize.CampaignCheck.RowCheck;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import java.io.PrintWriter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What was seen in the records, for a person to mend. */
final class FindingList {

    private FindingList() {}

    private record Seen(RowCheck row, Finding finding) {
        /** What to do; nothing more where the message itself says it, for the very place. */
        private String advice() {
            return finding.message().contains("; mend it: ")
                    ? ""
                    : "\n    " + finding.code().advice();
        }

        /** What is left when the name of the record is taken out. */
        String alike() {
            // the first rows of each record differ, what is to be done does not
            return finding.code()
                    + row.problem()
                            .filter(problem -> finding.code() == FindingCode.UNREADABLE_TRACE)
                            .map(problem -> problem.what() + problem.mend() + problem.line())
                            .orElseGet(() -> finding.message().replace(row.trace(), ""));
        }

        String text() {
            boolean unreadable = finding.code() == FindingCode.UNREADABLE_TRACE
                    && row.problem().isPresent();
            if (unreadable) {
                return row.id() + ": " + row.problem().orElseThrow().text();
            }
            return row.id() + " (" + row.trace() + "): "
                    + finding.code().title().toLowerCase(Locale.ROOT) + ": "
                    + finding.message().replaceFirst("^(Most likely [^.]*\\.) ", "$1\n    ") + advice();
        }
    }

    /**
     * Prints every finding with what to do; one that stands in several records alike is printed once, with all of them.
     *
     * @param rows in the order of the log
     * @param to   where
     */
    static void print(List<RowCheck> rows, PrintWriter to) {
        Map<String, List<Seen>> alike = rows.stream()
                .flatMap(row -> row.findings().stream().map(finding -> new Seen(row, finding)))
                .collect(Collectors.groupingBy(Seen::alike, LinkedHashMap::new, Collectors.toList()));
        alike.values().forEach(same -> to.println(Terminal.safe(same.get(0).text() + also(same.stream()))));
    }

    private static String also(Stream<Seen> same) {
        String others = same.skip(1).map(seen -> seen.row().id()).collect(Collectors.joining(", "));
        return others.isEmpty() ? "" : "\n    the same in " + others;
    }
}
