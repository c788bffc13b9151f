package io.burnlaw.regime;

import io.burnlaw.ratelaw.FitPoint;
import java.util.List;
import java.util.Optional;

/**
 * Finds out how many power laws rate-pressure points follow, where one gives way to the next, and how sure that is.
 *
 * <p>In ln r over ln P, pieces that are joined or jump at their breaks are fitted by exact least squares. Starting from
 * one law, each count is tested against the next by a seeded bootstrap of the largest F; the first count that is not
 * rejected stands. Joined against jumping is then decided by a test of the same kind, and every rival explanation is
 * laid beside the breaks. Points at an end that plainly follow another law, but are too few for one, are set apart first
 * and reported. Derivation and sources: docs/methods.md, Regimes and thresholds.
 */
public final class RegimeSearch {

    private RegimeSearch() {}

    /**
     * Searches.
     *
     * @param points  rate-pressure points, in any order; points of one cluster in order of time
     * @param options how
     * @return the laws, breaks, evidence and findings
     * @throws IllegalArgumentException if there are fewer than two different pressures: nothing to fit, as
     *                                  {@code RateLawFit} says in words
     */
    public static Regimes search(List<FitPoint> points, RegimeOptions options) {
        if (points.stream().mapToDouble(FitPoint::pressure).distinct().count() < 2) {
            throw new IllegalArgumentException(points.size() + " points at fewer than two pressures");
        }
        Optional<LoneEnd.Parted> parted = LoneEnd.find(points, options);
        List<FitPoint> rest = parted.map(LoneEnd.Parted::rest).orElse(points);
        Sample sample = Sample.of(rest, options.weighting(), options.systematicFloor());
        Selection selection = new Selector(sample, options).select();
        return RegimeReport.of(sample, options, selection, parted.map(LoneEnd.Parted::apart));
    }
}
