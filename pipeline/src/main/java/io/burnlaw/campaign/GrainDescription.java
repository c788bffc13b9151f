package io.burnlaw.campaign;

import io.burnlaw.quantity.Measured;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The grain as the log describes it; the package grain makes the geometry of it.
 *
 * @param kind       {@code bates}, {@code tube}, {@code end-burner}, {@code rod-and-tube} or {@code table}
 * @param segments   number of equal segments, 1 unless stated
 * @param dimensions name of the column without its unit, such as {@code core_diameter}, to its value [m]
 * @param surface    for {@code table}: the surface at each web burned, in rising order
 * @param tableName  for {@code table}: where the surface was read from
 */
public record GrainDescription(
        String kind,
        int segments,
        Map<String, Measured> dimensions,
        List<SurfacePoint> surface,
        Optional<String> tableName) {

    public GrainDescription {
        dimensions = java.util.Collections.unmodifiableMap(new TreeMap<>(dimensions));
        surface = List.copyOf(surface);
    }

    /**
     * Burning surface at a web burned.
     *
     * @param web     web burned [m]
     * @param surface burning surface [m2]
     */
    public record SurfacePoint(double web, double surface) {}
}
