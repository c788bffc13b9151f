package io.burnlaw.reduction;

import io.burnlaw.campaign.Campaign.ReductionSettings.Method;
import io.burnlaw.campaign.Firing;
import io.burnlaw.reduction.point.InstantaneousRate;
import io.burnlaw.reduction.point.PressureDistribution;
import io.burnlaw.reduction.point.RateBudget;
import io.burnlaw.reduction.point.RatePoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The rate-pressure points of a firing: its mean, or several along its burn, and one for a dwell at low pressure before
 * the main rise.
 */
final class FiringPoints {

    private FiringPoints() {}

    /** {@return the points, at least one} */
    static List<RatePoint> of(BurnReduction reduction) {
        Method method = reduction.settings().method();
        RateBudget budget = FiringBudget.of(reduction, method);
        Optional<String> gone = BurnedBefore.tooMuch(reduction);
        List<RatePoint> points = new ArrayList<>();
        List<AlongBins.Bin> bins = method == Method.INSTANTANEOUS ? AlongBins.of(reduction.along()) : List.of();
        for (AlongBins.Bin bin : bins) {
            String suffix = bins.size() == 1 ? "" : "-" + (points.size() + 1);
            points.add(point(
                    reduction,
                    suffix,
                    RatePoint.Source.FIRING,
                    bin.pressures(),
                    bin.rate(),
                    named(method),
                    budget,
                    gone));
        }
        if (points.isEmpty()) {
            // Nothing valid along the burn: the mean of the whole burn is still valid, and its method says so.
            Method whole = method == Method.INSTANTANEOUS ? Method.MASS_BALANCE : method;
            points.add(point(
                    reduction,
                    "",
                    RatePoint.Source.FIRING,
                    reduction.pressures(whole),
                    reduction.rate(whole),
                    named(whole),
                    budget,
                    gone));
        }
        DwellRate.of(reduction)
                .ifPresent(dwell -> points.add(point(
                        reduction,
                        "-dwell",
                        RatePoint.Source.DWELL,
                        dwell.pressures(),
                        dwell.rate(),
                        named(Method.MASS_BALANCE),
                        dwell.budget(),
                        dwell.setAside().or(() -> gone))));
        return points;
    }

    private static String named(Method method) {
        return method.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static RatePoint point(
            BurnReduction reduction,
            String suffix,
            RatePoint.Source source,
            PressureDistribution pressures,
            double rate,
            String method,
            RateBudget budget,
            Optional<String> setAside) {
        Firing row = reduction.burn().firing();
        boolean lowerGrade = reduction.pressureScale().isPresent() || source == RatePoint.Source.DWELL;
        return new RatePoint(
                row.id() + suffix,
                row.id(),
                Optional.of(row.id()),
                row.formulation(),
                source,
                pressures,
                reduction.pressureStd(pressures.powerMean(1) - row.ambientPressure()),
                rate,
                budget.relativeStd() * rate,
                budget.shared() * rate,
                row.grainTemperature(),
                method,
                lowerGrade,
                row.setAside().or(() -> setAside),
                budget.lines(),
                reduction.pressureError(pressures.powerMean(1)));
    }

    /** Sorts the rates along a burn by pressure, so that a law is fitted to a dozen points and not to a whole record. */
    static final class AlongBins {

        private static final int MOST = 12;

        /** Narrowest bin in ln P: below this width a burn was at one pressure. */
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
            double least = along.stream()
                    .mapToDouble(InstantaneousRate::pressure)
                    .min()
                    .orElseThrow();
            double most = along.stream()
                    .mapToDouble(InstantaneousRate::pressure)
                    .max()
                    .orElseThrow();
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
            double[] pressure =
                    at.stream().mapToDouble(InstantaneousRate::pressure).toArray();
            double[] duration = new double[pressure.length];
            java.util.Arrays.fill(duration, 1);
            double rate =
                    at.stream().mapToDouble(InstantaneousRate::rate).average().orElseThrow();
            return new Bin(PressureDistribution.of(pressure, duration), rate);
        }
    }
}
