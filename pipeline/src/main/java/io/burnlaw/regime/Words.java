package io.burnlaw.regime;

import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.Interval;
import java.util.List;

/** SI numbers as the sentences of this package say them. */
final class Words {

    private static final List<String> NUMBERS = List.of("no", "one", "two", "three", "four", "five");

    private Words() {}

    /** {@return such as {@code 1.02 MPa}} */
    static String pressure(double pascal) {
        return NumberFormat.significant(Unit.MEGAPASCAL.fromSi(pascal), 3) + " MPa";
    }

    /** {@return such as {@code 6.94 mm/s}} */
    static String rate(double metrePerSecond) {
        return NumberFormat.significant(Unit.MILLIMETRE_PER_SECOND.fromSi(metrePerSecond), 3) + " mm/s";
    }

    /** {@return a number with its interval, or the number to three digits} */
    static String number(double value, Interval interval) {
        return interval.estimated()
                .map(e -> NumberFormat.withInterval(value, e.low(), e.high()))
                .orElseGet(() -> NumberFormat.significant(value, 3));
    }

    /** {@return a pressure with its interval in MPa} */
    static String pressure(double pascal, Interval interval) {
        return interval.estimated()
                .map(e -> NumberFormat.withInterval(
                                Unit.MEGAPASCAL.fromSi(pascal),
                                Unit.MEGAPASCAL.fromSi(e.low()),
                                Unit.MEGAPASCAL.fromSi(e.high()))
                        + " MPa")
                .orElseGet(() -> pressure(pascal));
    }

    /** {@return such as {@code point A3} or {@code points A3, A7 and B1}} */
    static String points(List<String> ids) {
        int n = ids.size();
        return n == 1
                ? "point " + ids.get(0)
                : "points " + String.join(", ", ids.subList(0, n - 1)) + " and " + ids.get(n - 1);
    }

    static String count(int number) {
        return number < NUMBERS.size() ? NUMBERS.get(number) : Integer.toString(number);
    }

    static String laws(int number) {
        return count(number) + (number == 1 ? " power law" : " power laws");
    }
}
