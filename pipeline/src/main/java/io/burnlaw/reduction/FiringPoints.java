package io.burnlaw.reduction;

import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.ReductionSettings.Method;
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

    /**
     * Makes the points.
     *
     * @param reduction of the burn
     * @return at least one
     */
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
            // Nothing valid along the burn: the mean of the whole burn still stands, and says so by its method.
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
}
