import io.burnlaw.cli.Burnlaw;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;

/**
 * Writes the manual page and the completion of words for bash, from the commands as they are:
 * {@code java -cp burnlaw.jar InstalledTexts.java FOLDER VERSION}.
 */
final class InstalledTexts {

    private InstalledTexts() {}

    public static void main(String[] words) throws IOException {
        Path share = Path.of(words[0], "share");
        PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
        CommandLine line = Burnlaw.commandLine(nowhere, nowhere);
        StringBuilder page = new StringBuilder(".TH BURNLAW 1 \"\" \"burnlaw " + words[1] + "\" \"User Commands\"\n"
                + ".SH NAME\nburnlaw \\- burning-rate law of a solid propellant from motor firings\n");
        section(page, "DESCRIPTION", line);
        line.getSubcommands().forEach((name, command) -> section(page, "burnlaw " + name, command));
        write(share.resolve("man/man1/burnlaw.1"), page.toString());
        write(share.resolve("bash-completion/completions/burnlaw"), AutoComplete.bash("burnlaw", line));
    }

    /** What {@code --help} says, its lines as they are. */
    private static void section(StringBuilder page, String title, CommandLine command) {
        command.setUsageHelpAutoWidth(false);
        command.setUsageHelpWidth(78);
        String help = command.getUsageMessage(Ansi.OFF)
                .replace("\\", "\\e")
                .replace("-", "\\-")
                .replaceAll("(?m)^(?=[.'])", "\\\\&");
        page.append(".SH \"").append(title).append("\"\n.nf\n").append(help).append(".fi\n");
    }

    private static void write(Path file, String text) throws IOException {
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }
}
