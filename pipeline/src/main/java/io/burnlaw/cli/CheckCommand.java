package io.burnlaw.cli;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.CampaignReader;
import io.burnlaw.campaign.Problem;
import io.burnlaw.characterize.CampaignCheck;
import io.burnlaw.characterize.CampaignCheck.RowCheck;
import io.burnlaw.characterize.ReadingNotes;
import io.burnlaw.report.OwnFolder;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
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
                    + " mend it. Nothing is written.",
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
                .match(read -> report(read.campaign(), out), unusable -> {
                    ProblemList.print(unusable.problems(), out);
                    out.println("The campaign cannot be run before these are mended.");
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
                                        ? "next: mend these, then burnlaw check " + folder
                                        : "next: put a record into traces/, its row into firings.csv, and yes into the column use"));
        return lost > 0 || usable == 0 ? ExitCode.DONE_WITH_REJECTIONS : ExitCode.DONE;
    }
}
