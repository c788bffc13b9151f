package io.burnlaw.regime;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;

/** A published table of numbers: comment lines, a heading, rows. */
final class Table {

    private Table() {}

    static List<double[]> read(String name) {
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(Table.class.getResourceAsStream(name), StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#") && !line.isBlank())
                    .skip(1)
                    .map(line -> java.util.Arrays.stream(line.split(","))
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toList();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /** The first two columns, in the order of the first. */
    static Sample sample(String name) {
        List<double[]> rows = read(name).stream()
                .sorted(Comparator.<double[]>comparingDouble(row -> row[0]).thenComparingDouble(row -> row[1]))
                .toList();
        return Sample.of(
                rows.stream().mapToDouble(row -> row[0]).toArray(),
                rows.stream().mapToDouble(row -> row[1]).toArray());
    }
}
