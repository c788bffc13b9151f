package io.burnlaw.validation;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Where a seeded study leaves its section of docs/validation.md. */
public final class StudyReport {

    private static final Path FOLDER = Path.of("target", "validation");

    private StudyReport() {}

    /**
     * Leaves a section.
     *
     * @param order    place among the sections, two digits, such as 20
     * @param name     of the file, kebab-case
     * @param markdown the section, beginning with a heading of the second level
     */
    public static void section(int order, String name, String markdown) {
        try {
            Files.createDirectories(FOLDER);
            Files.writeString(FOLDER.resolve(order + "-" + name + ".md"), markdown.strip() + "\n");
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /**
     * Leaves a row of a long run, to be copied to the rows that are kept.
     *
     * @param name   of the file, kebab-case
     * @param header names of its columns
     * @param row    its values
     */
    public static void row(String name, String header, String row) {
        try {
            Path folder = Files.createDirectories(Path.of("target", "long-runs"));
            Files.writeString(folder.resolve(name + ".csv"), header + "\n" + row + "\n");
            System.out.println(header + "\n" + row);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
