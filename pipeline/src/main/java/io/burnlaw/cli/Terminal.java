package io.burnlaw.cli;

import java.io.Console;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Help.Ansi.Style;

/** Text on its way to a terminal. */
final class Terminal {

    /** Number of standard output. */
    static final int OUT = 1;

    /** Number of standard error. */
    static final int ERR = 2;

    /** What is made to stand out of a line, and how. */
    private record Emphasis(Pattern of, Style colour) {}

    private static final List<Emphasis> EMPHASES = List.of(
            new Emphasis(Pattern.compile("^(?:burnlaw|Rejected|\\s+rejection)(?=:)"), Style.fg_red),
            new Emphasis(Pattern.compile("^\\s+caution(?=:)"), Style.fg_yellow),
            new Emphasis(
                    Pattern.compile("^(?:written|made|next|then|prediction check|next throat)(?=:)"
                            + "|^  [a-z]+(?:-[a-z]+)+(?=: )"
                            + "|\\br\\h=\\h[0-9.]+\\h·\\hP\\^-?[0-9.]+"),
                    Style.reset));

    private static final int MINUS = 0x2212;

    private Terminal() {}

    /**
     * Whether a person at a terminal sees what is written to a stream.
     *
     * @param stream {@link #OUT} or {@link #ERR}
     * @return false for a file or a pipe; where the system does not tell of each stream, what it tells of the program
     */
    static boolean isSeen(int stream) {
        Console console = System.console();
        if (console == null || !isTerminal(console)) {
            return false;
        }
        Path descriptor = Path.of("/proc/self/fd/" + stream);
        try {
            return !Files.isSymbolicLink(descriptor)
                    || Files.readSymbolicLink(descriptor).toString().matches("/dev/(?!null).*");
        } catch (IOException unknown) {
            return true;
        }
    }

    /** From Java 22 on there may be a console without a terminal; before, there is no such question. */
    private static boolean isTerminal(Console console) {
        try {
            return (boolean) Console.class.getMethod("isTerminal").invoke(console);
        } catch (ReflectiveOperationException earlier) {
            return true;
        }
    }

    /**
     * Whether a stream may have colour and bold: where they are seen, and neither NO_COLOR nor a terminal without them says
     * no (https://no-color.org).
     *
     * @param stream {@link #OUT} or {@link #ERR}
     */
    static Ansi ansi(int stream) {
        return Ansi.valueOf(isSeen(stream) && !"dumb".equals(System.getenv("TERM")) && Ansi.AUTO.enabled());
    }

    /**
     * A line with its words that matter in bold or colour.
     *
     * @param line without a line end
     * @return the same with escape sequences
     */
    static String emphasized(String line) {
        String text = line;
        for (Emphasis each : EMPHASES) {
            String on = Style.bold.on() + (each.colour == Style.reset ? "" : each.colour.on());
            text = each.of.matcher(text).replaceAll(found -> on + found.group() + Style.reset.off());
        }
        return text;
    }

    /**
     * The text without anything that a terminal could obey: control characters become a visible mark, and so do the
     * marks that turn the direction of writing. A minus sign becomes a hyphen: on a terminal of another character set
     * it would be lost, and a number with it its sign.
     *
     * @param text from anywhere
     * @return the text, safe to print; line ends and tabs stay
     */
    static String safe(String text) {
        StringBuilder out = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            boolean control = Character.isISOControl(c) && c != '\n' && c != '\t';
            boolean turning = c >= 0x202A && c <= 0x202E
                    || c >= 0x2066 && c <= 0x2069
                    || c == 0x200E
                    || c == 0x200F
                    || c == 0x061C;
            out.appendCodePoint(control || turning ? 0xFFFD : c == MINUS ? '-' : c);
        });
        return out.toString();
    }
}
