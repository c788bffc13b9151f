package io.burnlaw.campaign;

import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The grain as the log describes it; the package grain makes the geometry of it.
 *
 * @param kind       {@code bates}, {@code tube}, {@code end-burner}, {@code rod-and-tube} or {@code table}
 * @param segments   number of segments, 1 unless stated
 * @param inhibitedEnds for {@code bates}: how many of the end faces of all segments do not burn, 0 unless stated
 * @param dimensions name of the column without its unit, such as {@code core_diameter}, to its value [m]; with a number
 *                   behind it, such as {@code segment_length_2}, it holds for that segment alone
 * @param surface    for {@code table}: the surface at each web burned, in rising order
 * @param tableName  for {@code table}: where the surface was read from
 */
public record GrainDescription(
        String kind,
        int segments,
        int inhibitedEnds,
        Map<String, Measured> dimensions,
        List<SurfacePoint> surface,
        Optional<String> tableName) {

    public GrainDescription {
        dimensions = java.util.Collections.unmodifiableMap(new TreeMap<>(dimensions));
        surface = List.copyOf(surface);
    }

    /**
     * A grain of which every end face burns that its kind lets burn.
     *
     * @param kind       see above
     * @param dimensions name of the column to its value [m]
     * @param surface    for {@code table}
     * @param tableName  for {@code table}
     */
    public GrainDescription(
            String kind,
            int segments,
            Map<String, Measured> dimensions,
            List<SurfacePoint> surface,
            Optional<String> tableName) {
        this(kind, segments, 0, dimensions, surface, tableName);
    }

    /**
     * The same grain with other dimensions.
     *
     * @param other name of the column to its value [m]
     */
    public GrainDescription withDimensions(Map<String, Measured> other) {
        return new GrainDescription(kind, segments, inhibitedEnds, other, surface, tableName);
    }

    /** {@return the grain in words, such as 'bates, 2 segments, core diameter 14.00 mm, outer diameter 38.00 mm'} */
    public String inWords() {
        StringBuilder words = new StringBuilder(kind);
        if (segments > 1) {
            words.append(", ").append(segments).append(" segments");
        }
        if (inhibitedEnds > 0) {
            words.append(", ").append(inhibitedEnds).append(" of the ends inhibited");
        }
        dimensions.forEach((name, length) -> words.append(", ")
                .append(name.replace('_', ' '))
                .append(' ')
                .append(NumberFormat.significant(Unit.MILLIMETRE.fromSi(length.value()), 4))
                .append(" mm"));
        tableName.ifPresent(name -> words.append(", surface from ").append(name));
        return words.toString();
    }

    /**
     * Burning surface at a web burned.
     *
     * @param web     web burned [m]
     * @param surface burning surface [m2]
     */
    public record SurfacePoint(double web, double surface) {}
}
