package io.burnlaw.regime;

import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import java.util.List;

/**
 * A law and the range of pressures in which it holds.
 *
 * @param law              the law
 * @param kind             the trade's word for it
 * @param settled          whether the exponent's interval lies wholly within what the word means; false where the
 *                         word is only the best estimate
 * @param exponentInterval of the exponent, at the level of the search
 * @param low              lower end of the range: the break below, or the lowest point [Pa, absolute]
 * @param high             upper end of the range: the break above, or the highest point [Pa, absolute]
 * @param ids              of the points that it rests on, from low to high pressure
 * @param sentence         the law in words, with numbers
 */
public record Regime(
        RateLaw law,
        RegimeKind kind,
        boolean settled,
        Interval exponentInterval,
        double low,
        double high,
        List<String> ids,
        String sentence) {

    public Regime {
        ids = List.copyOf(ids);
    }
}
