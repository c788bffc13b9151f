package io.burnlaw.cli;

import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.campaign.reading.OneRecord;
import io.burnlaw.characterize.CampaignResult.FiringResult;
import io.burnlaw.characterize.RecordLook;
import io.burnlaw.cli.Burnlaw.ExitCode;
import io.burnlaw.cli.Burnlaw.Version;
import io.burnlaw.cli.OutputFolders.Browser;
import io.burnlaw.cli.OutputFolders.SingleFile;
import io.burnlaw.publish.RecordDocument;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.html.RecordPage;
import io.burnlaw.report.html.ReportPages;
import io.burnlaw.trace.reading.TraceReader;
import io.burnlaw.trace.reading.TraceReading;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** One record alone: is the logger's file understood, and with a grain, at which rate did it burn. */
@Command(
        name = "record",
        mixinStandardHelpOptions = true,
        description = {
            "Reads one record alone, says how it was read, and writes a page with its trace, noise, zero, events"
                    + " and findings. With a grain, it gives the rate too. Write each value with its unit.",
            ""
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "Examples:",
            "  burnlaw record shot1.csv",
            "  burnlaw record shot1.csv --json > shot1.json",
            "  burnlaw record shot1.csv --sampling \"2 kHz\" --pressure \"column 1 [psi]\"",
            "  burnlaw record shot1.csv --grain bates --segments 2 --outer-diameter \"40 mm\" --core-diameter \"16 mm\""
                    + " --segment-length \"60 mm\" --throat-diameter \"8 mm\" --density \"1.8 g/cm3\""
        })
final class RecordCommand implements Callable<Integer> {

    /** Columns of the firing log that are options here, with what they say. */
    private static final Map<String, String> COLUMNS = columns();

    private static final List<String> OF_A_GRAIN =
            List.of(("segments inhibited_ends outer_diameter core_diameter rod_diameter segment_length "
                            + "throat_diameter throat_diameter_after propellant_mass density")
                    .split(" "));

    /** Marks a page that this command wrote, which it may write over. */
    private static final String OWN = "One record without a campaign: check how the file was read.";

    private static final Pattern LINE_TO_WRITE =
            Pattern.compile("\\s*(\\w+): (\"[^\"]*\"|\\{[^}]*}|[^#\"{]*?)(\\s+#.*)?");

    private final CommandSpec spec;

