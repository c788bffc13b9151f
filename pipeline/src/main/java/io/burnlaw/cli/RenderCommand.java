package io.burnlaw.cli;

import io.burnlaw.campaign.Problem;
import io.burnlaw.cli.Burnlaw.ExitCode;
import io.burnlaw.publish.reading.PlannableNumbers;
import io.burnlaw.report.ReportWriter;
import io.burnlaw.report.document.Characterization;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Draws a report from a published document alone. */
@Command(
        name = "render",
        mixinStandardHelpOptions = true,
        description = {
            "Draws the report from a published document alone. burnlaw.json, or index.html with its"
                    + " burnlaw.json in the same folder, gives byte for byte what the run wrote. index.html alone gives a report"
                    + " without traces, and the report says so.",
            ""
        },
        optionListHeading = "%nOptions:%n",
        footer = {"", "Example:", "  burnlaw render burnlaw.json -o report"})
final class RenderCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "DOCUMENT",
            description = "burnlaw.json, an index.html that carries it, or a report's folder")
    private Path file;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FOLDER",
            required = true,
            description = "folder of the report")
    private Path output;

    @Mixin
    private UnitsOption units;

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        return OutputFolders.document(file)
                .match(read -> write(read.document(), err), refused -> {
                    err.println(Terminal.safe(refused.text()));
                    return ExitCode.UNUSABLE;
                })
                .number();
    }

    private ExitCode write(Characterization document, PrintWriter err) {
        try {
            ReportWriter.write(document, output, ReportWriter.Options.EVERYTHING.withUnits(units.units()));
            if (document.leftOut() != null) {
                err.println(Terminal.safe("burnlaw: " + file
                        + " does not contain the traces, the rates along the burns and the budgets of the firings;"
                        + " the report is drawn without them. They are in its burnlaw.json: name that"
                        + " file, or put it in the folder of the page."));
            }
            spec.commandLine().getOut().println(Terminal.safe("written: " + output.resolve("index.html")));
            return ExitCode.DONE;
        } catch (IOException failed) {
            err.println(Terminal.safe("burnlaw: " + failed.getMessage()));
            return ExitCode.NOT_WRITTEN;
        } catch (RuntimeException edited) {
            if (Boolean.getBoolean("burnlaw.trace")) {
                edited.printStackTrace();
            }
            explain(document, edited, err);
            return ExitCode.UNUSABLE;
        }
    }

    /** Any document may be handed over; what is drawn without trouble is what a run writes. */
    private void explain(Characterization document, RuntimeException edited, PrintWriter err) {
        List<Problem> problems = document.formulations().stream()
                .flatMap(each ->
                        PlannableNumbers.problems(file.toString(), each, Optional.empty(), document.campaign())
                                .stream())
                .distinct()
                .toList();
        if (!problems.isEmpty()) {
            ProblemList.print(problems, err);
            return;
        }
        // of an axis without end nothing is learned
        boolean said = edited.getClass() == IllegalArgumentException.class
                && !edited.getMessage().contains("Infinity")
                && !edited.getMessage().contains("NaN");
        String why = said ? ": " + edited.getMessage() : "";
        err.println(Terminal.safe("burnlaw: " + file + ": no run writes a document like this" + why
                + "; take an unedited one. If it is unedited, please report it."));
    }
}
