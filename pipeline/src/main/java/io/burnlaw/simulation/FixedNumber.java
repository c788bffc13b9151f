package io.burnlaw.simulation;

import io.burnlaw.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as instruments show them: a fixed number of decimals, or of digits. */
final class FixedNumber {

    private FixedNumber() {}

    /** A number with so many decimals. */
    static String decimals(double value, int decimals) {
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .toPlainString();
    }

    /** A number with so many significant digits, without trailing zeros. */
    static String digits(double value, int digits) {
        BigDecimal rounded = BigDecimal.valueOf(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** The decimals that a column in a unit needs so that its last digit is not above a step in SI. */
    static int decimalsFor(Unit unit, double step) {
        double inUnit = unit.differenceFromSi(step);
        int decimals = 0;
        for (double last = 1; last > inUnit * 1.0000001 && decimals < 9; last /= 10) {
            decimals++;
        }
        return decimals;
    }
}
