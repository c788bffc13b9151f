package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.reading.TableColumns.Column;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The corners of a port's cross-section: a table with the columns {@code x [mm], y [mm]}.
 *
 * @param x        [m]
 * @param y        [m]
 * @param problems all that is wrong with the file; the corners are complete where there are none
 */
public record PortOutlineFile(List<Double> x, List<Double> y, List<Problem> problems) {

    private static final long MOST_BYTES = 4L << 20;

    private static final int MOST_CORNERS = 5000;

    public PortOutlineFile {
        x = List.copyOf(x);
        y = List.copyOf(y);
        problems = List.copyOf(problems);
    }

    /** {@return the corners of an outline, or what is wrong} */
    public static PortOutlineFile read(Path path) {
        String name = path.toString();
        List<Problem> problems = new ArrayList<>();
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        bytes(path, problems)
                .flatMap(bytes -> CsvTable.read(name, bytes, problems))
                .ifPresent(table -> corners(table, x, y, problems));
        if (problems.isEmpty() && (x.size() < 3 || x.size() > MOST_CORNERS)) {
            problems.add(new Problem(
                    name,
                    0,
                    "",
                    "these corners do not make an outline",
                    x.size() + " corners",
                    "3 to " + MOST_CORNERS + " corners, in order round the port",
                    "add or thin the rows"));
        }
        return new PortOutlineFile(x, y, problems);
    }

    private static void corners(TableText table, List<Double> x, List<Double> y, List<Problem> problems) {
        TableColumns columns = TableColumns.of(
                table,
                List.of(
                        Column.of("x", Dimension.LENGTH).needed(),
                        Column.of("y", Dimension.LENGTH).needed()),
                problems);
        for (TableText.Line line : table.lines()) {
            TableRow row = new TableRow(columns, line);
            Optional<Measured> across = row.measured("x");
            Optional<Measured> up = row.measured("y");
            if (row.problems().isEmpty() && (across.isEmpty() || up.isEmpty())) {
                row.wrong("", "a cell is empty", "", "x and y of a corner", "fill it in or delete the row");
            }
            problems.addAll(row.problems());
            if (across.isPresent() && up.isPresent()) {
                x.add(across.get().value());
                y.add(up.get().value());
            }
        }
    }

    private static Optional<byte[]> bytes(Path path, List<Problem> problems) {
        try {
            if (Files.isRegularFile(path) && Files.size(path) <= MOST_BYTES) {
                return Optional.of(Files.readAllBytes(path));
            }
        } catch (IOException e) {
            // told below like a file that is not there
        }
        problems.add(new Problem(
                path.toString(),
                0,
                "",
                "there is no such file, or it cannot be read",
                "",
                "a table of x and y",
                "check the path"));
        return Optional.empty();
    }
}
