package io.burnlaw.cli;

import io.burnlaw.report.wording.ShownUnits;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.CommandSpec;

/**
 * Text for people on its way out: no line is longer than the terminal is wide, and hints name the command as it was
 * started. Lines to copy stay whole, since a line end would be copied with them.
 */
final class ConsoleWriter extends PrintWriter {

    /** Where nobody says how wide the terminal is. */
    static final int USUAL = 80;

    private static final int NARROWEST = 40;
    private static final char ESCAPE = 0x1b;

    private static final Pattern COMMAND = Pattern.compile(
            "(?<![\\w./:-])burnlaw(?= (?:new|check|record|run|compare|plan|render|simulate|surface-table|--help)\\b)");

    /** What stands before the text of a line, so that its second line begins below the first. */
    /** The blank between a number and its unit. */
    private static final Pattern BEFORE_UNIT = Pattern.compile(
            "(?<=\\d|\\)) (?=(?:%|[kM]?Pa|bar|psi|mm|in|mm/s|in/s|m/s|g/cm³|kg|g|kN|N|K|°C|s|ms)(?:[ .,;:)]|$))");

    /** Stands for such a blank while lines are broken. */
    private static final String KEPT = "\uE000";

    private static final Pattern LABEL =
            Pattern.compile("\\s*(?:(?:found|expected|mend it|also on)\\s+|(?:-|\\d+\\.) |\\S+(?: [a-z]+){0,3} {2,})?");

    private static final Pattern TO_COPY = Pattern.compile(
            "\\s*(?:next: .*(?:burnlaw|java -jar) .*|(?:then|written|made):? .*|java -jar .*|burnlaw .*)");

    private final int columns;
    private final ShownUnits units;

    private ConsoleWriter(Lines lines, int columns, ShownUnits units) {
        super(lines, true);
        this.columns = columns;
        this.units = units;
    }

    /**
     * A writer for people.
     *
     * @param named what a hint calls the program
     * @param ansi  whether it may have colour and bold
     */
    static ConsoleWriter to(OutputStream stream, int width, String named, Ansi ansi) {
        UnaryOperator<String> change = line -> {
            if (line.indexOf(ESCAPE) >= 0) {
                // of a help, which has its width already
                return line;
            }
            String said = COMMAND.matcher(line).replaceAll(Matcher.quoteReplacement(named));
            String fitted = said.length() <= NARROWEST ? said : wrapped(said, width);
            return ansi.enabled() ? fitted.lines().map(Terminal::emphasized).collect(Collectors.joining("\n")) : fitted;
        };
        return new ConsoleWriter(
                new Lines(new OutputStreamWriter(stream, StandardCharsets.UTF_8), change), width, ShownUnits.MPA);
    }

    /**
     * A writer in other units.
     *
     * @return the writer; a table is to be given to {@link #fitted} before
     */
    static ConsoleWriter inUnits(PrintWriter out, ShownUnits units) {
        return new ConsoleWriter(
                new Lines(out, line -> line.endsWith("|") || line.startsWith("written: ") ? line : units.text(line)),
                columns(out),
                units);
    }

    /**
     * A table as wide as the terminal, in the units of the writer.
     *
     * @param drop headings in the order in which they are left out
     */
    static String fitted(PrintWriter out, TerminalTable table, List<String> drop) {
        return table.text(columns(out), drop, out instanceof ConsoleWriter console ? console.units : ShownUnits.MPA);
    }

    /**
     * How wide a table may be.
     *
     * @return columns; no bound where the text does not go to a person
     */
    static int columns(PrintWriter out) {
        return out instanceof ConsoleWriter console ? console.columns : Integer.MAX_VALUE;
    }

    /** {@return the width of the terminal: what COLUMNS says, else what the system knows, else the usual one} */
    static int terminalColumns() {
        String stated = Optional.ofNullable(System.getenv("COLUMNS")).orElse("");
        if (stated.matches("\\d{1,4}")) {
            return Math.max(NARROWEST, Integer.parseInt(stated));
        }
        return System.console() == null
                ? USUAL
                : Math.max(
                        NARROWEST,
                        CommandSpec.create().usageMessage().autoWidth(true).width());
    }

    /** {@return how the program was started, as it can be typed again} */
    static String startedAs() {
        String jar = System.getProperty("java.class.path", "");
        boolean single = jar.endsWith(".jar")
                && !jar.contains(File.pathSeparator)
                && System.getProperty("sun.java.command", "").startsWith(jar);
        return single ? "java -jar " + (jar.contains(" ") ? '"' + jar + '"' : jar) : "burnlaw";
    }

    /** {@return a text in lines of a width, broken at blanks but not before a unit, and indented where it goes on} */
    static String wrapped(String line, int width) {
        return broken(BEFORE_UNIT.matcher(line).replaceAll(KEPT), width).replace(KEPT, " ");
    }

    private static String broken(String line, int width) {
        if (line.codePointCount(0, line.length()) <= width
                || line.endsWith("|")
                || TO_COPY.matcher(line).matches()) {
            return line;
        }
        Matcher label = LABEL.matcher(line);
        int indent = label.lookingAt() && label.end() <= width / 2 ? label.end() : 0;
        String hanging = " ".repeat(indent == 0 || line.substring(0, indent).isBlank() ? indent + 2 : indent);
        StringBuilder text = new StringBuilder();
        int from = 0;
        while (true) {
            String lead = from == 0 ? "" : hanging;
            int room = width - lead.length();
            if (line.length() - from <= room) {
                return text.append(lead).append(line, from, line.length()).toString();
            }
            int end = line.lastIndexOf(' ', from + room);
            if (end <= from + indent) {
                end = line.indexOf(' ', from + room);
            }
            if (end < 0) {
                return text.append(lead).append(line, from, line.length()).toString();
            }
            text.append(lead).append(line, from, end).append('\n');
            from = end + 1;
        }
    }

    /** Collects lines until they end. */
    private static final class Lines extends Writer {

        private final Writer to;
        private final UnaryOperator<String> change;
        private final StringBuilder line = new StringBuilder();

        private Lines(Writer to, UnaryOperator<String> change) {
            this.to = to;
            this.change = change;
        }

        @Override
        public void write(char[] text, int from, int count) throws IOException {
            for (int i = from; i < from + count; i++) {
                if (text[i] == '\n') {
                    end();
                    to.write('\n');
                } else {
                    line.append(text[i]);
                }
            }
        }

        private void end() throws IOException {
            String said = change.apply(line.toString());
            line.setLength(0);
            to.write(said);
        }

        /** A question without a line end must be seen. */
        @Override
        public void flush() throws IOException {
            if (line.length() > 0) {
                end();
            }
            to.flush();
        }

        @Override
        public void close() throws IOException {
            flush();
            to.close();
        }
    }
}
