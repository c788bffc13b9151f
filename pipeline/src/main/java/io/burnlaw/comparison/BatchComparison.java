package io.burnlaw.comparison;

import io.burnlaw.batch.BatchContrast;
import io.burnlaw.batch.BatchPoint;
import io.burnlaw.comparison.Comparison.FTest;
import io.burnlaw.ratelaw.FitPoint;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Two propellants whose batches are known: a difference counts against the scatter between batches. */
final class BatchComparison implements TwoLaws {

    private final BatchContrast contrast;
    private final double middle;

    private BatchComparison(BatchContrast contrast, double middle) {
        this.contrast = contrast;
        this.middle = middle;
    }

    /**
     * Both in one mixed model.
     *
     * @param baseline  propellant
     * @param candidate propellant
     * @param pressure  in the middle of those that both share [Pa, absolute]
     * @return empty where batches are not known, or too few to tell batches from propellants
     */
    static Optional<TwoLaws> of(Propellant baseline, Propellant candidate, double pressure) {
        List<BatchPoint> first = points(baseline, pressure);
        List<BatchPoint> second = points(candidate, pressure);
        return first.isEmpty() || second.isEmpty() || !BatchContrast.possible(first, second)
                ? Optional.empty()
                : Optional.of(new BatchComparison(BatchContrast.of(first, second), StrictMath.log(pressure)));
    }

    /** None where a batch is missing. */
    private static List<BatchPoint> points(Propellant propellant, double pressure) {
        List<FitPoint> points = propellant.around(pressure);
        Map<String, String> batches = propellant.batches();
        return points.stream().allMatch(point -> batches.containsKey(point.cluster()))
                ? points.stream()
                        .map(point -> new BatchPoint(point, batches.get(point.cluster())))
                        .toList()
                : List.of();
    }

    @Override
    public double degrees() {
        return Math.max(1, contrast.freedom(middle));
    }

    @Override
    public double scatter() {
        return contrast.withinStd();
    }

    @Override
    public double slopeDifference() {
        return contrast.exponentDifference();
    }

    @Override
    public double slopeDifferenceStd() {
        return contrast.exponentStd();
    }

    @Override
    public FTest parallel() {
        double t = contrast.exponentDifference() / contrast.exponentStd();
        return FTest.of(t * t, 1, 1, Math.max(1, contrast.exponentFreedom()));
    }

    @Override
    public FTest coincident() {
        return FTest.of(2 * contrast.oneLaw(), 2, 1, degrees());
    }

    @Override
    public double differenceAt(double x) {
        return contrast.difference(x);
    }

    @Override
    public double differenceStdAt(double x) {
        return contrast.std(x);
    }

    @Override
    public double levelStd() {
        return contrast.std(middle);
    }
}
