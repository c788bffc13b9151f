package io.burnlaw.report.wording;

import io.burnlaw.report.document.Invisible;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** UCUM codes as people write them. */
public final class Units {

    private static final Map<String, String> SHOWN = Map.ofEntries(
            Map.entry("1", ""),
            Map.entry("[psi]", "psi"),
            Map.entry("[in_i]", "in"),
            Map.entry("[in_i]/s", "in/s"),
            Map.entry("[lbf_av]", "lbf"),
            Map.entry("g/cm3", "g/cm\u00b3"),
            Map.entry("kg/m3", "kg/m\u00b3"),
            Map.entry("mm2", "mm\u00b2"),
            Map.entry("cm3", "cm\u00b3"),
            Map.entry("N.s", "N\u00b7s"),
            Map.entry("Cel", "\u00b0C"),
            Map.entry("[degF]", "\u00b0F"));

    private Units() {}

    /**
     * A unit as people write it.
     *
     * @param code UCUM code, or null for a pure number
     * @return such as {@code g/cm³}; an unknown code as it is
     */
    public static String shown(@Nullable String code) {
        return code == null ? "" : SHOWN.getOrDefault(code, Invisible.shown(code));
    }
}
