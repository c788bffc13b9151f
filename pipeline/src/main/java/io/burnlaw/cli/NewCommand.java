package io.burnlaw.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Makes a campaign folder to fill in. */
@Command(
        name = "new",
        mixinStandardHelpOptions = true,
        description = {
            "Makes a campaign folder to fill in: campaign.yaml with remarks, a firing log that a spreadsheet opens,"
                    + " and a place for the traces.",
            ""
        },
        optionListHeading = "%nOptions:%n",
        footer = {"", "Example:", "  burnlaw new spring-campaign"})
final class NewCommand implements Callable<Integer> {

    private static final Map<String, String> FILES = files();

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FOLDER", description = "to be made; must not exist, or be empty")
    private Path folder;

    private static Map<String, String> files() {
        Map<String, String> files = new LinkedHashMap<>();
        files.put("campaign.yaml", "/io/burnlaw/cli/skeleton/campaign.yaml");
        files.put("firings.csv", "/io/burnlaw/cli/skeleton/firings.csv");
        files.put("campaign.schema.json", "/io/burnlaw/campaign/burnlaw-campaign-1.schema.json");
        files.put("traces/README.txt", "/io/burnlaw/cli/skeleton/traces/README.txt");
        return files;
    }

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        if (folder.toString().isBlank()) {
            throw new ParameterException(spec.commandLine(), "the name of the folder is empty");
        }
        try {
            if (Files.exists(folder) && !empty(folder)) {
                err.println(Terminal.safe("burnlaw: " + folder + " is there already and "
                        + (Files.isDirectory(folder) ? "not empty" : "no folder") + "; nothing was written"));
                return ExitCode.UNUSABLE.number();
            }
            make();
        } catch (FileAlreadyExistsException there) {
            err.println(Terminal.safe("burnlaw: " + there.getFile() + " is there already"));
            return ExitCode.NOT_WRITTEN.number();
        } catch (IOException failed) {
            String reason = failed instanceof FileSystemException told
                    ? told.getReason() != null
                            ? told.getReason()
                            : "the folder above it may not be written to, or is none"
                    : failed.getMessage();
            err.println(Terminal.safe("burnlaw: could not write " + folder + ": " + reason));
            return ExitCode.NOT_WRITTEN.number();
        }
        PrintWriter out = spec.commandLine().getOut();
        out.println(Terminal.safe("made " + folder));
        out.println("  campaign.yaml   say what was made and how it was measured; each line has a remark");
        out.println(
                "  firings.csv     one row a firing; opens in a spreadsheet, keep it as CSV or save it as firings.xlsx");
        out.println(
                "  campaign.schema.json   lets editors of YAML complete and check campaign.yaml; not needed otherwise");
        out.println("  traces/         put the records here, and their names into the column trace");
        out.println(Terminal.safe("then: burnlaw check " + folder));
        return ExitCode.DONE.number();
    }

    private void make() throws IOException {
        List<Path> made = new ArrayList<>();
        try {
            makeFolder(folder.resolve("traces").toAbsolutePath().normalize(), made);
            for (Map.Entry<String, String> file : FILES.entrySet()) {
                Path path = folder.resolve(file.getKey());
                try (InputStream in = NewCommand.class.getResourceAsStream(file.getValue());
                        OutputStream out = Files.newOutputStream(path, StandardOpenOption.CREATE_NEW)) {
                    made.add(path);
                    in.transferTo(out);
                }
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
