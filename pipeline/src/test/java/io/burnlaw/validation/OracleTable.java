package io.burnlaw.validation;

import io.burnlaw.Oracle;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.platform.commons.annotation.Testable;
import org.junit.platform.commons.support.AnnotationSupport;

/** The tests that carry {@link Oracle}, found among the compiled test classes, as a table. */
final class OracleTable {

    /**
     * One test against the outside world.
     *
     * @param test       the method
     * @param claim      its name, or its display name, as a sentence
     * @param source     of the expected values
     * @param agreement  in words
     * @param fromMemory whether the source was only remembered
     */
    record Row(Method test, String claim, String source, String agreement, boolean fromMemory) {
        String place() {
            return test.getDeclaringClass().getSimpleName() + "." + test.getName();
        }

        String topic() {
            return test.getDeclaringClass().getPackageName().split("\\.")[2];
        }
    }

    private OracleTable() {}

    /**
     * Finds them.
     *
     * @param classes folder of compiled test classes
     * @return in the order of package, class and name
     */
    static List<Row> scan(Path classes) {
        try (Stream<Path> files = Files.walk(classes)) {
            List<Row> rows = new ArrayList<>();
            files.map(classes::relativize)
                    .map(Path::toString)
                    .filter(name -> name.startsWith("io") && name.endsWith(".class"))
                    .map(name -> name.substring(0, name.length() - ".class".length())
                            .replace('/', '.')
                            .replace('\\', '.'))
                    .sorted()
                    .forEach(name -> rows.addAll(rows(name)));
            rows.sort(Comparator.comparing((Row row) -> row.topic())
                    .thenComparing(Row::place)
                    .thenComparing(row -> row.test().toGenericString()));
            return List.copyOf(rows);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private static List<Row> rows(String className) {
        try {
            Class<?> type = Class.forName(className, false, OracleTable.class.getClassLoader());
            Optional<Oracle> ofClass = Optional.ofNullable(type.getAnnotation(Oracle.class));
            List<Row> rows = new ArrayList<>();
            for (Method method : type.getDeclaredMethods()) {
                Optional<Oracle> own = Optional.ofNullable(method.getAnnotation(Oracle.class));
                if (AnnotationSupport.isAnnotated(method, Testable.class)) {
                    own.or(() -> ofClass)
                            .ifPresent(oracle -> rows.add(new Row(
                                    method, claim(method), oracle.value(), oracle.agreement(), oracle.fromMemory())));
                } else if (own.isPresent()) {
                    throw new IllegalStateException("an oracle on what is no test: " + method);
                }
            }
            return rows;
        } catch (ClassNotFoundException gone) {
            throw new IllegalStateException(gone);
        }
    }

    private static String claim(Method method) {
        DisplayName shown = method.getAnnotation(DisplayName.class);
        return shown == null ? sentence(method.getName()) : shown.value();
    }

    /** From a name in camel case: a capital that begins a lower-case word is a new word, runs of capitals stay. */
    static String sentence(String name) {
        String spaced = name.replaceAll("(?<=[a-z0-9])(?=[A-Z])", " ").replaceAll("(?<=[A-Z])(?=[A-Z][a-z])", " ");
        StringBuilder words = new StringBuilder();
        for (String word : spaced.split(" ")) {
            boolean acronym = word.length() > 1 && word.equals(word.toUpperCase(Locale.ROOT));
            words.append(words.isEmpty() ? "" : " ").append(acronym ? word : word.toLowerCase(Locale.ROOT));
        }
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    /**
     * The table in Markdown, a part for each package.
     *
     * @param rows of the table
     * @return Markdown
     */
    static String markdown(List<Row> rows) {
        Map<String, List<Row>> topics = new TreeMap<>();
        rows.forEach(row ->
                topics.computeIfAbsent(row.topic(), topic -> new ArrayList<>()).add(row));
        StringBuilder text = new StringBuilder();
        topics.forEach((topic, each) -> {
            text.append("### ").append(topic).append("\n\n");
            text.append("| check | source | agreement | test |\n| --- | --- | --- | --- |\n");
            for (Row row : each) {
                text.append("| ")
                        .append(cell(row.claim()))
                        .append(" | ")
                        .append(row.fromMemory() ? "*from memory, a soft check:* " : "")
                        .append(cell(row.source()))
                        .append(" | ")
                        .append(row.agreement().isBlank() ? "as the test says" : cell(row.agreement()))
                        .append(" | `")
                        .append(row.place())
                        .append("` |\n");
            }
            text.append('\n');
        });
        return text.toString();
    }

    private static String cell(String text) {
        return text.strip().replaceAll("\\s+", " ").replace("|", "\\|");
    }
}
