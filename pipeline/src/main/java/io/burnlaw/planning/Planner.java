package io.burnlaw.planning;

import static io.burnlaw.planning.PressureCeiling.megapascal;

import io.burnlaw.quantity.Figures;
import io.burnlaw.ratelaw.RateLaw;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Predicate;

/**
 * Plans firings: what pressure a throat gives and how sure that is, which throat gives a pressure, a ladder of throats
 * over a range, and the firing that tells most. A throat whose upper prediction of the peak is above what the case allows
 * is never proposed.
 *
 * <p><b>Valid</b> for the grain and the propellant of the basis. <b>Source.</b> Forward simulation with both ends of the
 * law's prediction band; choice of the next firing: Atkinson and Donev (1992); docs/methods.md, section 'Planning'.
 */
public final class Planner {

    /** Above a floor by this factor: nearer to it a motor may fall below. */
    private static final double MARGIN = 1.1;

    /** The simulation stops to follow a law that runs away here, in ceilings. */
    private static final double BEYOND_CEILING = 4;

    /** Pressures among which the next firing is chosen. */
    private static final int CANDIDATES = 25;

    /** More firings than this are no plan. */
    private static final int MOST_FIRINGS = 200;

    private final PlanBasis basis;
    private final PlanOptions options;
    private final PressureCeiling ceiling;
    private final ThroatModel model;
    private final double smallest;
    private final double largest;

    private Planner(PlanBasis basis, PlanOptions options, PressureCeiling ceiling) {
        this.basis = basis;
        this.options = options;
        this.ceiling = ceiling;
        double top = BEYOND_CEILING * ceiling.limit();
        double ofThroat = 2 * basis.throatStd() / basis.motor().nozzle().throatDiameter();
        // Of a motor that is lit into the fast regime: whether it comes up from the slow one is the igniter's business,
        // and
        // the case has to stand the fast one.
        RateBand band = new RateBand(
                basis.law().from(ceiling.floor()), options.level(), Math.hypot(basis.strengthStd(), ofThroat), top);
        this.model = new ThroatModel(basis.motor(), band, basis.law(), top);
        this.smallest = model.throatForHighestPeak(ceiling.limit()).orElse(Double.POSITIVE_INFINITY);
        this.largest = basis.threshold().isPresent()
                ? model.largestThroatAbove(basis.threshold().getAsDouble())
                : Double.POSITIVE_INFINITY;
    }

    /**
     * Makes a plan.
     *
     * @param basis   what it rests on
     * @param options how
     * @return the plan, or the reason why no throat may be named
     */
    public static Plan plan(PlanBasis basis, PlanOptions options) {
        PressureCeiling.Outcome outcome = PressureCeiling.of(basis, options.level());
        return outcome instanceof PressureCeiling.Outcome.None none
                ? refused(basis, none.allowed(), none.reason())
                : new Planner(basis, options, ((PressureCeiling.Outcome.Range) outcome).ceiling()).plan();
    }

    /**
     * What a throat would do; shown for any throat, with the refusal beside it where it must not be drilled.
     *
     * @param basis    what it rests on
     * @param options  how
     * @param diameter of the throat [m], above zero
     * @return its prediction, or the reason why there is none
     */
    public static ThroatAnswer throat(PlanBasis basis, PlanOptions options, double diameter) {
        PressureCeiling.Outcome outcome = PressureCeiling.of(basis, options.level());
        if (outcome instanceof PressureCeiling.Outcome.None none) {
            return new ThroatAnswer.None(none.reason());
        }
        Planner planner = new Planner(basis, options, ((PressureCeiling.Outcome.Range) outcome).ceiling());
        return planner.predicted(diameter)
                .<ThroatAnswer>map(each -> new ThroatAnswer.Found(each, diameter))
                .orElseGet(() -> new ThroatAnswer.None(
                        "With a throat of %s mm this motor would not burn out within minutes: it would smoulder."
                                .formatted(millimetre(diameter))));
    }

