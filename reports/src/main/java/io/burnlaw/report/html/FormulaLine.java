package io.burnlaw.report.html;

import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Law.UnitPair;
import io.burnlaw.report.document.Quantity;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A law as people write it, in one pair of units. Coefficient and exponent are rounded together, so that they reproduce
 * the law within 0.05 % over its range. If each were rounded alone, the error could exceed the interval, since 1 psi is
 * far from every pressure that was fired.
 *
 * @param key         of the units, for the switch of the page
 * @param coefficient a with five digits or more
 * @param exponent    n with four decimals or more
 * @param range       interval of a in these units, or a dash
 * @param words       units, range and intervals
 * @param copied      formula, units and range as plain text
 */
public record FormulaLine(
        String key,
        String pressure,
        String rate,
        String coefficient,
        String exponent,
        String range,
        String words,
        String copied) {

    /** Share of the rate by which the rounded numbers may miss the law. */
    static final double CLOSE = 5e-4;

    private static final int LEAST_DIGITS = 5;
    private static final int MOST_DIGITS = 10;

    private record Units(String key, String pressure, String rate, Unit unit, String pressureName, String rateName) {}

    private static final List<Units> SHOWN = List.of(
            new Units("mpa", "MPa", "mm/s", Unit.MEGAPASCAL, "MPa", "mm/s"),
            new Units("bar", "bar", "mm/s", Unit.BAR, "bar", "mm/s"),
            new Units("psi", "[psi]", "[in_i]/s", Unit.POUND_PER_SQUARE_INCH, "psi", "in/s"));

    private static final Units SI = new Units("pa", "Pa", "m/s", Unit.PASCAL, "Pa", "m/s");

    /**
     * A law in every pair of units that the page switches between.
     *
     * @return one line a pair that the document has, MPa and mm/s first
     */
    public static List<FormulaLine> of(Law law) {
        return of(law, SHOWN);
    }

    /**
     * A law in every pair of units that is cited.
     *
     * @return those of {@link #of(Law)}, and that of Pa and m/s
     */
    public static List<FormulaLine> cited(Law law) {
        return of(law, Stream.concat(SHOWN.stream(), Stream.of(SI)).toList());
    }

    private static List<FormulaLine> of(Law law, List<Units> all) {
        UnitPair own = new UnitPair(
                "MPa",
                "mm/s",
                law.coefficient().value(),
                law.coefficient().low(),
                law.coefficient().high(),
                law.exponent().value(),
                law.coefficient().std() == null
                        ? List.of()
                        : List.of(List.of(square(
                                law.coefficient().std() / law.coefficient().value()))));
        List<FormulaLine> lines = new ArrayList<>();
        for (Units units : all) {
            Stream.concat(Stream.of(own), law.unitPairs().stream())
                    .filter(pair -> pair.pressureUnit().equals(units.pressure)
                            && pair.rateUnit().equals(units.rate))
                    .findFirst()
                    .ifPresent(pair -> lines.add(line(law, pair, units)));
        }
        return lines;
    }

    private static FormulaLine line(Law law, UnitPair pair, Units units) {
        String range = pressure(law.pressureLow().value(), units) + " to "
                + pressure(law.pressureHigh().value(), units) + " " + units.pressureName;
        String stated = "r in " + units.rateName + ", P absolute in " + units.pressureName;
        String a = between(pair.low(), pair.high(), 4);
        String n = between(law.exponent().low(), law.exponent().high(), 3);
        Double level = law.coefficient().level();
        String intervals = a.isEmpty() || level == null
                ? ""
                : "; a " + a + (n.isEmpty() ? "" : ", n " + n) + " (" + NumberFormat.plain(100 * level, 3) + " %)";
        Rounded rounded = Rounded.of(pair, inUnits(law.pressureLow(), units), inUnits(law.pressureHigh(), units));
        String exponent = rounded.exponent.toPlainString();
        return new FormulaLine(
                units.key,
                units.pressureName,
                units.rateName,
                rounded.coefficient.toPlainString(),
                exponent.replace('-', '\u2212'),
                Words.coefficientRange(pair),
                stated + "; from " + range + intervals,
                "r = " + rounded.coefficient.toPlainString() + " * P^"
                        + (exponent.startsWith("-") ? "(" + exponent + ")" : exponent) + "   (" + stated + ", " + range
                        + ")");
    }

    private static double square(double number) {
        return number * number;
    }

    private static double inUnits(Quantity pressure, Units units) {
        return units.unit.fromSi(Unit.MEGAPASCAL.toSi(io.burnlaw.report.document.Unit.MPA.value(pressure)));
    }

    /** The exponent to a place, and the coefficient that then meets the law in the middle of its range. */
    private record Rounded(BigDecimal coefficient, BigDecimal exponent) {

        static Rounded of(UnitPair pair, double low, double high) {
            double middle = StrictMath.sqrt(low * high);
            for (int digits = LEAST_DIGITS; ; digits++) {
                BigDecimal n = new BigDecimal(pair.exponent()).setScale(digits - 1, RoundingMode.HALF_EVEN);
                double a = pair.coefficient() * StrictMath.pow(middle, pair.exponent() - n.doubleValue());
                Rounded rounded =
                        new Rounded(new BigDecimal(a).round(new MathContext(digits, RoundingMode.HALF_EVEN)), n);
                // two power laws differ most at an end of a range
                if (digits == MOST_DIGITS || rounded.near(pair, low) && rounded.near(pair, high)) {
                    return rounded;
                }
            }
        }

        private boolean near(UnitPair pair, double pressure) {
            double ratio = coefficient.doubleValue()
                    / pair.coefficient()
                    * StrictMath.pow(pressure, exponent.doubleValue() - pair.exponent());
            return Math.abs(ratio - 1) <= CLOSE;
        }
    }

    private static String between(@Nullable Double low, @Nullable Double high, int digits) {
        return low == null || high == null
                ? ""
                : NumberFormat.significant(low, digits) + " to " + NumberFormat.significant(high, digits);
    }

    private static String pressure(double megapascals, Units units) {
        return NumberFormat.significant(units.unit.fromSi(Unit.MEGAPASCAL.toSi(megapascals)), 2);
    }
}
