package io.burnlaw.regime;

/**
 * The least sum of squares over the place of one break.
 *
 * @param places of the break, ascending
 * @param least  at each; infinite where it cannot lie
 */
record Profile(double[] places, double[] least) {

    /** {@return how much larger, relative to the least of all, the sum of squares is at a place} */
    double excess(int place) {
        return excess(place, lowest());
    }

    private double excess(int place, double lowest) {
        return least[place] / Math.max(lowest, Double.MIN_NORMAL) - 1;
    }

    private double lowest() {
        double lowest = Double.POSITIVE_INFINITY;
        for (double each : least) {
            lowest = Math.min(lowest, each);
        }
        return lowest;
    }

    /** {@return the allowed place that is nearest to a target} */
    int nearest(double target) {
        int best = -1;
        for (int e = 0; e < places.length; e++) {
            if (least[e] < Double.POSITIVE_INFINITY
                    && (best < 0 || Math.abs(places[e] - target) < Math.abs(places[best] - target))) {
                best = e;
            }
        }
        return best;
    }

    /** {@return the outermost place, going up or down, whose excess is within a limit} */
    int outermost(double limit, boolean upward) {
        double lowest = lowest();
        int found = -1;
        for (int e = 0; e < places.length && (upward || found < 0); e++) {
            found = excess(e, lowest) <= limit ? e : found;
        }
        return found;
    }

    /** Where the excess reaches a limit between a place inside and its neighbour outside; the place inside if never. */
    double crossing(int inside, int outside, double limit) {
        if (outside < 0 || outside >= places.length || !(least[outside] < Double.POSITIVE_INFINITY)) {
            return places[inside];
        }
        double here = excess(inside);
        double share = (limit - here) / (excess(outside) - here);
        return places[inside] + Math.max(0, Math.min(1, share)) * (places[outside] - places[inside]);
    }
}
