package io.burnlaw.reduction;

import io.burnlaw.reduction.point.InstantaneousRate;
import io.burnlaw.reduction.point.PressureDistribution;
import java.util.ArrayList;
import java.util.List;

/** Sorts the rates along a burn by pressure, so that a law is fitted to a dozen points and not to a whole record. */
final class AlongBins {

    private static final int MOST = 12;

    /** Narrowest bin in ln P: below this width a burn stood at one pressure. */
    private static final double NARROWEST = 0.04;

    private AlongBins() {}

    /**
     * Mean rate over a range of pressures.
     *
     * @param pressures how long at which pressure
     * @param rate      mean over that time [m/s]
     */
    record Bin(PressureDistribution pressures, double rate) {}

    /**
     * Sorts.
     *
     * @param along rates at even intervals of time
     * @return bins in rising order of pressure; none where nothing is given
     */
    static List<Bin> of(List<InstantaneousRate> along) {
        if (along.isEmpty()) {
            return List.of();
        }
        double least =
                along.stream().mapToDouble(InstantaneousRate::pressure).min().orElseThrow();
        double most =
                along.stream().mapToDouble(InstantaneousRate::pressure).max().orElseThrow();
        double range = StrictMath.log(most / least);
        int count = (int) Math.max(1, Math.min(MOST, range / NARROWEST));
        List<List<InstantaneousRate>> sorted = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            sorted.add(new ArrayList<>());
        }
        for (InstantaneousRate at : along) {
            double place = range > 0 ? StrictMath.log(at.pressure() / least) / range * count : 0;
            sorted.get((int) Math.min(count - 1.0, place)).add(at);
        }
        // A bin that the burn hurried through says little: it needs a quarter of its even share of the time.
        int enough = Math.max(1, along.size() / count / 4);
        return sorted.stream()
                .filter(bin -> bin.size() >= enough)
                .map(AlongBins::bin)
                .toList();
    }

    private static Bin bin(List<InstantaneousRate> at) {
        double[] pressure = at.stream().mapToDouble(InstantaneousRate::pressure).toArray();
        double[] duration = new double[pressure.length];
        java.util.Arrays.fill(duration, 1);
        double rate = at.stream().mapToDouble(InstantaneousRate::rate).average().orElseThrow();
        return new Bin(PressureDistribution.of(pressure, duration), rate);
    }
}
