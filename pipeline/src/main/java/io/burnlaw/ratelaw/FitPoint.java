package io.burnlaw.ratelaw;

/**
 * A rate-pressure point as a fit sees it.
 *
 * @param id          of the point
 * @param cluster     points of one cluster are not independent
 * @param pressure    [Pa, absolute], above zero; for a motor the rate-averaged one
 * @param pressureStd its standard uncertainty [Pa], at least zero
 * @param rate        [m/s], above zero
 * @param rateStd     its standard uncertainty [m/s], at least zero
 * @param systematic  the part of the rate's uncertainty that repeated firings share, relative [1], at least zero
 */
public record FitPoint(
        String id,
        String cluster,
        double pressure,
        double pressureStd,
        double rate,
        double rateStd,
        double systematic) {

    public FitPoint {
        if (!(pressure > 0 && rate > 0 && pressureStd >= 0 && rateStd >= 0 && systematic >= 0)) {
            throw new IllegalArgumentException("point " + id + ": " + rate + " m/s at " + pressure + " Pa");
        }
    }

    /**
     * The part of the rate's uncertainty that is this point's own, not shared by the others.
     *
     * @return relative [1], at least zero
     */
    public double ownRelativeStd() {
        double all = rateStd / rate;
        return Math.sqrt(Math.max(0, all * all - systematic * systematic));
    }
}
