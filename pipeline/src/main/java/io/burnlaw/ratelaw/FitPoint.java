package io.burnlaw.ratelaw;

/**
 * A rate-pressure point as a fit sees it.
 *
 * @param cluster        points of one cluster are not independent
 * @param pressure       [Pa, absolute], above zero; for a motor the rate-averaged one
 * @param pressureStd    its standard uncertainty [Pa], at least zero
 * @param rate           [m/s], above zero
 * @param rateStd        its standard uncertainty [m/s], at least zero
 * @param systematic     the part of the rate's uncertainty that repeated firings share, relative [1], at least zero
 * @param pressureShared relative standard uncertainty of the pressure that repeated firings share, such as that of the gauge
 *                       [1]; not part of pressureStd
 * @param pressureGain   by how much the pressure moves with an error of the rate, d ln P / d ln r [1]: 0 where it was
 *                       measured, about 1 where it was worked out from the rate
 * @param lessCertain    whether its own uncertainty counts under every weighting, beside the scatter of the others
 */
public record FitPoint(
        String id,
        String cluster,
        double pressure,
        double pressureStd,
        double rate,
        double rateStd,
        double systematic,
        double pressureShared,
        double pressureGain,
        boolean lessCertain) {

    public FitPoint {
        if (!(pressure > 0
                && rate > 0
                && pressureStd >= 0
                && rateStd >= 0
                && systematic >= 0
                && pressureShared >= 0
                && pressureGain >= 0)) {
            throw new IllegalArgumentException("point " + id + ": " + rate + " m/s at " + pressure + " Pa");
        }
    }

    /** A point whose pressure was measured by a gauge without an error of its own; the components are those of the record. */
    public FitPoint(
            String id,
            String cluster,
            double pressure,
            double pressureStd,
            double rate,
            double rateStd,
            double systematic) {
        this(id, cluster, pressure, pressureStd, rate, rateStd, systematic, 0, 0, false);
    }

    /**
     * The same point with another rate and pressure of the same relative uncertainty.
     *
     * @param otherPressure [Pa, absolute]
     * @param otherRate     [m/s]
     */
    public FitPoint moved(double otherPressure, double otherRate) {
        return new FitPoint(
                id,
                cluster,
                otherPressure,
                pressureStd * otherPressure / pressure,
                otherRate,
                rateStd * otherRate / rate,
                systematic,
                pressureShared,
                pressureGain,
                lessCertain);
    }

    /**
     * What the point's own error adds to its distance from the law, relative to the rate: an error of the rate that moves
     * the pressure too runs along the law in part.
     *
     * @param slope of the law, d ln r / d ln P [1]
     * @return [1], at least zero
     */
    public double acrossStd(double slope) {
        return Math.abs(1 - slope * pressureGain) * ownRelativeStd();
    }

    /**
     * How far the point may lie off the law by chance, relative to the rate.
     *
     * @param slope     of the law [1]
     * @param scatter   of a firing about the law [1], where the weighting estimates one
     * @param estimated whether it does; if not, the point's own uncertainties take its place
     * @return [1], at least zero
     */
    public double aboutLawStd(double slope, double scatter, boolean estimated) {
        if (estimated && !lessCertain) {
            return scatter;
        }
        double own = Math.hypot(acrossStd(slope), slope * pressureStd / pressure);
        return estimated ? Math.hypot(scatter, own) : own;
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
