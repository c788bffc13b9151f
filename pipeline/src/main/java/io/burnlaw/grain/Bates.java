package io.burnlaw.grain;

import io.burnlaw.quantity.Measured;
import java.util.OptionalDouble;

/**
 * Equal hollow segments that burn at their cores and at both of their ends.
 *
 * @param segments how many, at least 1
 * @param segment  each of them
 */
public record Bates(int segments, Tube segment) implements Grain {

    public Bates {
        if (segments < 1) {
            throw new IllegalArgumentException("a grain has at least 1 segment, not " + segments);
        }
    }

    /**
     * Segments that burn at core and both ends.
     *
     * @param segments      how many
     * @param outerDiameter [m]
     * @param coreDiameter  [m]
     * @param segmentLength [m]
     */
    public Bates(int segments, Measured outerDiameter, Measured coreDiameter, Measured segmentLength) {
        this(segments, new Tube(outerDiameter, coreDiameter, segmentLength, 2));
    }

    @Override
    public double surface(double burned) {
        return segments * segment.surface(burned);
    }

    @Override
    public double volume(double burned) {
        return segments * segment.volume(burned);
    }

    @Override
    public Measured web() {
        return segment.web();
    }

    @Override
    public double burnout() {
        return segment.burnout();
    }

    @Override
    public double[] breaks() {
        return segment.breaks();
    }

    @Override
    public OptionalDouble envelope() {
        return OptionalDouble.of(segments * segment.envelope().orElseThrow());
    }

    /**
     * The same segments with their cores off the axis.
     *
     * @param offset [m], at least 0 and less than the radial web
     */
    public Bates withCoreOffset(double offset) {
        return new Bates(segments, segment.withCoreOffset(offset));
    }
}
