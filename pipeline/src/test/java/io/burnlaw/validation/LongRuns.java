package io.burnlaw.validation;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.function.ToLongFunction;

/**
 * Searches that take long and are therefore not repeated by the command that writes the document: mutation testing, and
 * fuzzing guided by coverage. Their rows are kept beside this class in the test resources, copied from the counters of the
 * tools, each with the day and the revision of the source it is of.
 */
final class LongRuns {

    /** Mutants of a package: how many were made, and what became of them. */
    record Mutations(
            String of,
            String which,
            long made,
            long killed,
            long timedOut,
            long survived,
            long uncovered,
            String when) {

        /** {@return share that some test noticed, by a failure or because it did not end [1]} */
        double score() {
            return (killed + timedOut) / (double) made;
        }
    }

    /** Inputs that a reader was given. */
    record Fuzzing(String target, long executions, long seconds, long findings, String when) {}

    private LongRuns() {}

    static List<Mutations> mutations() {
        return rows("mutations.csv").stream()
                .map(row -> new Mutations(
                        row.getField("package"),
                        row.getField("which"),
                        number(row, "mutants"),
                        number(row, "killed"),
                        number(row, "timed_out"),
                        number(row, "survived"),
                        number(row, "uncovered"),
                        when(row)))
                .toList();
    }

    static List<Fuzzing> fuzzing() {
        return rows("fuzzing.csv").stream()
                .map(row -> new Fuzzing(
                        row.getField("target"),
                        number(row, "executions"),
                        number(row, "seconds"),
                        number(row, "findings"),
                        when(row)))
                .toList();
    }

    /** {@return the section, in Markdown} */
    static String markdown() {
        StringBuilder text = new StringBuilder("""
                ## Long runs

                These take long and are not repeated by the command that writes this page. The rows are copied from the \
                tools' own counters, with day and revision, and are kept in \
                `pipeline/src/test/resources/io/burnlaw/validation`.

                ### Mutation testing

                Does a test notice a change of the code? PIT changes one place at a time (its default mutators: \
                conditions, arithmetic, returned values, calls left out) in the packages that make numbers, and the unit \
                tests beside the package are run; those of the studies, of whole campaigns and of the command line, and \
                tests that repeat a search or a reduction dozens of times, are not counted, so that the share of changes that \
                some test of the build notices is larger. A row speaks of the revision named in it; the tests that were \
                written since against what survived there are not in it. `mvn -B -ntp -Pmutation process-test-classes -Dmutated=regime`

                | package | which | mutants | killed | did not end | survived | never run | score | of |
                | --- | --- | ---: | ---: | ---: | ---: | ---: | ---: | --- |
                """);
        mutations()
                .forEach(row -> text.append(String.format(
                        Locale.ROOT,
                        "| %s | %s | %,d | %,d | %,d | %,d | %,d | %.1f %% | %s |%n",
                        row.of(),
                        row.which(),
                        row.made(),
                        row.killed(),
                        row.timedOut(),
                        row.survived(),
                        row.uncovered(),
                        100 * row.score(),
                        row.when())));
        text.append(String.format(Locale.ROOT, """

                ### Fuzzing

                Inputs that are changed under guidance of the code they reach (Jazzer with libFuzzer, its counters); what \
                was found is mended, and each such input is kept among the inputs that every build replays. %,d inputs in \
                all. `mvn -B -ntp -Pfuzz process-test-classes -Dfuzz.target=Trace -Dfuzz.seconds=600`

                | reader | inputs | hours | faults found and mended | of |
                | --- | ---: | ---: | ---: | --- |
                """, sum(fuzzing(), Fuzzing::executions)));
        fuzzing()
                .forEach(row -> text.append(String.format(
                        Locale.ROOT,
                        "| %s | %,d | %.2f | %d | %s |%n",
                        row.target(),
                        row.executions(),
                        row.seconds() / 3600.0,
                        row.findings(),
                        row.when())));
        return text + "\n";
    }

    static <T> long sum(List<T> rows, ToLongFunction<T> count) {
        return rows.stream().mapToLong(count).sum();
    }

    private static List<NamedCsvRecord> rows(String name) {
        try (InputStream in = LongRuns.class.getResourceAsStream(name);
                CsvReader<NamedCsvRecord> csv =
                        CsvReader.builder().ofNamedCsvRecord(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return csv.stream().toList();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private static long number(NamedCsvRecord row, String field) {
        return Long.parseLong(row.getField(field));
    }

    private static String when(NamedCsvRecord row) {
        return row.getField("day") + ", " + row.getField("revision");
    }
}
