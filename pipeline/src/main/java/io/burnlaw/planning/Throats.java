package io.burnlaw.planning;

import static io.burnlaw.quantity.NumberFormat.megapascal;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;

/** Throats with all that must be said of them: predictions, drills, refusals, remarks. */
final class Throats {

    /** Above a floor by this factor: nearer to it a motor may fall below, and a drilled hole is larger than its drill. */
    static final double MARGIN = 1.1;

    /** The simulation stops to follow a law that runs away here, in ceilings. */
    private static final double BEYOND_CEILING = 4;

    private final PlanBasis basis;
    private final PlanOptions options;
    private final PressureCeiling ceiling;
    private final ThroatModel model;
    private final double smallest;
    private final double largest;

    Throats(PlanBasis basis, PlanOptions options, PressureCeiling ceiling) {
        this.basis = basis;
        this.options = options;
        this.ceiling = ceiling;
        double top = BEYOND_CEILING * ceiling.limit();
        double ofThroat = 2 * basis.throatStd() / basis.motor().nozzle().throatDiameter();
        // Of a motor that is lit into the fast regime: whether it comes up from the slow one is the igniter's business,
        // and the case has to stand the fast one.
        RateBand band = new RateBand(
                basis.law().from(ceiling.floor()), options.level(), Math.hypot(basis.strengthStd(), ofThroat), top);
        this.model = new ThroatModel(basis.motor(), band, basis.law(), top, basis.ignition(), options.level());
        this.smallest = model.throatForHighestPeak(ceiling.limit()).orElse(Double.POSITIVE_INFINITY);
        this.largest = basis.slowBelow().isPresent()
                ? model.largestThroatAbove(MARGIN * basis.slowBelow().getAsDouble())
                : Double.POSITIVE_INFINITY;
    }

    /** {@return the smallest whose upper prediction of the peak stays within what is allowed [m]; infinite where none does} */
    double smallest() {
        return smallest;
    }

    /** {@return above which the lower prediction falls into the slow regime [m]; empty where there is none} */
    OptionalDouble slowRegime() {
        return basis.slowBelow().isPresent()
                ? OptionalDouble.of(model.largestThroatAbove(basis.slowBelow().getAsDouble()))
                : OptionalDouble.empty();
    }

    /** The diameter that gives a mean pressure by the middle of the prediction. */
    OptionalDouble forMean(double target) {
        return model.throatForMean(target);
    }

    /** The mean pressure over the burn by the middle of the prediction; zero where the motor would not burn out. */
    double meanAt(double diameter) {
        return model.fire(diameter).map(outcome -> outcome.mean().value()).orElse(0.0);
    }

    /** What a diameter within both bounds, or the drill nearest to it, would do. */
    Optional<PlannedThroat> drilled(double diameter) {
        double within = Math.min(largest, Math.max(smallest, diameter));
        return at(
                TwistDrills.nearest(within, mayBeDrilled()).map(Drill::diameter).orElse(within));
    }

    /** What a diameter would do, allowed or not. */
    Optional<PlannedThroat> at(double diameter) {
        return model.fire(diameter).map(outcome -> {
            double mean = outcome.mean().value();
            return new PlannedThroat(
                    diameter,
                    TwistDrills.nearestOfEachSeries(diameter, mayBeDrilled()),
                    outcome.mean(),
                    outcome.max(),
                    OptionalDouble.of(outcome.middle().burnTime()),
                    refusal(outcome.max()),
                    model.otherEquilibria(diameter, mean),
                    OptionalDouble.of(ExponentInformation.of(basis.law().at(mean))
                            .with(mean)
                            .exponentStd()),
                    remark(outcome.mean(), outcome.max()));
        });
    }

    private Predicate<Drill> mayBeDrilled() {
        return each -> each.diameter() >= smallest
                && each.diameter() <= largest
                && options.series().contains(each.series());
    }

    private Optional<String> refusal(Predicted max) {
        // a thousandth: what the search for the smallest throat leaves
        if (max.high() <= ceiling.limit() * (1 + ThroatModel.TOLERANCE)) {
            return Optional.empty();
        }
        String upper = Double.isFinite(max.high())
                ? "the upper prediction of the peak, %s MPa, is".formatted(megapascal(max.high()))
                : "no upper limit of the peak can be stated: it is";
        return Optional.of("Not to be drilled: %s above %s MPa, %s."
                .formatted(upper, megapascal(ceiling.limit()), ceiling.reason()));
    }

    private Optional<String> remark(Predicted mean, Predicted max) {
        if (basis.slowBelow().isPresent() && mean.low() < basis.slowBelow().getAsDouble()) {
            return Optional.of("May fall into the slow regime below %s MPa."
                    .formatted(megapascal(basis.slowBelow().getAsDouble())));
        }
        if (basis.points().isEmpty()) {
            return Optional.empty();
        }
        if (max.value() > basis.law().pressureHigh()) {
            return Optional.of("Reaches beyond %s MPa, the highest pressure of the law: an extrapolation."
                    .formatted(megapascal(basis.law().pressureHigh())));
        }
        return mean.value() < basis.law().pressureLow()
                ? Optional.of("Lies below %s MPa, the lowest pressure of the law: an extrapolation."
                        .formatted(megapascal(basis.law().pressureLow())))
                : Optional.empty();
    }
}
