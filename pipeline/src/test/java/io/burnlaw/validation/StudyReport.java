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
}
