package io.burnlaw.ballistics;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** A table of check values in the test resources, as published: comments, one heading row, rows. */
final class ReferenceTable {

    private ReferenceTable() {}

    static List<String[]> rows(String name) {
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(ReferenceTable.class.getResourceAsStream(name), StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .toList();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
