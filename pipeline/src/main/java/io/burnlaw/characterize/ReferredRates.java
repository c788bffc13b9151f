package io.burnlaw.characterize;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.ratelaw.FitOptions;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.TemperatureFit;
import io.burnlaw.ratelaw.TemperatureFit.PointAtTemperature;
import io.burnlaw.ratelaw.TemperatureResult;
import io.burnlaw.reduction.point.RatePoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Rates brought to one temperature, where firings at several temperatures tell how. */
record ReferredRates(List<FitPoint> points, Optional<TemperatureResult> sensitivity) {

    ReferredRates {
        points = List.copyOf(points);
    }

    /**
     * Brings the rates to the reference temperature. Where a temperature is missing, or all are alike, or nothing can be
     * told from them, the rates stay as they are.
     *
     * @param campaign with the reference temperature; where it states none, the median of the firings' is taken
     * @param used     points that are fitted
     * @param points   the same as the fit sees them
     * @param options  of the fit
     * @return the points to fit
     */
    static ReferredRates of(Campaign campaign, List<RatePoint> used, List<FitPoint> points, FitOptions options) {
        if (used.isEmpty()
                || used.stream().anyMatch(point -> point.temperature().isEmpty())) {
            return new ReferredRates(points, Optional.empty());
        }
        double[] temperatures = used.stream()
                .mapToDouble(point -> point.temperature().getAsDouble())
                .sorted()
                .toArray();
        double reference = campaign.referenceTemperature().orElse(temperatures[temperatures.length / 2]);
        List<PointAtTemperature> at = new ArrayList<>();
        for (int i = 0; i < used.size(); i++) {
            at.add(new PointAtTemperature(
                    points.get(i), used.get(i).temperature().getAsDouble()));
        }
        TemperatureResult sensitivity = TemperatureFit.fit(at, reference, options.weighting(), options.level());
        return new ReferredRates(
                sensitivity
                        .estimated()
                        .map(TemperatureResult.Estimated::referred)
                        .orElse(points),
                Optional.of(sensitivity));
    }
}
