package io.burnlaw.ratelaw;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Reads the published data sets beside the tests: comment lines, one heading row, numbers. */
final class PublishedData {

    private final List<String> headings;
    private final List<String[]> rows;

    private PublishedData(List<String> headings, List<String[]> rows) {
        this.headings = headings;
        this.rows = rows;
    }

    static PublishedData read(String name) {
        try (InputStream in = PublishedData.class.getResourceAsStream(name)) {
            List<String> lines = new ArrayList<>(new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#") && !line.isBlank())
                    .toList());
            List<String> headings = List.of(lines.remove(0).split(","));
            return new PublishedData(
                    headings, lines.stream().map(line -> line.split(",")).toList());
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    double[] column(String heading) {
        int index = headings.indexOf(heading);
        return rows.stream().mapToDouble(row -> Double.parseDouble(row[index])).toArray();
    }

    String text(String heading, int row) {
        return rows.get(row)[headings.indexOf(heading)];
    }

    /** As rate-pressure points with x for the pressure and y for the rate, each its own cluster. */
    List<FitPoint> points(String x, String y) {
        double[] pressures = column(x);
        double[] rates = column(y);
        List<FitPoint> points = new ArrayList<>();
        for (int i = 0; i < pressures.length; i++) {
            points.add(new FitPoint("p" + i, "p" + i, pressures[i], 0, rates[i], 0, 0));
        }
        return points;
    }
}
