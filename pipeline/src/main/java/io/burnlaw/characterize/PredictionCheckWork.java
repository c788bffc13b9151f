package io.burnlaw.characterize;

import io.burnlaw.characterize.FiredMotor.Fired;
import io.burnlaw.prediction.IgnitionSpike;
import io.burnlaw.prediction.LeaveOneOut;
import io.burnlaw.prediction.LeaveOneOut.MeasuredFiring;
import io.burnlaw.prediction.PredictionCheck;
import io.burnlaw.quantity.Measured;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.TemperatureFit.TemperatureResult;
import io.burnlaw.reduction.Reduction;
import io.burnlaw.reduction.point.NumberStore;
import io.burnlaw.reduction.point.RatePoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** How well the law of one formulation gives back the firings that it was made from. */
final class PredictionCheckWork {

    private PredictionCheckWork() {}

    /**
     * Predicts each firing whose point the law was fitted to from the others.
     *
     * @param fired  its firings that gave a rate
     * @param store  where predicted records are kept
     * @return the closure, or why there is none
     */
    static PredictionCheck of(FormulationResult result, List<Fired> fired, NumberStore store) {
        if (result.laws().isEmpty()) {
            return none("there is no law to predict it with.");
        }
        if (fired.isEmpty()) {
            return none("the points come from no motor, and only a motor can be fired again.");
        }
        if (result.characteristicVelocity().isEmpty()) {
            return none("the log has no propellant mass and the campaign no c*, so the pressure cannot be worked out."
                    + " Weigh the grains.");
        }
        double velocity = result.characteristicVelocity().get().value();
        Set<String> fitted = result.lawPoints().stream().map(FitPoint::id).collect(Collectors.toSet());
        Set<String> believed = PooledVelocity.believed(fired, Fired::reduced).stream()
                .map(each -> each.row().id())
                .collect(Collectors.toSet());
        List<MeasuredFiring> firings = new ArrayList<>();
        List<String> outside = new ArrayList<>();
        for (Fired each : fired) {
            if (fitted.contains(each.reduced().points().get(0).id())) {
                if (each.reduced().timed()) {
                    outside.add(
                            each.row().id() + ": it was timed and not recorded, so there is no pressure to compare");
                } else if (dwelt(each)) {
                    outside.add(each.row().id()
                            + ": it burned at a low pressure first, and part of its web was gone before the main rise");
                } else if (!believed.contains(each.row().id())) {
                    outside.add(each.row().id() + ": its c* is impossible, so its mass, throat or pressure is wrong");
                } else {
                    measured(each, result, velocity).ifPresent(firings::add);
                }
            }
        }
        return LeaveOneOut.of(result.laws().orElseThrow(), result.lawPoints(), firings, outside, store);
    }

    private static boolean dwelt(Fired fired) {
        return fired.reduced().points().stream().anyMatch(point -> point.source() == RatePoint.Source.DWELL);
    }

    private static PredictionCheck none(String reason) {
        return new PredictionCheck.NotPredicted("No firing was predicted: " + reason);
    }

    private static Optional<MeasuredFiring> measured(Fired fired, FormulationResult result, double velocity) {
        Reduction.Reduced reduced = fired.reduced();
        return FiredMotor.of(fired.row(), result.formulation(), velocity)
                .map(motor -> new MeasuredFiring(
                        reduced.firing(),
                        motor,
                        rateFactor(fired, result),
                        reduced.characteristicVelocity()
                                .map(Measured::value)
                                .map(OptionalDouble::of)
                                .orElse(OptionalDouble.empty()),
                        reduced.events().ignition(),
                        reduced.maxPressure(),
                        reduced.meanPressure(),
                        reduced.events().burnTime(),
                        IgnitionSpike.of(reduced)));
    }

    /** The law holds at the reference temperature where the firings had several. */
    private static double rateFactor(Fired fired, FormulationResult result) {
        OptionalDouble temperature = fired.reduced().points().get(0).temperature();
        return temperature.isEmpty()
                ? 1
                : result.temperature()
                        .flatMap(TemperatureResult::estimated)
                        .map(known -> StrictMath.exp(
                                known.sigmaP() * (temperature.getAsDouble() - known.referenceTemperature())))
                        .orElse(1.0);
    }
}