    /**
     * The throat for a mean pressure over the burn.
     *
     * @param basis   what it rests on
     * @param options how
     * @param target  mean pressure wanted [Pa, absolute]
     * @return the nearest drill and what it would do, or why none is named
     */
    public static ThroatAnswer throatFor(PlanBasis basis, PlanOptions options, double target) {
        PressureCeiling.Outcome outcome = PressureCeiling.of(basis, options.level());
        if (outcome instanceof PressureCeiling.Outcome.None none) {
            return new ThroatAnswer.None(none.reason());
        }
        return new Planner(basis, options, ((PressureCeiling.Outcome.Range) outcome).ceiling()).throatFor(target);
    }

    private ThroatAnswer throatFor(double target) {
        if (target >= ceiling.limit()) {
            return new ThroatAnswer.None("No throat is named for %s MPa: it is above %s MPa, %s."
                    .formatted(megapascal(target), megapascal(ceiling.limit()), ceiling.reason()));
        }
        OptionalDouble exact = model.throatForMean(target);
        if (exact.isEmpty()) {
            return new ThroatAnswer.None(
                    "No throat holds this motor at %s MPa: the law changes there, and the pressure would lie below or above."
                            .formatted(megapascal(target)));
        }
        if (exact.getAsDouble() < smallest) {
            return new ThroatAnswer.None(
                    "No throat is named for %s MPa: the upper prediction of its peak would be above %s MPa, %s."
                            .formatted(megapascal(target), megapascal(ceiling.limit()), ceiling.reason()));
        }
        return onDrill(exact.getAsDouble())
                .<ThroatAnswer>map(each -> new ThroatAnswer.Found(each, exact.getAsDouble()))
                .orElseGet(() -> new ThroatAnswer.None("No throat is named: the motor would not burn out."));
    }

    private Plan plan() {
        double high = highestMean();
        double low = lowestMean();
        if (!(high > low * 1.02)) {
            return refused(basis, OptionalDouble.of(ceiling.limit()), nothingBetween(low));
        }
        List<PlannedThroat> ladder = ladder(low, high);
        NextFiring next = next(low, high);
        Optional<PlannedThroat> firing = next.pressure.isPresent()
                ? throatFor(next.pressure.getAsDouble())
                        .match(found -> Optional.of(found.throat()), none -> Optional.empty())
                : Optional.empty();
        OptionalInt firings = firingsToExponent(low, high);
        return new Plan.Planned(
                basis.formulation(),
                basis.grain(),
                ceiling.limit(),
                smallest,
                firing,
                ladder,
                Double.isFinite(largest) ? OptionalDouble.of(largest) : OptionalDouble.empty(),
                firings,
                PlanSentence.of(basis, options, ceiling, firing, next.why, smallest, firings),
                cautions(ladder, firing));
    }

    /** Where the smallest allowed throat leads, but not far beyond what was fired. */
    private double highestMean() {
        if (!Double.isFinite(smallest)) {
            return 0;
        }
        double mean = model.fire(smallest).map(each -> each.mean().value()).orElse(0.0);
        double known = basis.points().isEmpty()
                ? Double.POSITIVE_INFINITY
                : options.reach() * basis.law().pressureHigh();
        return Math.min(mean, known);
    }

    private double lowestMean() {
        double known = basis.law().pressureLow() / (basis.points().isEmpty() ? 1 : options.reach());
        // at twice the ambient pressure the throat still chokes
        return Math.max(Math.max(known, 2.2 * basis.motor().ambientPressure()), MARGIN * ceiling.floor());
    }

    private String nothingBetween(double low) {
        return "No throat is named: below %s MPa (%s) no throat leaves the upper prediction of the peak when the mean is to be at least %s MPa. A case that stands more, or a grain of more even surface, would mend it."
                .formatted(megapascal(ceiling.limit()), ceiling.reason(), megapascal(low));
    }

