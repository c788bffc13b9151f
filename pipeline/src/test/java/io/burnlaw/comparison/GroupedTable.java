package io.burnlaw.comparison;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Published data: a group, an abscissa and an ordinate in each row, comments and one heading before them. */
record GroupedTable(List<Row> rows) {

    record Row(String group, double x, double y) {}

    static GroupedTable read(String resource) {
        try (InputStream stream = GroupedTable.class.getResourceAsStream(resource)) {
            return new GroupedTable(new String(stream.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> line.split(","))
                    .map(cells -> new Row(cells[0], Double.parseDouble(cells[1]), Double.parseDouble(cells[2])))
                    .toList());
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    List<Row> of(String group) {
        return rows.stream().filter(row -> row.group().equals(group)).toList();
    }

    LogLine line(String group) {
        List<Row> mine = of(group);
        return LogLine.of(
                mine.stream().mapToDouble(Row::x).toArray(),
                mine.stream().mapToDouble(Row::y).toArray(),
                mine.stream().mapToDouble(row -> 1).toArray(),
                mine.size());
    }
}
