package io.burnlaw.reduction;

/**
 * How sure a pressure is that was worked out from the rate instead of being measured.
 *
 * @param gain      by how much it moves when the rate is off, d ln P / d ln r [1]
 * @param sharedStd its relative standard uncertainty from what firings share, such as c* [1]
 * @param ownStd    the same from what is this firing's own, such as the throat [1]
 */
public record ImpliedPressure(double gain, double sharedStd, double ownStd) {

    public ImpliedPressure {
        if (!(gain >= 0 && sharedStd >= 0 && ownStd >= 0)) {
            throw new IllegalArgumentException("gain " + gain + ", shared " + sharedStd + ", own " + ownStd);
        }
    }
}
