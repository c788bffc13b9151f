package io.burnlaw.cli;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.characterize.CampaignResult;
import io.burnlaw.characterize.Characterizer;
import io.burnlaw.cli.Burnlaw.ExitCode;
import io.burnlaw.cli.Burnlaw.Version;
import io.burnlaw.cli.OutputFolders.Browser;
import io.burnlaw.publish.CharacterizationDocument;
import io.burnlaw.reduction.point.NumberFile;
import io.burnlaw.report.OwnFolder;
import io.burnlaw.report.ReportWriter;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.DocumentFile;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import java.util.stream.Stream;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The main job: a campaign folder becomes a law and a report. */
@Command(
        name = "run",
        mixinStandardHelpOptions = true,
        description = {
            "Reads a campaign folder, reduces every firing, fits the law and writes the report."
                    + " A firing that cannot be used is rejected with the reason; the others are used.",
            ""
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "Examples:",
            "  burnlaw run my-campaign                     into my-campaign-report",
            "  burnlaw run my-campaign -o report --open    and show it in the browser",
            "  burnlaw run spring autumn -o reports        a folder each in reports",
            "  burnlaw run my-campaign --keep-watching     again after each change",
            "  burnlaw run my-campaign --json > law.json   the document, no folder"
        })
final class RunCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "CAMPAIGN", arity = "1..*", description = "folders with a campaign.yaml")
    private List<Path> campaigns;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FOLDER",
            description = "folder of the report; with several campaigns, each gets a folder in it")
    private Optional<Path> output;

    @ArgGroup
    private Amount amount = new Amount();

    @Option(
            names = "--reproducible",
            description =
                    "leave out the creation time, so that the same input gives the same bytes; this also leaves out"
                            + " ro-crate-metadata.json, which needs a date")
    private boolean reproducible;

    @Option(
            names = "--workers",
            paramLabel = "N",
            description = "number of firings reduced at the same time; if absent, one for each core")
    private Optional<Integer> workers;

    @Mixin
    private UnitsOption units;

    @Option(names = "--open", description = "show the report in the browser when it is written")
    private boolean open;

    @Option(
            names = "--keep-watching",
            description = "run again whenever a file of the campaign changes; stop with Ctrl-C")
    private boolean keepWatching;

    /** How much is written. */
    private static final class Amount {

        @Option(names = "--json", description = "print the document on standard output and write no folder")
        private boolean json;

        @Option(names = "--data-only", description = "write the document and the tables, but no pages and no pictures")
        private boolean dataOnly;
    }

    @Override
    public Integer call() {
        checkOptions();
        if (!amount.dataOnly && !amount.json) {
            // while the campaign is read there is a core to spare
            ReportWriter.prepare();
        }
        ExitCode code = once();
        if (keepWatching) {
            return CampaignWatch.repeat(
                            campaigns, this::once, spec.commandLine().getErr())
                    .number();
        }
        return code.number();
    }

    private void checkOptions() {
        if (workers.isPresent() && workers.get() < 1) {
            throw new ParameterException(
                    spec.commandLine(), "--workers " + workers.get() + ": at least one worker is needed");
        }
        if (amount.json && keepWatching) {
            throw new ParameterException(spec.commandLine(), "--json prints one document: leave out --keep-watching");
        }
        if (output.filter(folder -> folder.toString().isBlank()).isPresent()) {
            throw new ParameterException(spec.commandLine(), "-o: the name of the folder is empty");
        }
        if (keepWatching) {
            checkWatched();
        }
        if (amount.json && campaigns.size() > 1) {
            throw new ParameterException(spec.commandLine(), "--json takes one campaign, since it prints one document");
        }
        if (amount.json && (output.isPresent() || open)) {
            throw new ParameterException(spec.commandLine(), "--json writes no folder: leave out -o and --open");
        }
    }

    /** A report that is written into the folder that is watched would start the next run, and so on without an end. */
    private void checkWatched() {
        try {
            OutputFolders.of(campaigns, output).forEach((campaign, folder) -> {
                if (OutputFolders.inside(campaign, folder)) {
                    throw new ParameterException(
                            spec.commandLine(),
                            "--keep-watching: the report, " + folder + ", would be inside the watched campaign;"
                                    + " name a folder outside with -o");
                }
            });
        } catch (OutputFolders.Refused refused) {
            throw new ParameterException(spec.commandLine(), refused.getMessage());
        }
    }

    private ExitCode once() {
        PrintWriter err = spec.commandLine().getErr();
        Map<Path, Path> folders;
        campaigns.forEach(OwnFolder::putBack);
        for (Path campaign : campaigns) {
            Optional<String> stray = Stray.hint(campaign);
            if (stray.isPresent()) {
                err.println(Terminal.safe("burnlaw: " + campaign + ": " + stray.get()));
                err.println("nothing was written.");
                return ExitCode.UNUSABLE;
            }
        }
        try {
            folders = amount.json ? Map.of(campaigns.get(0), Path.of("")) : OutputFolders.of(campaigns, output);
        } catch (OutputFolders.Refused refused) {
            err.println(Terminal.safe("burnlaw: " + refused.getMessage()));
            return ExitCode.UNUSABLE;
        }
        ExitCode worst = ExitCode.DONE;
        for (Map.Entry<Path, Path> campaign : folders.entrySet()) {
            worst = worst.and(CampaignReader.read(campaign.getKey())
                    .match(read -> characterize(read, campaign.getValue()), problems -> {
                        ProblemList.print(problems, err);
                        err.println("nothing was written.");
                        return ExitCode.UNUSABLE;
                    }));
        }
        return worst;
    }

    private ExitCode characterize(Campaign campaign, Path folder) {
        try (NumberFile courses = NumberFile.beside(folder)) {
            CampaignResult result = Characterizer.characterize(
                    campaign, workers(), ProgressLines.to(spec.commandLine().getErr()), courses);
            return publish(result, folder);
        }
    }

    private int workers() {
        return workers.orElse(Runtime.getRuntime().availableProcessors());
    }

    private ExitCode publish(CampaignResult result, Path folder) {
        PrintWriter out = units.to(spec.commandLine().getOut());
        PrintWriter err = spec.commandLine().getErr();
        Characterization document = CharacterizationDocument.result(
                result, Version.number(), DocumentsCommand.created(reproducible), !amount.dataOnly);
        if (amount.json) {
            print(document, spec.commandLine().getOut());
            return ResultTable.exitCode(document);
        }
        try {
            ReportWriter.write(
                    document,
                    folder,
                    (amount.dataOnly ? ReportWriter.Options.DATA_ONLY : ReportWriter.Options.EVERYTHING)
                            .withWorkers(workers())
                            .withUnits(units.units()));
        } catch (IOException failed) {
            err.println(Terminal.safe("burnlaw: " + failed.getMessage()));
            return ExitCode.NOT_WRITTEN;
        }
        ResultTable.print(document, out);
        Path page = folder.resolve(amount.dataOnly ? "burnlaw.json" : "index.html");
        out.println(Terminal.safe("written: " + page));
        if (open) {
            Browser.open(page, err);
        }
        return ResultTable.exitCode(document);
    }

    private static void print(Characterization document, PrintWriter out) {
        try {
            DocumentFile.write(document, out);
            out.flush();
        } catch (IOException never) {
            throw new IllegalStateException("a PrintWriter does not tell of trouble", never);
        }
    }

    /** Runs again whenever a file of a campaign changes: people add a firing and look again. */
    private static final class CampaignWatch {

        /** An export program writes a file in several pieces; so long nothing may change before it is read. */
        private static final long QUIET_MILLISECONDS = 400;

        private CampaignWatch() {}

        /**
         * Repeats until the process is ended.
         *
         * @param campaigns folders to watch, with the folders in them
         * @return the last exit code, or not-written where the folders cannot be watched
         */
        static ExitCode repeat(List<Path> campaigns, Supplier<ExitCode> run, PrintWriter err) {
            ExitCode last = ExitCode.DONE;
            // One service for all the time: what changes while a run goes on is waiting when the run is done.
            try (WatchService watch = campaigns.get(0).getFileSystem().newWatchService()) {
                while (true) {
                    for (Path campaign : campaigns) {
                        register(campaign, watch);
                    }
                    err.println("watching: runs again when the campaign changes; stop with Ctrl-C");
                    WatchKey key = watch.take();
                    while (key != null) {
                        key.pollEvents();
                        key.reset();
                        key = watch.poll(QUIET_MILLISECONDS, TimeUnit.MILLISECONDS);
                    }
                    last = run.get();
                }
            } catch (IOException failed) {
                err.println(Terminal.safe("burnlaw: the campaign cannot be watched: " + failed));
                return ExitCode.UNUSABLE;
            } catch (InterruptedException ended) {
                Thread.currentThread().interrupt();
                return last;
            }
        }

        private static void register(Path campaign, WatchService watch) throws IOException {
            try (Stream<Path> below = Files.walk(campaign, 4)) {
                for (Path folder : below.filter(Files::isDirectory).toList()) {
                    boolean report = Files.exists(folder.resolve("burnlaw.json"));
                    if (!report && !folder.getFileName().toString().startsWith(".")) {
                        folder.register(
                                watch,
                                StandardWatchEventKinds.ENTRY_CREATE,
                                StandardWatchEventKinds.ENTRY_MODIFY,
                                StandardWatchEventKinds.ENTRY_DELETE);
                    }
                }
            }
        }
    }
}
