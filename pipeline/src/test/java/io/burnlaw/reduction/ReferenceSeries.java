package io.burnlaw.reduction;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** Reads a published table of numbers from the test resources. */
public final class ReferenceSeries {

    private ReferenceSeries() {}

    /**
     * The rows below the heading.
     *
     * @param path on the class path
     * @return one array of numbers a row
     */
    public static List<double[]> rows(String path) {
        try (InputStream in = ReferenceSeries.class.getResourceAsStream(path)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#") && !line.isBlank())
                    .skip(1)
                    .map(line -> Arrays.stream(line.split(","))
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toList();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
