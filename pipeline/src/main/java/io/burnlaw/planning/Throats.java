package io.burnlaw.planning;

import static io.burnlaw.quantity.NumberFormat.megapascal;

import io.burnlaw.planning.PlannedThroat.Drill;
import io.burnlaw.planning.PlannedThroat.Predicted;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
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
        return GrainTables.of(basis, band, lowestMean, ceiling.limit());
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
                : "the upper prediction of the peak has no limit and is";
        return Optional.of("Not to be drilled: %s above %s MPa, %s."
                .formatted(upper, megapascal(ceiling.limit()), ceiling.reason()));
    }

    private Optional<String> remark(Predicted mean, Predicted max) {
        if (basis.slowBelow().isPresent() && mean.low() < basis.slowBelow().getAsDouble()) {
            return Optional.of("May burn slowly: the slow regime is below %s MPa."
                    .formatted(megapascal(basis.slowBelow().getAsDouble())));
        }
        if (basis.points().isEmpty()) {
            return Optional.empty();
        }
        if (max.value() > basis.law().pressureHigh()) {
            return Optional.of("Extrapolated: above %s MPa, the highest pressure of the law."
                    .formatted(megapascal(basis.law().pressureHigh())));
        }
        return mean.value() < basis.law().pressureLow()
                ? Optional.of("Extrapolated: below %s MPa, the lowest pressure of the law."
                        .formatted(megapascal(basis.law().pressureLow())))
                : Optional.empty();
    }

    /**
     * Twist drills that shops have: number sizes 1 to 97, letters A to Z, fractions of an inch by 64ths up to one inch,
     * and metric ones by tenths of a millimetre up to 14 mm and by halves up to 25 mm.
     *
     * <p><b>Source.</b> Number, letter and fractional sizes: ASME B94.11M; metric steps: common practice, no source.
     * Nominal sizes: a drilled hole is usually larger by 0.02 to 0.1 mm.
     */
    static final class TwistDrills {

        /** [m], exact. */
        private static final double INCH = 0.0254;

        /** Ten-thousandths of an inch, from number 1 to number 97. */
        private static final int[] NUMBERS = {
            2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935, 1910, 1890, 1850, 1820, 1800, 1770, 1730, 1695,
            1660, 1610, 1590, 1570, 1540, 1520, 1495, 1470, 1440, 1405, 1360, 1285, 1200, 1160, 1130, 1110, 1100, 1065,
            1040, 1015, 995, 980, 960, 935, 890, 860, 820, 810, 785, 760, 730, 700, 670, 635, 595, 550, 520, 465, 430,
            420, 410, 400, 390, 380, 370, 360, 350, 330, 320, 310, 292, 280, 260, 250, 240, 225, 210, 200, 180, 160,
            145, 135, 130, 125, 120, 115, 110, 105, 100, 95, 91, 87, 83, 79, 75, 71, 67, 63, 59
        };

        /** Thousandths of an inch, from A to Z. */
        private static final int[] LETTERS = {
            234, 238, 242, 246, 250, 257, 261, 266, 272, 277, 281, 290, 295, 302, 316, 323, 332, 339, 348, 358, 368,
            377, 386, 397, 404, 413
        };

        /** All of them, by rising diameter. */
        static final List<Drill> ALL = all();

        private TwistDrills() {}

        /**
         * The drill of each series that comes nearest to a diameter.
         *
         * @param diameter wanted [m]
         * @param allowed  which drills may be named
         * @return at most one a series, the nearest first
         */
        public static List<Drill> nearestOfEachSeries(double diameter, Predicate<Drill> allowed) {
            Comparator<Drill> nearer = Comparator.comparingDouble(each -> Math.abs(each.diameter() - diameter));
            Map<Drill.Series, Drill> nearest = new EnumMap<>(Drill.Series.class);
            for (Drill each : ALL) {
                if (allowed.test(each)) {
                    nearest.merge(each.series(), each, (a, b) -> nearer.compare(b, a) < 0 ? b : a);
                }
            }
            return nearest.values().stream()
                    // a thirtieth in diameter is near a tenth in pressure: further off is no drill for this throat
                    .filter(each -> Math.abs(each.diameter() - diameter) <= diameter / 30)
                    .sorted(nearer)
                    .toList();
        }

        /**
         * The drill that comes nearest to a diameter.
         *
         * @param diameter wanted [m]
         * @param allowed  which drills may be named
         * @return the drill; empty where none comes within a thirtieth of it
         */
        public static Optional<Drill> nearest(double diameter, Predicate<Drill> allowed) {
            return nearestOfEachSeries(diameter, allowed).stream().findFirst();
        }

        private static List<Drill> all() {
            List<Drill> drills = new ArrayList<>();
            for (int i = 0; i < NUMBERS.length; i++) {
                drills.add(new Drill(Drill.Series.NUMBER, "#" + (i + 1), NUMBERS[i] * INCH / 10_000));
            }
            for (int i = 0; i < LETTERS.length; i++) {
                drills.add(new Drill(Drill.Series.LETTER, String.valueOf((char) ('A' + i)), LETTERS[i] * INCH / 1000));
            }
            for (int i = 1; i <= 64; i++) {
                int divisor = Integer.lowestOneBit(i);
                drills.add(new Drill(Drill.Series.FRACTION, i / divisor + "/" + 64 / divisor, i * INCH / 64));
            }
            for (int tenths = 5; tenths <= 140; tenths++) {
                drills.add(metric(tenths));
            }
            for (int tenths = 145; tenths <= 250; tenths += 5) {
                drills.add(metric(tenths));
            }
            drills.sort(Comparator.comparingDouble(Drill::diameter));
            return List.copyOf(drills);
        }

        private static Drill metric(int tenths) {
            return new Drill(Drill.Series.METRIC, tenths / 10 + "." + tenths % 10 + " mm", tenths / 10_000.0);
        }
    }
}
