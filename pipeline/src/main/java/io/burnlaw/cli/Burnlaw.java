package io.burnlaw.cli;

import io.burnlaw.campaign.reading.CampaignFolder;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;

/** The root of the command line. */
@Command(
        name = "burnlaw",
        mixinStandardHelpOptions = true,
        versionProvider = Burnlaw.Version.class,
        description = {
            "Finds the burning-rate law r = a P^n of a solid propellant from motor firings and strands,"
                    + " and writes a report that carries its own data.",
            ""
        },
        commandListHeading = "%nCommands:%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:all done",
            "1:done, but some firings were rejected, nothing could be fitted, or a throat was refused",
            "2:the command line or the campaign could not be used; nothing was written",
            "3:an output could not be written; the earlier one is unchanged",
            "70:a fault of the program"
        },
        footer = {
            "",
            "First steps:",
            "  burnlaw new my-campaign       make a folder to fill in",
            "  burnlaw check my-campaign     read it, say what is wrong and how to correct it",
            "  burnlaw run my-campaign       fit the law and write the report",
            "",
            "The numbers replace neither a proof test, nor distance and shelter, nor the local law"
                    + " and a licensed person."
        })
public final class Burnlaw implements Runnable {

    /** Narrower, picocli prints no help. */
    private static final int LEAST_HELP = 55;

    private static final Pattern NO_PATH =
            Pattern.compile(".*cannot convert '(.*)' to interface java\\.nio\\.file\\.Path.*", Pattern.DOTALL);