    private List<PlannedThroat> ladder(double low, double high) {
        List<PlannedThroat> ladder = new ArrayList<>();
        for (int i = 0; i < options.rungs(); i++) {
            double target = low * StrictMath.pow(high / low, (double) i / (options.rungs() - 1));
            OptionalDouble exact = model.throatForMean(target);
            if (exact.isEmpty()) {
                continue;
            }
            onDrill(Math.min(largest, Math.max(smallest, exact.getAsDouble())))
                    .filter(PlannedThroat::allowed)
                    .filter(each -> ladder.stream().noneMatch(other -> other.diameter() == each.diameter()))
                    .ifPresent(ladder::add);
        }
        return ladder;
    }

    /** The next firing's pressure, and why it. */
    private record NextFiring(OptionalDouble pressure, String why) {}

    private NextFiring next(double low, double high) {
        Optional<NextFiring> forBreak =
                options.goal() == PlanOptions.Goal.EXPONENT ? Optional.empty() : forBreak(low, high);
        if (options.goal() == PlanOptions.Goal.BREAK) {
            return forBreak.orElse(new NextFiring(
                    OptionalDouble.empty(), "No break within the allowed pressures can be sharpened by a firing"));
        }
        return forBreak.orElseGet(() -> forExponent(low, high));
    }

    private NextFiring forExponent(double low, double high) {
        double best = low;
        double least = Double.POSITIVE_INFINITY;
        for (double pressure : candidates(low, high)) {
            double after = exponentStdAfter(pressure);
            // of two firings that tell nearly the same, the one at the lower pressure
            if (after < 0.98 * least) {
                least = after;
                best = pressure;
            }
        }
        double now = ExponentInformation.of(basis.law().at(best)).exponentStd();
        return new NextFiring(
                OptionalDouble.of(best),
                "It tells most of the exponent: its standard uncertainty falls from %s to %s"
                        .formatted(Figures.significant(now, 2), Figures.significant(least, 2)));
    }

    private Optional<NextFiring> forBreak(double low, double high) {
        for (int i = 0; i < basis.law().breaks().size(); i++) {
            BreakInformation information = new BreakInformation(basis.law(), basis.points(), i);
            Optional<Double> wanted =
                    information.jumps() ? information.middleOfGap() : sharpest(information, low, high);
            if (wanted.isPresent() && wanted.get() >= low && wanted.get() <= high) {
                return Optional.of(new NextFiring(
                        OptionalDouble.of(wanted.get()),
                        "It tells most of the break at %s MPa".formatted(megapascal(information.pressure()))));
            }
        }
        return Optional.empty();
    }

    private Optional<Double> sharpest(BreakInformation information, double low, double high) {
        Optional<Double> now = information.lnStd();
        if (now.isEmpty()) {
            return Optional.empty();
        }
        double least = now.get();
        Optional<Double> best = Optional.empty();
        for (double pressure : candidates(low, high)) {
            double after = information.lnStdWith(pressure).orElse(Double.POSITIVE_INFINITY);
            if (after < 0.98 * least) {
                least = after;
                best = Optional.of(pressure);
            }
        }
        return best;
    }

    private static double[] candidates(double low, double high) {
        double[] pressures = new double[CANDIDATES];
        for (int i = 0; i < CANDIDATES; i++) {
            pressures[i] = low * StrictMath.pow(high / low, (double) i / (CANDIDATES - 1));
        }
        return pressures;
    }

    private double exponentStdAfter(double pressure) {
        return ExponentInformation.of(basis.law().at(pressure)).with(pressure).exponentStd();
    }

