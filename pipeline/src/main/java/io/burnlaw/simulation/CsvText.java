package io.burnlaw.simulation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** A table whose columns are only those that some row fills. */
final class CsvText {

    private final List<String> headings = new ArrayList<>();
    private final List<Map<String, String>> rows = new ArrayList<>();

    /** Columns in their order, whether filled or not. */
    CsvText(List<String> headings) {
        this.headings.addAll(headings);
    }

    /** Begins a row. */
    void row() {
        rows.add(new LinkedHashMap<>());
    }

    /** Fills a cell of the last row; a heading that is new goes to the end. */
    void cell(String heading, String text) {
        if (!headings.contains(heading)) {
            headings.add(heading);
        }
        rows.get(rows.size() - 1).put(heading, text);
    }

    /** Takes a column away, whatever its unit. */
    void drop(String name) {
        headings.removeIf(heading -> heading.equals(name) || heading.startsWith(name + " ["));
    }

    boolean isEmpty() {
        return rows.isEmpty();
    }

    String text() {
        List<String> filled = headings.stream()
                .filter(heading -> rows.stream()
                        .anyMatch(row -> !row.getOrDefault(heading, "").isEmpty()))
                .toList();
        StringBuilder text = new StringBuilder(String.join(",", filled)).append('\n');
        for (Map<String, String> row : rows) {
            text.append(filled.stream()
                            .map(heading -> quoted(row.getOrDefault(heading, "")))
                            .collect(Collectors.joining(",")))
                    .append('\n');
        }
        return text.toString();
    }

    private static String quoted(String cell) {
        return cell.matches("[^,\"\\n]*") ? cell : '"' + cell.replace("\"", "\"\"") + '"';
    }
}