    /** Words that people try in place of a command. */
    private static final Map<String, String> TRIED = Map.ofEntries(
            Map.entry("help", "--help"),
            Map.entry("version", "--version"),
            Map.entry("fit", "run"),
            Map.entry("analyze", "run"),
            Map.entry("analyse", "run"),
            Map.entry("reduce", "run"),
            Map.entry("validate", "check"),
            Map.entry("init", "new"),
            Map.entry("create", "new"),
            Map.entry("plot", "render"),
            Map.entry("draw", "render"),
            Map.entry("predict", "plan"));

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "a command is missing");
    }

    /**
     * Runs the command line and ends the process with the exit code.
     *
     * @param arguments the words of the command line
     */
    public static void main(String[] arguments) {
        System.exit(run(arguments, System.out, System.err));
    }

    /** All of main but the end of the process. */
    static int run(String[] arguments, PrintStream results, PrintStream messages) {
        Locale.setDefault(Locale.ROOT);
        // pictures are drawn into files: no display is looked for
        System.setProperty("java.awt.headless", "true");
        List<String> typed = List.of(arguments);
        int columns = ConsoleWriter.terminalColumns();
        // the examples of a help are no hints
        boolean help = typed.contains("--help") || typed.contains("-h");
        String named = help ? "burnlaw" : ConsoleWriter.startedAs();
        boolean data = typed.contains("--json") || typed.contains("generate-completion");
        PrintWriter out =
                data ? writer(results) : ConsoleWriter.to(results, columns, named, Terminal.ansi(Terminal.OUT));
        PrintWriter err = ConsoleWriter.to(messages, columns, named, Terminal.ansi(Terminal.ERR));
        int code;
        try {
            String[] words = understood(arguments);
            CommandLine line = commandLine(out, err, List.of(words)::contains);
            line.setColorScheme(Help.defaultColorScheme(Terminal.ansi(Terminal.OUT)));
            line.setUsageHelpWidth(Math.max(LEAST_HELP, columns));
            code = line.execute(words);
        } catch (OutOfMemoryError full) {
            err.println("burnlaw: there was not enough memory; give it more with the option -Xmx2g before -jar");
            code = ExitCode.PROGRAM_FAULT.number();
        } catch (LinkageError | StackOverflowError broken) {
            code = explain(broken, err).number();
        }
        // a PrintStream keeps to itself that a disk was full
        if (out.checkError() || results.checkError()) {
            err.println(
                    "burnlaw: the results could not be printed in full: the disk is full, or the reader has ended.");
            code = Math.max(code, ExitCode.NOT_WRITTEN.number());
        }
        err.flush();
        return code;
    }

    /**
     * The words with the command that is meant, where a file or a folder is named in its place.
     *
     * @param words of the command line
     * @return the same, or with a command before them
     */
    static String[] understood(String... words) {
        if (words.length == 0 || Commands.names().contains(words[0]) || !Stray.isThere(words[0])) {
            return words;
        }
        List<String> all = new ArrayList<>(List.of(words));
        all.add(0, Stray.isRecord(words[0]) ? "record" : "run");
        return all.toArray(String[]::new);
    }

    private static PrintWriter writer(PrintStream stream) {
        return new PrintWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8), true);
    }

    /**
     * The command line with all its commands, ready to execute, as tests and the manual page use it too.
     *
     * @param err for progress and messages
     */
    public static CommandLine commandLine(PrintWriter out, PrintWriter err) {
        return commandLine(out, err, name -> true);
    }

    private static CommandLine commandLine(PrintWriter out, PrintWriter err, Predicate<String> asked) {
        CommandLine line = new CommandLine(new Burnlaw());
        Commands.addTo(line, asked);
        line.setOut(out);
        line.setErr(err);
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setAbbreviatedOptionsAllowed(false);
        line.setColorScheme(Help.defaultColorScheme(Help.Ansi.OFF));
        line.setParameterExceptionHandler((wrong, words) -> explain(wrong));
        line.setExecutionExceptionHandler(
                (fault, command, parsed) -> explain(fault, command.getErr()).number());
        return line;
    }

    private static ExitCode explain(Throwable fault, PrintWriter err) {
        if (cause(fault, InvalidPathException.class)
                && !CampaignFolder.localeAsCause().isEmpty()) {
            err.println("burnlaw: the name of a file cannot be written" + CampaignFolder.localeAsCause());
            return ExitCode.NOT_WRITTEN;
        }
        err.println(Terminal.safe("burnlaw: a fault of the program: " + fault));
        err.println("Please report it with the command and the campaign that led to it;"
                + " the option -Dburnlaw.trace=true before -jar shows where it happened.");
        if (Boolean.getBoolean("burnlaw.trace")) {
            fault.printStackTrace(err);
        }
        return ExitCode.PROGRAM_FAULT;
    }

    private static boolean cause(Throwable fault, Class<? extends Throwable> kind) {
        for (Throwable each = fault; each != null; each = each.getCause()) {
            if (kind.isInstance(each)) {
                return true;
            }
        }
        return false;
    }

    /** What is wrong; a text that one of our own types refused stands before the reason. */
    private static String words(ParameterException wrong) {
        return wrong.getArgSpec() instanceof OptionSpec option
                        && option.converters().length > 0
                        && wrong.getCause() instanceof TypeConversionException refused
                ? option.longestName() + " " + wrong.getValue() + ": " + refused.getMessage()
                : wrong.getMessage();
    }

    private static int explain(ParameterException wrong) {
        CommandLine command = wrong.getCommandLine();
        // the cause is kept in the message alone
        Matcher name = NO_PATH.matcher(wrong.getMessage());
        if (name.matches()) {
            command.getErr()
                    .println(Terminal.safe("burnlaw: " + name.group(1) + ": this cannot be the name of a file"
                            + CampaignFolder.localeAsCause()));
            return ExitCode.UNUSABLE.number();
        }
        StringBuilder message = new StringBuilder("burnlaw: ").append(OptionTypes.plain(words(wrong)));
        if (wrong instanceof UnmatchedArgumentException unmatched) {
            String tried = unmatched.getUnmatched().get(0).toLowerCase(Locale.ROOT);
            List<String> near = command.getParent() == null && TRIED.containsKey(tried)
                    ? List.of(TRIED.get(tried))
                    : unmatched.getSuggestions();
            if (!near.isEmpty()) {
                message.append(". Did you mean ")
                        .append(String.join(" or ", near.subList(0, Math.min(2, near.size()))))
                        .append('?');
            }
        }
        command.getErr().println(Terminal.safe(message.toString()));
        command.getErr().println("For all options: " + command.getCommandSpec().qualifiedName() + " --help");
        return ExitCode.UNUSABLE.number();
    }

    /** The version that the build wrote into the jar. */
    static final class Version implements IVersionProvider {

        static String number() {
            Properties properties = new Properties();
            try (InputStream in = Version.class.getResourceAsStream("version.properties")) {
                properties.load(in);
            } catch (IOException failed) {
                throw new UncheckedIOException(failed);
            }
            return properties.getProperty("version");
        }

        @Override
        public String[] getVersion() {
            return new String[] {"burnlaw " + number()};
        }
    }

    /** What the process tells its caller. */
    enum ExitCode {
        /** All done. */
        DONE(0),
        /** Done, but some firings were rejected, or nothing could be fitted for a formulation. */
        DONE_WITH_REJECTIONS(1),
        /** The command line or the campaign could not be used; nothing was written. */
        UNUSABLE(2),
        /** An output could not be written; the earlier one is as it was. */
        NOT_WRITTEN(3),
        /** A fault of the program. */
        PROGRAM_FAULT(70);

        private final int number;

        ExitCode(int number) {
            this.number = number;
        }

        int number() {
            return number;
        }

        /** {@return the graver of the two} */
        ExitCode and(ExitCode other) {
            return number >= other.number ? this : other;
        }
    }
}
