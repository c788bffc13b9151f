package io.burnlaw.planning;

import static io.burnlaw.quantity.NumberFormat.megapascal;

import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.ratelaw.PiecewiseLaw;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The mean pressure at which a firing tells most, and why there.
 *
 * @param pressure [Pa, absolute]; empty where none within the range tells anything
 * @param why      a clause
 */
record NextFiring(OptionalDouble pressure, String why) {

    /** Pressures among which it is chosen. */
    private static final int CANDIDATES = 25;

    /** More firings than this are no plan. */
    private static final int MOST_FIRINGS = 200;

    /** A firing must tell by so much more to be taken instead of one at a lower pressure. */
    private static final double WORTH = 0.98;

    static NextFiring of(PlanBasis basis, PlanOptions options, PressureRange range) {
        Optional<NextFiring> forBreak =
                options.goal() == PlanOptions.Goal.EXPONENT ? Optional.empty() : forBreak(basis, range);
        if (options.goal() == PlanOptions.Goal.BREAK) {
            return forBreak.orElse(new NextFiring(
                    OptionalDouble.empty(), "No break within the allowed pressures can be sharpened by a firing"));
        }
        return forBreak.orElseGet(() -> forExponent(basis.law(), range));
    }

    private static NextFiring forExponent(PiecewiseLaw law, PressureRange range) {
        double best = range.low();
        double least = Double.POSITIVE_INFINITY;
        for (double pressure : range.steps(CANDIDATES)) {
            double after =
                    ExponentInformation.of(law.at(pressure)).with(pressure).exponentStd();
            if (after < WORTH * least) {
                least = after;
                best = pressure;
            }
        }
        double now = ExponentInformation.of(law.at(best)).exponentStd();
        return new NextFiring(
                OptionalDouble.of(best),
                "It tells most of the exponent: its standard uncertainty falls from %s to %s"
                        .formatted(NumberFormat.significant(now, 2), NumberFormat.significant(least, 2)));
    }

    private static Optional<NextFiring> forBreak(PlanBasis basis, PressureRange range) {
        for (int i = 0; i < basis.law().breaks().size(); i++) {
            BreakInformation information = new BreakInformation(basis.law(), basis.points(), i);
            Optional<Double> wanted = information.jumps() ? information.middleOfGap() : sharpest(information, range);
            if (wanted.filter(range::holds).isPresent()) {
                return Optional.of(new NextFiring(
                        OptionalDouble.of(wanted.get()),
                        "It tells most of the break at %s MPa".formatted(megapascal(information.pressure()))));
            }
        }
        return Optional.empty();
    }

    private static Optional<Double> sharpest(BreakInformation information, PressureRange range) {
        Optional<Double> now = information.lnStd();
        if (now.isEmpty()) {
            return Optional.empty();
        }
        double least = now.get();
        Optional<Double> best = Optional.empty();
        for (double pressure : range.steps(CANDIDATES)) {
            double after = information.lnStdWith(pressure).orElse(Double.POSITIVE_INFINITY);
            if (after < WORTH * least) {
                least = after;
                best = Optional.of(pressure);
            }
        }
        return best;
    }

    /**
     * How many more firings, each where it tells most, until the exponent in the middle of the range is known as well as
     * wanted; empty where even many would not reach it.
     */
    static OptionalInt toExponent(PlanBasis basis, PlanOptions options, PressureRange range) {
        PiecewiseLaw law = basis.law();
        int piece = law.indexAt(range.middle());
        double from =
                piece == 0 ? range.low() : Math.max(range.low(), law.breaks().get(piece - 1));
        double to = piece == law.breaks().size()
                ? range.high()
                : Math.min(range.high(), law.breaks().get(piece));
        ExponentInformation information = ExponentInformation.of(law.laws().get(piece));
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
}
