package io.burnlaw.planning;

import static io.burnlaw.quantity.NumberFormat.megapascal;

import io.burnlaw.planning.PlannedThroat.Drill;
import io.burnlaw.planning.PlannedThroat.ThroatAnswer;
import io.burnlaw.quantity.NumberFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;

/**
 * Plans firings: the pressure that a throat gives and its uncertainty, the throat that gives a pressure, a ladder of
 * throats over a range, and the most informative firing. A throat whose upper prediction of the peak is above the
 * allowed pressure is never proposed.
 *
 * <p><b>Valid</b> for the grain and the propellant of the basis. <b>Source.</b> Forward simulation with both ends of the
 * law's prediction band; choice of the next firing: Atkinson and Donev (1992); docs/methods.md, section 'Planning'.
 */
public final class Planner {

    private final PlanBasis basis;
    private final PlanOptions options;
    private final PressureCeiling ceiling;
    private final Throats throats;

    private Planner(PlanBasis basis, PlanOptions options, PressureCeiling ceiling) {
        this.basis = basis;
        this.options = options;
        this.ceiling = ceiling;
        this.throats = new Throats(basis, options, ceiling);
    }

    /**
     * Makes a plan.
     *
     * @return the plan, or the reason why no throat may be named
     */
    public static Plan plan(PlanBasis basis, PlanOptions options) {
        return PressureCeiling.of(basis, options.level())
                .match(
                        ceiling -> new Planner(basis, options, ceiling).plan(),
                        none -> refused(basis, none.allowed(), none.reason()));
    }

    /**
     * What a throat would do; shown for any throat, with the refusal beside it where it must not be drilled.
     *
     * @param diameter of the throat [m], above zero
     * @return its prediction, or the reason why there is none
     */
    public static ThroatAnswer throat(PlanBasis basis, PlanOptions options, double diameter) {
        return answer(
                basis,
                options,
                planner -> planner.throats
                        .at(diameter)
                        .<ThroatAnswer>map(each -> new ThroatAnswer.Found(each, diameter))
                        .orElseGet(() -> new ThroatAnswer.None(
                                "With a throat of %s mm this motor would not burn out within minutes; it would smoulder."
                                        .formatted(NumberFormat.significant(diameter * 1000, 3)))));
    }

    /**
     * The throat for a mean pressure over the burn.
     *
     * @param target mean pressure wanted [Pa, absolute]
     * @return the nearest drill and what it would do, or why none is named
     */
    public static ThroatAnswer throatFor(PlanBasis basis, PlanOptions options, double target) {
        return answer(basis, options, planner -> planner.throatFor(target));
    }

    /**
     * What any grain of equal segments would do, as a table.
     *
     * @return the table; empty where no throat may be named, or no table would be within its tolerance
     */
    public static Optional<GrainTable> anyGrain(PlanBasis basis, PlanOptions options) {
        return PressureCeiling.of(basis, options.level())
                .match(
                        ceiling -> {
                            Throats throats = new Throats(basis, options, ceiling);
                            PressureRange range = PressureRange.of(basis, options, ceiling, throats);
                            return range.isEmpty() ? Optional.empty() : throats.anyGrain(range.low());
                        },
                        none -> Optional.empty());
    }

    private static ThroatAnswer answer(PlanBasis basis, PlanOptions options, Function<Planner, ThroatAnswer> question) {
        return PressureCeiling.of(basis, options.level())
                .match(
                        ceiling -> question.apply(new Planner(basis, options, ceiling)),
                        none -> new ThroatAnswer.None(none.reason()));
    }

    private ThroatAnswer throatFor(double target) {
        if (target >= ceiling.limit()) {
            return none(target, "it is above %s MPa, %s.".formatted(megapascal(ceiling.limit()), ceiling.reason()));
        }
        if (target < ceiling.floor()) {
            return none(
                    target,
                    "below %s MPa the propellant burns slowly, or by another law."
                            .formatted(megapascal(ceiling.floor())));
        }
        OptionalDouble exact = throats.forMean(target);
        if (exact.isEmpty()) {
            return none(
                    target,
                    "no throat keeps the motor there: the law changes, and the pressure would be lower or higher.");
        }
        if (exact.getAsDouble() < throats.smallest()) {
            return none(
                    target,
                    "the upper prediction of its peak would be above %s MPa, %s."
                            .formatted(megapascal(ceiling.limit()), ceiling.reason()));
        }
        return throats.drilled(exact.getAsDouble())
                .<ThroatAnswer>map(each -> new ThroatAnswer.Found(each, exact.getAsDouble()))
                .orElseGet(() -> none(target, "the motor would not burn out."));
    }

    private static ThroatAnswer none(double target, String reason) {
        return new ThroatAnswer.None("No throat is named for %s MPa: %s".formatted(megapascal(target), reason));
    }

    private Plan plan() {
        PressureRange range = PressureRange.of(basis, options, ceiling, throats);
        if (range.isEmpty()) {
            return refused(basis, OptionalDouble.of(ceiling.limit()), nothingBetween(range.low()));
        }
        List<PlannedThroat> ladder = ladder(range);
        NextFiring wanted = NextFiring.of(basis, options, range);
        Optional<PlannedThroat> next = wanted.pressure().isPresent()
                ? throatFor(wanted.pressure().getAsDouble())
                        .match(found -> Optional.of(found.throat()), none -> Optional.empty())
                : Optional.empty();
        OptionalInt firings = NextFiring.toExponent(basis, options, range);
        return new Plan.Planned(
                basis.formulation(),
                basis.grain(),
                ceiling.limit(),
                ceiling.reason(),
                throats.smallest(),
                next,
                ladder,
                throats.slowRegime(),
                throats.table(range.low()),
                firings,
                PlanSentence.of(basis, options, ceiling, next, wanted.why(), throats.smallest(), firings),
                cautions(ladder, next, range));
    }

