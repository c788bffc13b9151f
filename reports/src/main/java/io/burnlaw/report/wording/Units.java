package io.burnlaw.report.wording;

import io.burnlaw.quantity.Unit;
import io.burnlaw.report.document.Invisible;
import org.jspecify.annotations.Nullable;

/** The usual spelling of UCUM codes. */
public final class Units {

    private Units() {}

    /**
     * A unit as people write it.
     *
     * @param code UCUM code, or null for a pure number
     * @return such as {@code g/cm³}; an unknown code as it is
     */
    public static String shown(@Nullable String code) {
        if (code == null || code.equals(Unit.ONE.ucum())) {
            return "";
        }
        return code.equals("N.s")
                ? "N\u00b7s"
                : Unit.spelled(code)
                        .filter(unit -> unit.ucum().equals(code))
                        .map(Unit::symbol)
                        .orElseGet(() -> Invisible.shown(code));
    }
}
