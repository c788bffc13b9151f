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
import java.util.stream.Collectors;

/**
 * Searches that take long and are therefore not repeated by the command that writes the document: mutation testing,
 * fuzzing guided by coverage, mutants of whole campaigns, kills. Their rows are kept beside this class in the test
 * resources, copied from the counters of the tools, each with the day and the revision of the source it is of.
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

    private static final List<String> MUTANT_COUNTS = List.of(
            "mutants",
            "exit_0",
            "exit_1",
            "exit_2",
            "other",
            "law_kept",
            "others_unchanged",
            "check_as_run",
            "as_a_process",
            "guarded",
            "wrong");

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

    /** {@return rows that MutantsIT left, with revision and day} */
    static List<NamedCsvRecord> mutants() {
        return rows("mutants.csv");
    }

    /** {@return rows that KilledRunIT and SafeFilesIT left, with revision and day} */
    static List<NamedCsvRecord> kills() {
        return rows("kills.csv");
    }

    /** {@return the section, in Markdown} */
    static String markdown() {
        StringBuilder text = new StringBuilder("""
                ## Long runs

                These take long, and the command that writes this page does not repeat them. The rows are copied \
                from the tools' own counters, with day and revision, and are kept in \
                `pipeline/src/test/resources/io/burnlaw/validation`.

                ### Mutation testing

                This asks whether a test notices a change of the code. PIT changes one place at a time (its default mutators: \
                conditions, arithmetic, returned values, calls left out) in the packages that make numbers, and the unit \
                tests beside the package are run; those of the studies, of whole campaigns and of the command line, and \
                tests that repeat a search or a reduction dozens of times, are not counted, so that the share of changes that \
                some test of the build notices is larger. A row is for the revision named in it; it does not include tests that were written later against \
                the survivors. `mvn -B -ntp -Pmutation process-test-classes -Dmutated=regime`

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

                Inputs are changed, guided by the code that they reach (Jazzer with libFuzzer, its counters). \
                Faults that were found are corrected, and each such input is among the inputs that every build \
                replays. %,d inputs in \
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
        text.append(String.format(Locale.ROOT, """

                ### Mutants of campaigns and documents

                Whole campaigns and documents, changed by a seed: cells, columns, units, records, keys, bytes, files, and \
                values of a burnlaw.json. They go through the main of the built jar, in one process that answers many \
                commands (`run`, `check`, `plan`; for documents `render`, `compare`, `plan`), or as a process each. The exit code is 0, 1 or 2, and no Java exception is printed; a campaign with the same meaning \
                in another notation gives the same law to a millionth; \
                firings that were not changed are not changed in the answer; `check` names as many rows as `run` rejects; and \
                the guard around firings, strands, laws, comparisons and plans catches no fault of the program. Faults that such mutants found are corrected and have their own tests (`HostileNumbersTest`, `GuardedFaultsTest`); a row ends before \
                the first mutant that the guard caught, and the search went on with the corrected program. Of `campaigns` half are \
                run or planned and half checked; `checks` are checked, and every twentieth is run. %,d mutants in all. `mvn -B -ntp verify -Dit.test=MutantsIT -Dburnlaw.mutants=20000`

                | kind | from seed | mutants | exit 0 | exit 1 | exit 2 | other | same meaning, same law | others unchanged | \
                check as run | processes | guarded | wrong | of |
                | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | --- |
                """, sum(mutants(), row -> number(row, "mutants"))));
        mutants()
                .forEach(row -> text.append("| ")
                        .append(row.getField("kind"))
                        .append(" | ")
                        .append(row.getField("seed"))
                        .append(MUTANT_COUNTS.stream()
                                .map(field -> String.format(Locale.ROOT, " | %,d", number(row, field)))
                                .collect(Collectors.joining()))
                        .append(" | ")
                        .append(when(row))
                        .append(" |\n"));
        text.append("""

                ### Kills, and two runs at once

                A run that writes over an earlier report is killed, at random or at the step named; or two runs write one \
                folder at the same time. `mvn -B -ntp verify -Dit.test=KilledRunIT,SafeFilesIT -Dburnlaw.kills=200`

                | what | times | outcome | of |
                | --- | ---: | --- | --- |
                """);
        kills().forEach(row -> text.append(String.format(
                Locale.ROOT,
                "| %s | %,d | %s | %s |%n",
                row.getField("kind"),
                number(row, "times"),
                row.getField("outcome"),
                when(row))));
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

    static long number(NamedCsvRecord row, String field) {
        return Long.parseLong(row.getField(field));
    }

    private static String when(NamedCsvRecord row) {
        return row.getField("day") + ", " + row.getField("revision");
    }
}