    private String nothingBetween(double low) {
        return "No throat is named: no throat keeps the upper prediction of the peak below %s MPa (%s) at a mean of at least %s MPa. A stronger case, or a grain whose surface changes less, would help."
                .formatted(megapascal(ceiling.limit()), ceiling.reason(), megapascal(low));
    }

    private List<PlannedThroat> ladder(PressureRange range) {
        List<PlannedThroat> ladder = new ArrayList<>();
        Optional<PressureRange> spanned = options.ladder().map(range::within).orElse(Optional.of(range));
        if (spanned.isEmpty()) {
            return List.of();
        }
        for (double target : spanned.get().steps(options.rungs())) {
            OptionalDouble exact = throats.forMean(target);
            if (exact.isPresent()) {
                throats.drilled(exact.getAsDouble())
                        .filter(PlannedThroat::allowed)
                        .filter(each -> ladder.stream().noneMatch(other -> other.diameter() == each.diameter()))
                        .ifPresent(ladder::add);
            }
        }
        return ladder;
    }

    private List<String> cautions(List<PlannedThroat> ladder, Optional<PlannedThroat> firing, PressureRange range) {
        List<String> cautions = new ArrayList<>(Plan.CAUTIONS);
        cautions.addAll(basis.remarks());
        if (basis.hardware().casePressureLimit().isEmpty()) {
            cautions.add(
                    "No limit of the case is stated: nothing above the highest pressure fired so far, %s MPa, is named."
                            .formatted(megapascal(ceiling.limit())));
        }
        basis.slowBelow()
                .ifPresent(threshold -> cautions.add(
                        "All this is for a motor that is lit into its fast regime. If the igniter leaves it below %s MPa, it may smoulder and speed up late."
                                .formatted(megapascal(threshold))));
        boolean several = ladder.stream()
                        .anyMatch(each -> !each.otherEquilibria().isEmpty())
                || firing.stream().anyMatch(each -> !each.otherEquilibria().isEmpty());
        if (several) {
            cautions.add("Some of these motors have more than one steady pressure: the ignition decides which one.");
        }
        options.ladder()
                .filter(asked -> asked.low() < range.low() || asked.high() > range.high())
                .ifPresent(asked -> cautions.add(
                        "You asked for a ladder from %s to %s MPa. Throats are named only for means from %s to %s MPa: below, the law is not known, the throat may not choke or the propellant may smoulder; above, the law is not known or the case may not stand the pressure."
                                .formatted(
                                        megapascal(asked.low()),
                                        megapascal(asked.high()),
                                        megapascal(range.low()),
                                        megapascal(range.high()))));
        if (basis.points().isEmpty()) {
            cautions.add(
                    "The law is a first guess, and nothing was measured. Begin with the largest throat of the ladder, and plan again after each firing.");
        }
        return cautions;
    }

    private static Plan refused(PlanBasis basis, OptionalDouble allowed, String reason) {
        List<String> cautions = new ArrayList<>(Plan.CAUTIONS);
        cautions.addAll(basis.remarks());
        return new Plan.Refused(basis.formulation(), basis.grain(), allowed, reason, cautions);
    }

    /** The advice of a plan in words. */
    private static final class PlanSentence {

        private PlanSentence() {}

        static String of(
                PlanBasis basis,
                PlanOptions options,
                PressureCeiling ceiling,
                Optional<PlannedThroat> next,
                String why,
                double smallest,
                OptionalInt firings) {
            StringBuilder text = new StringBuilder();
            next.ifPresentOrElse(
                    each -> text.append(
                            "Next firing of %s: a throat of %s%s. Predicted: mean %s MPa, peak at most %s MPa (upper end of the %s %% prediction). %s."
                                    .formatted(
                                            basis.formulation(),
                                            diameter(each.diameter()),
                                            stamped(each),
                                            megapascal(each.meanPressure().value()),
                                            megapascal(each.maxPressure().high()),
                                            NumberFormat.plain(100 * options.level(), 4),
                                            why)),
                    () -> text.append("No next firing of %s is named. %s.".formatted(basis.formulation(), why)));
            text.append(" Do not go below a throat of %s: the peak could pass %s MPa, %s."
                    .formatted(diameter(smallest), megapascal(ceiling.limit()), ceiling.reason()));
            text.append(
                    firings.isEmpty()
                            ? " More firings of this kind cannot narrow the exponent to ±%s."
                                    .formatted(NumberFormat.significant(options.exponentHalfWidth(), 1))
                            : firings.getAsInt() == 0
                                    ? " The exponent is known to ±%s already."
                                            .formatted(NumberFormat.significant(options.exponentHalfWidth(), 1))
                                    : " About %s, at the ends of the range, would narrow the exponent to ±%s."
                                            .formatted(
                                                    firings.getAsInt() == 1
                                                            ? "1 more firing"
                                                            : firings.getAsInt() + " more firings",
                                                    NumberFormat.significant(options.exponentHalfWidth(), 1)));
            return text.toString();
        }

        private static String diameter(double diameter) {
            return "%s mm".formatted(NumberFormat.significant(diameter * 1000, 3));
        }

        private static String stamped(PlannedThroat throat) {
            return throat.drills().stream()
                    .filter(each -> each.diameter() == throat.diameter() && each.series() != Drill.Series.METRIC)
                    .findFirst()
                    .map(each -> " (drill %s)".formatted(each.name()))
                    .orElse("");
        }
    }
}
