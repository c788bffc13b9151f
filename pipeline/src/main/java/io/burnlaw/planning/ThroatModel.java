package io.burnlaw.planning;

import io.burnlaw.ballistics.EquilibriumPressure;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.planning.PlannedThroat.Predicted;
import io.burnlaw.prediction.IgnitionSpike;
import io.burnlaw.prediction.Prediction;
import io.burnlaw.ratelaw.PiecewiseLaw;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;

/**
 * From throat to pressure and back, by the forward simulation of the whole burn.
 *
 * <pre>
 *     start of the search:   A_t = S · rho · r(P) · c* / P            S = propellant volume over web   [m2]
 * </pre>
 *
 * @param band    of the rate in the regime that is planned for
 * @param whole   law with all its regimes
 * @param highest to which pressures are followed [Pa, absolute]
 * @param ignition by how much it stands above the burn
 */
record ThroatModel(
        Motor motor, RateBand band, PiecewiseLaw whole, double highest, IgnitionSpike ignition, double level) {

    /** Of the pressure: far below any interval. */
    static final double TOLERANCE = 1e-3;

    /** Of the search, in ln of the diameter. */
    private static final double LONGEST_STEP = 0.3;

    /** Of the search; bisection has long found a jump by then. */
    private static final int MOST_FIRINGS = 60;

    /**
     * What a throat does by the middle and by both ends of the band.
     *
     * @param mean   pressure [Pa, absolute]
     * @param max    pressure [Pa, absolute]
     */
    record Outcome(Prediction middle, Predicted mean, Predicted max) {}

    /** Empty where the motor would not burn out within minutes. */
    Optional<Outcome> fire(double diameter) {
        Optional<Prediction> middle = Prediction.of(with(diameter), band.middle(), ignition.mean());
        Optional<Prediction> high = Prediction.of(with(diameter), band.high(), ignition.high(level));
        if (middle.isEmpty() || high.isEmpty()) {
            return Optional.empty();
        }
        Optional<Prediction> low = Prediction.of(with(diameter), band.low(), ignition.low(level));
        return Optional.of(new Outcome(
                middle.orElseThrow(),
                predicted(middle.orElseThrow(), low, high.orElseThrow(), Prediction::meanPressure),
                predicted(middle.orElseThrow(), low, high.orElseThrow(), Prediction::maxPressure)));
    }

    private Predicted predicted(
            Prediction middle, Optional<Prediction> low, Prediction high, ToDoubleFunction<Prediction> measure) {
        double most = measure.applyAsDouble(high);
        return new Predicted(
                measure.applyAsDouble(middle),
                low.map(measure::applyAsDouble).orElse(motor.ambientPressure()),
                most >= highest ? Double.POSITIVE_INFINITY : most);
    }

    /** The throat whose mean pressure by the middle of the band is the target. */
    OptionalDouble throatForMean(double target) {
        return throatFor(target, band.middle(), ignition.mean(), Prediction::meanPressure);
    }

    /** The throat whose peak by the upper end of the band is the limit. */
    OptionalDouble throatForHighestPeak(double limit) {
        return throatFor(limit, band.high(), ignition.high(level), Prediction::maxPressure);
    }

    /** Newton's step by the closed form of the equilibrium, then secants, kept within what is bracketed. */
    private OptionalDouble throatFor(
            double target, DoubleUnaryOperator rate, double spike, ToDoubleFunction<Prediction> measure) {
        double surface = motor.grain().volume(0) / motor.grain().burnout();
        double area = surface
                * (motor.density() - motor.gas().density(target))
                * rate.applyAsDouble(target)
                * motor.gas().characteristicVelocity()
                / target;
        if (!(area > 0)) {
            // The gas would be as dense as the propellant: far beyond what the law of gases holds for.
            return OptionalDouble.empty();
        }
        // d ln P / d ln D of an equilibrium; near n = 1 it has no bound, and a small step is the safe one
        double steepness = 2 / Math.max(0.1, 1 - whole.at(target).exponent());
        double from = Double.NEGATIVE_INFINITY;
        double to = Double.POSITIVE_INFINITY;
        double at = StrictMath.log(4 * area / Math.PI) / 2;
        double value = logRatio(at, target, rate, spike, measure);
        for (int i = 0; i < MOST_FIRINGS; i++) {
            if (Math.abs(value) < TOLERANCE) {
                return OptionalDouble.of(StrictMath.exp(at));
            }
            // a smaller throat gives more pressure
            from = value > 0 ? at : from;
            to = value > 0 ? to : at;
            double step = Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, value / steepness));
            double next = at + step;
            if (to - from < 1e-7) {
                return OptionalDouble.empty();
            }
            if (!(next > from && next < to) || i > 12 && Double.isFinite(to - from)) {
                next = (from + to) / 2;
            }
            double then = logRatio(next, target, rate, spike, measure);
            double secant = -(then - value) / (next - at);
            steepness = Math.max(0.5, Math.min(40, secant));
            at = next;
            value = then;
        }
        return OptionalDouble.empty();
    }

    /** A motor that does not burn out counts as one at ambient pressure. */
    private double logRatio(
            double lnDiameter,
            double target,
            DoubleUnaryOperator rate,
            double spike,
            ToDoubleFunction<Prediction> measure) {
        double pressure = Prediction.of(with(StrictMath.exp(lnDiameter)), rate, spike)
                .map(measure::applyAsDouble)
                .orElse(motor.ambientPressure());
        return StrictMath.log(pressure / target);
    }

    /** Stable equilibria of the mean surface other than the one at which the motor was predicted to burn. */
    List<Double> otherEquilibria(double diameter, double predicted) {
        double surface = motor.grain().volume(0) / motor.grain().burnout();
        List<Double> stable =
                EquilibriumPressure.of(surface, new Nozzle(diameter).throatArea(), motor, whole::rate, highest).stream()
                        .filter(EquilibriumPressure.Equilibrium::stable)
                        .map(EquilibriumPressure.Equilibrium::pressure)
                        .toList();
        double own = stable.stream()
                .min((a, b) -> Double.compare(
                        Math.abs(StrictMath.log(a / predicted)), Math.abs(StrictMath.log(b / predicted))))
                .orElse(Double.NaN);
        return stable.stream().filter(each -> each != own).toList();
    }

    /** The largest throat that keeps the motor at or above a pressure by the lower end of the band, at its least surface. */
    double largestThroatAbove(double pressure) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= 18; i++) {
            // the last twentieth of the web is tail-off
            least = Math.min(least, motor.grain().surface(0.95 * motor.grain().burnout() * i / 18));
        }
        double area = least
                * (motor.density() - motor.gas().density(pressure))
                * band.low().applyAsDouble(pressure)
                * motor.gas().characteristicVelocity()
                / pressure;
        return Math.sqrt(4 * area / Math.PI);
    }

    private Motor with(double diameter) {
        return motor.withNozzle(new Nozzle(diameter));
    }
}
