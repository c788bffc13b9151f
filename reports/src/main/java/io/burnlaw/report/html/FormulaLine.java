package io.burnlaw.report.html;

import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.UnitPair;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A law as people write it, in one pair of units.
 *
 * @param key         of the units, for the switch of the page
 * @param coefficient a with four digits
 * @param exponent    n with three
 * @param words       units, range and intervals
 * @param copied      the same as plain text with six digits, which give the law back within 0.01 %
 */
public record FormulaLine(String key, String coefficient, String exponent, String words, String copied) {

    private record Units(String key, String pressure, String rate, Unit unit, String pressureName, String rateName) {}

    private static final List<Units> SHOWN = List.of(
            new Units("mpa", "MPa", "mm/s", Unit.MEGAPASCAL, "MPa", "mm/s"),
            new Units("bar", "bar", "mm/s", Unit.BAR, "bar", "mm/s"),
            new Units("psi", "[psi]", "[in_i]/s", Unit.POUND_PER_SQUARE_INCH, "psi", "in/s"));

    /**
     * A law in every pair of units that the page switches between.
     *
     * @param law with its unit pairs
     * @return one line a pair that the document has, MPa and mm/s first
     */
    public static List<FormulaLine> of(Law law) {
        UnitPair own = new UnitPair(
                "MPa",
                "mm/s",
                law.coefficient().value(),
                law.coefficient().low(),
                law.coefficient().high(),
                law.exponent().value(),
                List.of());
        List<FormulaLine> lines = new ArrayList<>();
        for (Units units : SHOWN) {
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
        return new FormulaLine(
                units.key,
                NumberFormat.significant(pair.coefficient(), 4),
                NumberFormat.significant(pair.exponent(), 3),
                stated + "; from " + range + intervals,
                "r = " + NumberFormat.plain(pair.coefficient(), 6) + " * P^" + NumberFormat.plain(pair.exponent(), 6)
                        + "   (" + stated + ", " + range + ")");
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
