package io.burnlaw.comparison;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * Pressures that two propellants share, without a change of law in either.
 *
 * @param low  [Pa, absolute]
 * @param high [Pa, absolute]
 */
record SharedRange(double low, double high) {

    /** A range narrower than this says nothing of its own. */
    private static final double LEAST_RATIO = 1.05;

    static List<SharedRange> of(Propellant baseline, Propellant candidate) {
        double low = Math.max(baseline.pressureLow(), candidate.pressureLow());
        double high = Math.min(baseline.pressureHigh(), candidate.pressureHigh());
        TreeSet<Double> cuts = new TreeSet<>(baseline.breaks());
        cuts.addAll(candidate.breaks());
        List<SharedRange> ranges = new ArrayList<>();
        double from = low;
        for (double cut : cuts) {
            if (cut > from && cut < high) {
                ranges.add(new SharedRange(from, cut));
                from = cut;
            }
        }
        ranges.add(new SharedRange(from, high));
        // a sliver between two breaks that mean the same change is no range
        return ranges.stream()
                .filter(each -> each.high > each.low * LEAST_RATIO)
                .toList();
    }

    double middle() {
        return Math.sqrt(low * high);
    }
}