    /** Each firing where it tells most, one after the other. */
    private OptionalInt firingsToExponent(double low, double high) {
        RateLaw wanted = basis.law().at(Math.sqrt(low * high));
        double from = low;
        double to = high;
        for (double edge : basis.law().breaks()) {
            if (edge < wanted.pressureHigh() && edge > low && edge <= Math.sqrt(low * high)) {
                from = Math.max(from, edge);
            } else if (edge > Math.sqrt(low * high)) {
                to = Math.min(to, edge);
            }
        }
        ExponentInformation information = ExponentInformation.of(wanted);
        for (int count = 0; count <= MOST_FIRINGS; count++) {
            if (information.halfWidth(0.95) <= options.exponentHalfWidth()) {
                return OptionalInt.of(count);
            }
            ExponentInformation atLow = information.with(from);
            ExponentInformation atHigh = information.with(to);
            information = atLow.exponentStd() <= atHigh.exponentStd() ? atLow : atHigh;
        }
        return OptionalInt.empty();
    }

    private Predicate<Drill> allowed() {
        return each -> each.diameter() >= smallest
                && each.diameter() <= largest
                && options.series().contains(each.series());
    }

    /** The nearest allowed drill, or the diameter itself where no drill comes near. */
    private Optional<PlannedThroat> onDrill(double diameter) {
        return predicted(
                TwistDrills.nearest(diameter, allowed()).map(Drill::diameter).orElse(diameter));
    }

    private Optional<PlannedThroat> predicted(double diameter) {
        return model.fire(diameter).map(outcome -> {
            double mean = outcome.mean().value();
            return new PlannedThroat(
                    diameter,
                    TwistDrills.nearestOfEachSeries(diameter, allowed()),
                    outcome.mean(),
                    outcome.max(),
                    OptionalDouble.of(outcome.middle().burnTime()),
                    refusal(outcome.max()),
                    model.otherEquilibria(diameter, mean),
                    OptionalDouble.of(exponentStdAfter(mean)),
                    remark(outcome.mean(), outcome.max()));
        });
    }

    private Optional<String> refusal(Predicted max) {
        // a thousandth: what the search for the smallest throat leaves
        if (max.high() <= ceiling.limit() * 1.001) {
            return Optional.empty();
        }
        String upper = Double.isFinite(max.high())
                ? "the upper prediction of the peak, %s MPa, is".formatted(megapascal(max.high()))
                : "no upper limit of the peak can be stated: it is";
        return Optional.of("Not to be drilled: %s above %s MPa, %s."
                .formatted(upper, megapascal(ceiling.limit()), ceiling.reason()));
    }

    private Optional<String> remark(Predicted mean, Predicted max) {
        if (basis.threshold().isPresent() && mean.low() < basis.threshold().getAsDouble()) {
            return Optional.of("May fall into the slow regime below %s MPa."
                    .formatted(megapascal(basis.threshold().getAsDouble())));
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

    private List<String> cautions(List<PlannedThroat> ladder, Optional<PlannedThroat> firing) {
        List<String> cautions = new ArrayList<>(Cautions.ALWAYS);
        if (basis.hardware().casePressureLimit().isEmpty()) {
            cautions.add(
                    "No limit of the case is stated: nothing above the highest pressure fired so far, %s MPa, is named."
                            .formatted(megapascal(ceiling.limit())));
        }
        basis.threshold()
                .ifPresent(threshold -> cautions.add(
                        "All this holds for a motor that is lit into its fast regime: one that the igniter leaves below %s MPa may smoulder, and may come up late."
                                .formatted(megapascal(threshold))));
        boolean several = ladder.stream()
                        .anyMatch(each -> !each.otherEquilibria().isEmpty())
                || firing.stream().anyMatch(each -> !each.otherEquilibria().isEmpty());
        if (several) {
            cautions.add(
                    "Some of these motors have more than one steady pressure: which of them they take depends on how they are lit.");
        }
        if (basis.points().isEmpty()) {
            cautions.add(
                    "The law is a first guess and nothing was measured: begin with the largest throat of the ladder, and plan again after each firing.");
        }
        return cautions;
    }

    private static Plan refused(PlanBasis basis, OptionalDouble allowed, String reason) {
        return new Plan.Refused(basis.formulation(), basis.grain(), allowed, reason, Cautions.ALWAYS);
    }

    static String millimetre(double length) {
        return Figures.significant(length * 1000, 3);
    }
}
