package io.burnlaw.report.document;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A fitted power law r = a P^n.
 *
 * @param regime the trade word for it, such as {@code plateau}; absent for the single law
 * @param coefficient a in mm/s at 1 MPa
 * @param exponent n
 * @param referencePressure absolute, where rate and exponent are uncorrelated
 * @param rateAtReference the rate there
 * @param covariance of (ln rate at reference, exponent)
 * @param sharedCovariance the part of it that more firings do not shrink, such as that of the gauge; absent where there is none
 * @param pressureLow lower end of its range, absolute
 * @param pressureHigh upper end of its range, absolute
 * @param residualScatter relative standard deviation of a firing about the law [1]; where it has batches, of any batch
 * @param degreesOfFreedom of that scatter
 * @param pointsUsed how many points
 * @param intervalMethod of the intervals shown
 * @param weighting of the points
 * @param pressureErrors {@code none}, {@code effective-variance} or {@code orthogonal-distance}
 * @param unitPairs the same law in other units
 * @param intervals all methods side by side
 * @param lackOfFit where firings were repeated at one pressure
 * @param curve the law and its bands over its range
 */
public record Law(
        @Nullable String regime,
        Quantity coefficient,
        Quantity exponent,
        Quantity referencePressure,
        Quantity rateAtReference,
        List<List<Double>> covariance,
        @Nullable List<List<Double>> sharedCovariance,
        Quantity pressureLow,
        Quantity pressureHigh,
        double residualScatter,
        double degreesOfFreedom,
        int pointsUsed,
        String intervalMethod,
        String weighting,
        String pressureErrors,
        List<UnitPair> unitPairs,
        List<MethodInterval> intervals,
        @Nullable LackOfFit lackOfFit,
        List<CurvePoint> curve) {

    public Law {
        covariance = twoByTwo(covariance);
        sharedCovariance = sharedCovariance == null ? null : twoByTwo(sharedCovariance);
        unitPairs = List.copyOf(unitPairs);
        intervals = List.copyOf(intervals);
        curve = List.copyOf(curve);
    }

    /** {@return the same law without the points of its curve} */
    public Law withoutCurve() {
        return with(regime, List.of(), null, List.of());
    }

    /**
     * The same law as that of a regime.
     *
     * @param word the trade's word for it
     * @return with the word; the other methods and tests stand beside the single law only
     */
    Law called(@Nullable String word) {
        return with(word, List.of(), null, curve);
    }

    private Law with(
            @Nullable String word,
            List<MethodInterval> otherIntervals,
            @Nullable LackOfFit otherLack,
            List<CurvePoint> otherCurve) {
        return new Law(
                word,
                coefficient,
                exponent,
                referencePressure,
                rateAtReference,
                covariance,
                sharedCovariance,
                pressureLow,
                pressureHigh,
                residualScatter,
                degreesOfFreedom,
                pointsUsed,
                intervalMethod,
                weighting,
                pressureErrors,
                unitPairs,
                otherIntervals,
                otherLack,
                otherCurve);
    }

    private static List<List<Double>> twoByTwo(List<List<Double>> matrix) {
        if (matrix.size() != 2
                || matrix.stream()
                        .anyMatch(row -> row.size() != 2 || row.stream().anyMatch(Objects::isNull))) {
            throw new IllegalArgumentException("a covariance that is not two by two: " + matrix);
        }
        return List.copyOf(matrix);
    }

    /**
     * The law and its bands at one pressure.
     *
     * @param pressure MPa, absolute
     * @param rate mm/s
     * @param confidenceLow of the mean rate, mm/s
     * @param confidenceHigh of the mean rate, mm/s
     * @param predictionLow of the next firing, mm/s
     * @param predictionHigh of the next firing, mm/s
     */
    public record CurvePoint(
            double pressure,
            double rate,
            @Nullable Double confidenceLow,
            @Nullable Double confidenceHigh,
            @Nullable Double predictionLow,
            @Nullable Double predictionHigh) {}

    /**
     * Firings repeated at one pressure against the law: whether their means are further from it than their own scatter
     * explains.
     *
     * @param statistic F
     * @param numeratorDegrees degrees of freedom of the means about the law
     * @param denominatorDegrees degrees of freedom of the repeated firings about their means
     * @param pValue of so large an F if the law were right [1]
     * @param pureScatter relative standard deviation of repeated firings [1]
     */
    public record LackOfFit(
            double statistic, int numeratorDegrees, int denominatorDegrees, double pValue, double pureScatter) {}

    /**
     * The interval of coefficient and exponent by one method.
     *
     * @param method {@code student-t}, {@code profile} or {@code bootstrap-bca}
     * @param level [1]
     * @param coefficientLow mm/s at 1 MPa
     * @param coefficientHigh mm/s at 1 MPa
     * @param exponentLow [1]
     * @param exponentHigh [1]
     * @param published whether it is the one shown elsewhere
     * @param replicates of a bootstrap
     */
    public record MethodInterval(
            String method,
            double level,
            double coefficientLow,
            double coefficientHigh,
            double exponentLow,
            double exponentHigh,
            boolean published,
            @Nullable Integer replicates) {}

    /**
     * The law in a usual pair of units.
     *
     * @param pressureUnit UCUM code
     * @param rateUnit UCUM code
     * @param coefficient a of r = a P^n in these units
     * @param low lower end of its interval
     * @param high upper end of its interval
     * @param exponent n [1]
     * @param covariance of (ln coefficient, exponent) in these units
     */
    public record UnitPair(
            String pressureUnit,
            String rateUnit,
            double coefficient,
            @Nullable Double low,
            @Nullable Double high,
            double exponent,
            List<List<Double>> covariance) {

        public UnitPair {
            covariance = List.copyOf(covariance);
        }
    }
}