    @Parameters(paramLabel = "RECORD", description = "a logger's file: text, .gz, .xlsx or .mat")
    private Path record;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "PAGE.html",
            description = "file of the page; if absent, RECORD-record.html in the current folder")
    private Optional<Path> output;

    @Option(names = "--open", description = "show the page in the browser when it is written")
    private boolean open;

    @Option(
            names = "--json",
            description = "print how the file was read and the firing as data, as in burnlaw.json; write no page")
    private boolean json;

    private RecordCommand() {
        this.spec = CommandSpec.forAnnotatedObject(this);
    }

    /** The command with an option for each column of the firing log that a single record can use. */
    static CommandSpec make() {
        CommandSpec spec = new RecordCommand().spec;
        COLUMNS.forEach((column, says) -> spec.addOption(OptionSpec.builder(option(column))
                .type(String.class)
                .paramLabel(column.substring(column.indexOf('_') + 1).toUpperCase(java.util.Locale.ROOT))
                .description(says)
                .build()));
        return spec;
    }

    private static String option(String column) {
        return "--" + column.replace('_', '-');
    }

    private static Map<String, String> columns() {
        Map<String, String> columns = new LinkedHashMap<>();
        columns.put("time", "heading of the time with its unit, such as \"t [ms]\" or \"column 1 [ms]\"");
        columns.put("sampling", "sampling of a file without a time: \"2 kHz\" or \"0.5 ms\"");
        columns.put("pressure", "heading of the pressure with its unit, such as \"column 2 [psi]\"");
        columns.put("thrust", "heading of the thrust with its unit");
        columns.put("pressure_kind", "gauge or absolute; gauge if neither you nor the file says it");
        columns.put("calibration", "pressure of raw readings, such as \"0.5 V: 0 bar; 4.5 V: 100 bar\"");
        columns.put("ambient_pressure", "ambient pressure, absolute; if absent, the standard atmosphere");
        columns.put("grain", "grain: bates, tube, rod and others, as in the firing log; then the rate is worked out");
        columns.put("segments", "number of segments of the grain; 1 if absent");
        columns.put("inhibited_ends", "number of end faces that do not burn, of all segments");
        columns.put("outer_diameter", "outer diameter of the grain");
        columns.put("core_diameter", "core diameter of the grain");
        columns.put("rod_diameter", "diameter of the rod in a rod-and-tube grain");
        columns.put("segment_length", "length of each segment");
        columns.put("throat_diameter", "throat diameter before the firing");
        columns.put("throat_diameter_after", "throat diameter after the firing");
        columns.put("exit_diameter", "exit diameter of the nozzle");
        columns.put("propellant_mass", "mass of the grain");
        columns.put("density", "density of the propellant, such as \"1.8 g/cm3\"");
        return columns;
    }

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        Map<String, String> said = said();
        if (json && (output.isPresent() || open)) {
            throw new ParameterException(spec.commandLine(), "--json writes no page: leave out -o and --open");
        }
        Path absolute = record.toAbsolutePath().normalize();
        Path name = absolute.getFileName();
        if (name == null || !Files.isRegularFile(absolute)) {
            err.println(Terminal.safe("burnlaw: " + record + ": "
                    + (Files.isDirectory(absolute)
                            ? "this is a folder: try   burnlaw check " + record
                            : "there is no such file")));
            return ExitCode.UNUSABLE.number();
        }
        OneRecord.Reading asked = OneRecord.read(absolute.getParent(), name.toString(), said);
        if (!asked.problems().isEmpty()) {
            ProblemList.print(asked.problems(), err);
            return ExitCode.UNUSABLE.number();
        }
        List<String> readAs = new ArrayList<>();
        TraceSettings settings = asked.settings();
        TraceReading reading = read(absolute, name.toString(), settings, asked.ambient());
        if (reading instanceof TraceReading.Unreadable
                && settings.pressureKind().isEmpty()) {
            settings = settings.of(PressureKind.GAUGE);
            reading = read(absolute, name.toString(), settings, asked.ambient());
            readAs.add(
                    "the pressure was read as gauge (0 in open air); if it is absolute, add --pressure-kind absolute");
        }
        if (reading instanceof TraceReading.Unreadable unreadable) {
            unreadable(unreadable, err);
            return ExitCode.UNUSABLE.number();
        }
        TraceReading.Read read = (TraceReading.Read) reading;
        read.notes()
                .forEach(note -> readAs.add(0 <= note.indexOf(": ") ? note.substring(note.indexOf(": ") + 2) : note));
        RecordLook look = RecordLook.of(read, asked.ambient(), settings);
        Optional<FiringResult> reduced = asked.campaign().map(campaign -> RecordLook.reduced(campaign, read));
        Firing firing =
                reduced.map(RecordDocument::firing).orElseGet(() -> RecordDocument.firing(look, name.toString()));
        List<RecordPage.Fact> facts = new ArrayList<>(RecordDocument.facts(look));
        reduced.map(RecordDocument::facts).ifPresent(facts::addAll);
        return written(new RecordPage(firing, readAs, facts, "burnlaw new my-campaign", Version.number()));
    }

    private Map<String, String> said() {
        Map<String, String> said = new LinkedHashMap<>();
        for (String column : COLUMNS.keySet()) {
            String value = spec.findOption(option(column)).getValue();
            if (value != null) {
                said.put(column, value);
            }
        }
        boolean grain = said.containsKey("grain");
        OF_A_GRAIN.stream()
                .filter(said::containsKey)
                .filter(column -> !grain)
                .findFirst()
                .ifPresent(column -> {
                    throw new ParameterException(
                            spec.commandLine(), option(column) + " needs a grain: add --grain bates, or another kind");
                });
        return said;
    }

    private static TraceReading read(Path file, String name, TraceSettings settings, double ambient) {
        return TraceReader.read(file.getParent(), name, name, settings, ambient);
    }

    private void unreadable(TraceReading.Unreadable unreadable, PrintWriter err) {
        Optional<Problem> problem = unreadable.problem();
        if (problem.isEmpty()) {
            unreadable.findings().forEach(finding -> err.println(Terminal.safe(finding.message())));
            return;
        }
        List<String> options = problem.get()
                .mend()
                .lines()
                .map(LINE_TO_WRITE::matcher)
                .filter(Matcher::matches)
                .filter(line -> COLUMNS.containsKey(line.group(1)))
                .map(line -> option(line.group(1)) + " " + quoted(line.group(2)))
                .toList();
        Problem told = problem.get();
        err.println(Terminal.safe(
                options.isEmpty()
                        ? told.text()
                        : new Problem(
                                        told.file(),
                                        told.line(),
                                        told.place(),
                                        told.what(),
                                        told.found(),
                                        told.expected(),
                                        "name them, with your own units:\nburnlaw record " + record + " "
                                                + String.join(" ", options))
                                .text()));
    }

    private static String quoted(String value) {
        String bare = value.replaceAll("^[\"{]|[\"}]$", "").replace(", ", "; ");
        return "\"" + bare + "\"";
    }

    private int written(RecordPage page) {
        PrintWriter out = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        if (json) {
            Map<String, Object> data = new LinkedHashMap<>();
            data.put("read_as", page.readAs());
            data.put("firing", page.firing());
            out.print(DocumentFile.text(data));
            out.flush();
            return code(page).number();
        }
        Path target = output.orElseGet(() -> Path.of(
                String.valueOf(record.getFileName()).replaceFirst("(\\.[A-Za-z0-9]{1,4})+$", "") + "-record.html"));
        try {
            if (Files.exists(target) && !own(target)) {
                err.println(Terminal.safe("burnlaw: " + target
                        + " exists already and is not a page of this command; name another with -o"));
                return ExitCode.NOT_WRITTEN.number();
            }
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            ReportPages.record(page, bytes);
            SingleFile.write(target, bytes.toByteArray());
        } catch (IOException failed) {
            err.println(Terminal.safe("burnlaw: could not write " + target + "; check the folder and its permissions"));
            return ExitCode.NOT_WRITTEN.number();
        }
        print(page, out);
        out.println(Terminal.safe("written: " + target));
        if (open) {
            Browser.open(target, err);
        }
        return code(page).number();
    }

    private static ExitCode code(RecordPage page) {
        return page.firing().status().equals("rejected") ? ExitCode.DONE_WITH_REJECTIONS : ExitCode.DONE;
    }

    private static boolean own(Path target) throws IOException {
        return Files.isRegularFile(target)
                && Files.size(target) < 1 << 24
                && new String(Files.readAllBytes(target), StandardCharsets.UTF_8).contains(OWN);
    }

    private void print(RecordPage page, PrintWriter out) {
        Firing firing = page.firing();
        out.println(Terminal.safe(firing.id()));
        page.readAs().forEach(sentence -> out.println(Terminal.safe("  " + sentence)));
        out.println();
        page.facts().forEach(fact -> out.println(Terminal.safe("  %-18s %s".formatted(fact.name(), fact.text()))));
        if (!firing.findings().isEmpty()) {
            out.println();
        }
        firing.findings()
                .forEach(finding -> out.println(Terminal.safe("  " + finding.severity() + ": " + finding.message())));
        out.println();
    }
}
