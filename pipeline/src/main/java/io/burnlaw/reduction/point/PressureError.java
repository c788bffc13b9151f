package io.burnlaw.reduction.point;

/**
 * The parts of the uncertainty of a point's pressure.
 *
 * @param ownStd    relative standard uncertainty from what is this firing's own, such as its zero or its throat [1]
 * @param sharedStd the same from what firings share, such as the gauge or c* [1]
 * @param gain      by how much the pressure moves when the rate is off, d ln P / d ln r [1]: 0 where it was measured, about 1
 *                  where it was worked out from the rate
 */
public record PressureError(double ownStd, double sharedStd, double gain) {

    /** Nothing is known of it. */
    public static final PressureError NONE = new PressureError(0, 0, 0);

    public PressureError {
        if (!(gain >= 0 && sharedStd >= 0 && ownStd >= 0)) {
            throw new IllegalArgumentException("gain " + gain + ", shared " + sharedStd + ", own " + ownStd);
        }
    }

    /** {@return relative standard uncertainty of the pressure apart from what the rate does to it [1]} */
    public double relativeStd() {
        return Math.hypot(ownStd, sharedStd);
    }
}
