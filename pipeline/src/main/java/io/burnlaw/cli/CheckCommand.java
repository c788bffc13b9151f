package io.burnlaw.cli;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.characterize.CampaignCheck;
import io.burnlaw.characterize.CampaignCheck.RowCheck;
import io.burnlaw.characterize.ReadingNotes;
import io.burnlaw.cli.Burnlaw.ExitCode;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.report.OwnFolder;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Reads everything and says what is wrong, without fitting anything. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = {
            "Reads a campaign folder with all its records, and lists every problem with file, line, column and how to"
                    + " correct it. Nothing is written.",
            ""
        },
        optionListHeading = "%nOptions:%n",
        footer = {"", "Example:", "  burnlaw check my-campaign"})
final class CheckCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "CAMPAIGN", description = "folder with a campaign.yaml")
    private Path folder;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        OwnFolder.putBack(folder);
        Optional<String> stray = Stray.hint(folder);
        if (stray.isPresent()) {
            out.println(Terminal.safe("burnlaw: " + folder + ": " + stray.get()));
            return ExitCode.UNUSABLE.number();
        }
        return CampaignReader.read(folder)
                .match(campaign -> report(campaign, out), problems -> {
                    ProblemList.print(problems, out);
                    out.println("Correct these before you run the campaign.");
                    return ExitCode.UNUSABLE;
                })
                .number();
    }

    private ExitCode report(Campaign campaign, PrintWriter out) {
        out.println(Terminal.safe(campaign.title()));
        out.println("read: " + ProblemList.count(campaign.formulations().size(), "formulation") + ", "
                + ProblemList.count(campaign.firings().size(), "firing") + ", "
                + ProblemList.count(campaign.strands().size(), "strand") + ", "
                + ProblemList.count(campaign.points().size(), "point"));
        campaign.notes().forEach(note -> out.println(Terminal.safe("  " + note)));
        List<RowCheck> rows =
                CampaignCheck.of(campaign, ProgressLines.to(spec.commandLine().getErr()));
        ReadingNotes notes = new ReadingNotes();
        rows.stream().filter(row -> !row.rejected()).forEach(row -> notes.add(row.trace(), row.notes()));
        notes.merged().forEach(note -> out.println(Terminal.safe("  " + note)));
        out.println();
        List<Problem> problems = campaign.unusableRows().stream()
                .flatMap(row -> row.problems().stream())
                .toList();
        ProblemList.each(problems, out);
        FindingList.print(rows, out);
        long unread = rows.stream().filter(RowCheck::rejected).count();
        long setAside = rows.stream().filter(RowCheck::setAside).count()
                + campaign.points().stream()
                        .filter(point -> point.setAside().isPresent())
                        .count();
        long lost = campaign.unusableRows().size() + unread;
        long usable = rows.size() + campaign.points().size() - unread - setAside;
        if (lost > 0) {
            out.println(ProblemList.count(lost, "row") + " cannot be used as " + (lost == 1 ? "it is; " : "they are; ")
                    + usable + " can.");
        } else {
            out.println("Everything could be read" + (usable == 0 ? ", but there is nothing to use yet." : "."));
        }
        out.println(
                Terminal.safe(
                        usable > 0
                                ? "next: burnlaw run " + folder
                                : lost > 0
                                        ? "next: correct these, then burnlaw check " + folder
                                        : "next: put a record into traces/, its row into firings.csv, and yes into the column use"));
        return lost > 0 || usable == 0 ? ExitCode.DONE_WITH_REJECTIONS : ExitCode.DONE;
    }

    /** What was seen in the records, for a person to mend. */
    private static final class FindingList {

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
         * Prints every finding with what to do; one that stands in several records alike is printed once, with all of
         * them.
         *
         * @param rows in the order of the log
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
}
