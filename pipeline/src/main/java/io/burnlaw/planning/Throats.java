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

    /** So far beyond the slow regime's throat the table of throats goes, to show what it warns of. */
    private static final double BEYOND_SLOW = 1.15;

    private final PlanBasis basis;
    private final PlanOptions options;
    private final PressureCeiling ceiling;
    private final RateBand band;
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
        this.band = new RateBand(
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

    /** All throats from the smallest to one beyond the slow regime's, or to that of a mean pressure [Pa, absolute]. */
    Optional<ThroatTable> table(double lowestMean) {
        double of = forMean(lowestMean).orElse(0);
        double slow = slowRegime().isPresent() ? BEYOND_SLOW * slowRegime().getAsDouble() : 0;
        double last = Math.max(of, slow);
        if (!(last > smallest)) {
            return Optional.empty();
        }
        return Optional.of(ThroatTable.of(
                this::at,
                smallest,
                last,
                "No smaller throat: the upper prediction of the peak would be above %s MPa, %s."
                        .formatted(megapascal(ceiling.limit()), ceiling.reason()),
                slow > of
                        ? "Larger throats are not shown: the motor would be in the slow regime."
                        : "Larger throats are not shown: below a mean of %s MPa the law is not known, or the throat may not choke."
                                .formatted(megapascal(lowestMean))));
    }

    /** Any grain of equal segments, where one table can hold them; from a mean pressure on [Pa, absolute]. */
    Optional<GrainTable> anyGrain(double lowestMean) {
        return GrainTable.of(basis, band, lowestMean, ceiling.limit());
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
