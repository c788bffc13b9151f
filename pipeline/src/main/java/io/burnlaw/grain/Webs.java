package io.burnlaw.grain;

import io.burnlaw.quantity.Measured;
import java.util.OptionalDouble;

/** Webs out of measured lengths; an uncertainty comes out only where every length in it had one. */
final class Webs {

    private Webs() {}

    /** Half the difference of two independent diameters: u = sqrt(u1^2 + u2^2) / 2 (JCGM 100:2008, eq. 10). */
    static Measured halfDifference(Measured larger, Measured smaller) {
        OptionalDouble std = larger.std().isPresent() && smaller.std().isPresent()
                ? OptionalDouble.of(
                        Math.hypot(larger.std().getAsDouble(), smaller.std().getAsDouble()) / 2)
                : OptionalDouble.empty();
        return new Measured((larger.value() - smaller.value()) / 2, std);
    }

    /** One of several equal parts of a length. */
    static Measured part(Measured length, int parts) {
        OptionalDouble std = length.std().isPresent()
                ? OptionalDouble.of(length.std().getAsDouble() / parts)
                : OptionalDouble.empty();
        return new Measured(length.value() / parts, std);
    }

    static Measured smaller(Measured one, Measured other) {
        return other.value() < one.value() ? other : one;
    }

    static Measured larger(Measured one, Measured other) {
        return other.value() > one.value() ? other : one;
    }
}
