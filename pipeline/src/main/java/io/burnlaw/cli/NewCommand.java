package io.burnlaw.cli;

import io.burnlaw.cli.Burnlaw.ExitCode;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.stream.Stream;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Makes a campaign folder to fill in. */
@Command(
        name = "new",
        mixinStandardHelpOptions = true,
        description = {
            "Makes a campaign folder for you to fill in: campaign.yaml with remarks, a firing log for a spreadsheet,"
                    + " and a place for the traces.",
            ""
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "Examples:",
            "  burnlaw new spring-campaign",
            "  burnlaw new spring-campaign --from my-records   a row for each record found there",
            "  burnlaw new spring-campaign --video             burns timed by video, sound or stopwatch"
        })
final class NewCommand implements Callable<Integer> {

    private static final String RESOURCES = "/io/burnlaw/cli/skeleton/";

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FOLDER", description = "folder to make; it must not exist yet, or be empty")
    private Path folder;

    @Option(
            names = "--from",
            paramLabel = "RECORDS",
            description = "folder with a logger's files; each is copied and gets a row in the log")
    private Optional<Path> from;

    @ArgGroup
    private Skeleton skeleton = new Skeleton();

    /** What was measured. */
    private static final class Skeleton {

        @Option(names = "--thrust", description = "only thrust was recorded")
        private boolean thrust;

        @Option(names = "--video", description = "burns were timed by video, sound or stopwatch, not recorded")
        private boolean video;
    }

    /** What goes into the folder, by path. */
    private Map<String, String> files(Optional<FoundRecords> found) throws IOException {
        String yaml = resource(RESOURCES + "campaign.yaml");
        String log = resource(RESOURCES + "firings.csv");
        if (skeleton.thrust) {
            yaml = yaml.replace(
                    "  # thrust: \"load [N]\"          # only where there is no pressure record: lower grade",
                    "  thrust: \"load [N]\"            # the heading of the load with its unit");
            log = log.replace(",8.03,,", ",8.03,16.0,").replace("7.00,,,", "7.00,,16.0,");
        }
        if (skeleton.video) {
            yaml = yaml.replace(
                    "    baseline: true\n",
                    "    baseline: true\n"
                            + "    # characteristic_velocity: 890 ± 30 m/s   # c*: the pressure of a timed burn follows from it\n");
            log = log.replace(",trace,", ",burn_time [s],").replaceAll("traces/example-\\d\\.csv", "3.1 ± 0.1");
        }
        if (found.isPresent()) {
            yaml = yaml.replaceFirst(
                    "(?m)^(trace:.*\n)",
                    "$1" + Matcher.quoteReplacement(found.get().open()));
            log = found.get().log(log.lines().findFirst().orElseThrow());
        }
        Map<String, String> files = new LinkedHashMap<>();
        files.put("campaign.yaml", yaml);
        files.put("firings.csv", log);
        files.put("campaign.schema.json", resource("/io/burnlaw/campaign/burnlaw-campaign-1.schema.json"));
        files.put("traces/README.txt", resource(RESOURCES + "traces/README.txt"));
        return files;
    }

    private static String resource(String name) throws IOException {
        try (InputStream in = NewCommand.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        Optional<FoundRecords> found = Optional.empty();
        if (folder.toString().isBlank()) {
            throw new ParameterException(spec.commandLine(), "the name of the folder is empty");
        }
        try {
            if (Files.exists(folder) && !empty(folder)) {
                err.println(Terminal.safe("burnlaw: " + folder + " exists already and is "
                        + (Files.isDirectory(folder) ? "not empty" : "not a folder") + "; nothing was written"));
                return ExitCode.UNUSABLE.number();
            }
            if (from.isPresent() && !Files.isDirectory(from.get())) {
                err.println(Terminal.safe(
                        "burnlaw: --from " + from.get() + ": there is no such folder; nothing was written"));
                return ExitCode.UNUSABLE.number();
            }
            if (from.isPresent()) {
                found = Optional.of(FoundRecords.in(from.get()));
                if (found.get().all().isEmpty()) {
                    err.println(Terminal.safe("burnlaw: --from " + from.get()
                            + ": the folder has no records (csv, txt, tsv, dat, log, xlsx, mat); nothing was written"));
                    return ExitCode.UNUSABLE.number();
                }
            }
            make(found);
        } catch (FileAlreadyExistsException there) {
            err.println(Terminal.safe("burnlaw: " + there.getFile() + " exists already"));
            return ExitCode.NOT_WRITTEN.number();
        } catch (IOException failed) {
            String reason = failed instanceof FileSystemException told
                    ? told.getReason() != null
                            ? told.getReason()
                            : "the folder above it is missing, or there is no permission to write to it"
                    : failed.getMessage();
            err.println(Terminal.safe("burnlaw: could not write " + folder + ": " + reason));
            return ExitCode.NOT_WRITTEN.number();
        }
        PrintWriter out = spec.commandLine().getOut();
        out.println(Terminal.safe("made " + folder));
        out.println("  campaign.yaml         the propellant, and how it was measured");
        out.println("  firings.csv           one row for each firing; fill it in with a spreadsheet");
        out.println("  campaign.schema.json  helps editors with campaign.yaml; not needed otherwise");
        out.println("  traces/               " + (found.isPresent() ? "the records" : "put the records here"));
        found.ifPresent(records -> records.all()
                .forEach(each -> out.println(Terminal.safe("    %-16s  %s".formatted(each.name(), each.summary())))));
        out.println(Terminal.safe("next: burnlaw check " + folder));
        return ExitCode.DONE.number();
    }

    private void make(Optional<FoundRecords> found) throws IOException {
        List<Path> made = new ArrayList<>();
        try {
            makeFolder(folder.resolve("traces").toAbsolutePath().normalize(), made);
            for (Map.Entry<String, String> file : files(found).entrySet()) {
                Path path = folder.resolve(file.getKey());
                try (OutputStream out = Files.newOutputStream(path, StandardOpenOption.CREATE_NEW)) {
                    made.add(path);
                    out.write(file.getValue().getBytes(StandardCharsets.UTF_8));
                }
            }
            for (FoundRecords.Found record : found.map(FoundRecords::all).orElse(List.of())) {
                Path copy = folder.resolve("traces").resolve(record.name());
                made.add(copy);
                Files.copy(record.file(), copy);
            }
        } catch (IOException full) {
            for (int i = made.size() - 1; i >= 0; i--) {
                Files.deleteIfExists(made.get(i));
            }
            throw full;
        }
    }

    private static void makeFolder(Path wanted, List<Path> made) throws IOException {
        if (!Files.isDirectory(wanted)) {
            makeFolder(wanted.getParent(), made);
            Files.createDirectory(wanted);
            made.add(wanted);
        }
    }

    private static boolean empty(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return false;
        }
        try (Stream<Path> inside = Files.list(folder)) {
            return inside.findAny().isEmpty();
        }
    }
}
