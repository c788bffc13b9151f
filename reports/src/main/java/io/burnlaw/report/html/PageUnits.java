package io.burnlaw.report.html;

import io.burnlaw.quantity.Unit;
import io.burnlaw.report.document.DocumentFile;
import java.util.LinkedHashMap;
import java.util.Map;

/** The units that the switch of a page offers, by its key, for the script of the page. */
public final class PageUnits {

    private PageUnits() {}

    /** {@return names, and factors from MPa and from mm, in JSON} */
    public static String factors() {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("mpa", factors(Unit.MEGAPASCAL, "MPa", Unit.MILLIMETRE, "mm"));
        all.put("bar", factors(Unit.BAR, "bar", Unit.MILLIMETRE, "mm"));
        all.put("psi", factors(Unit.POUND_PER_SQUARE_INCH, "psi", Unit.INCH, "in"));
        return DocumentFile.text(all).replaceAll("\\s+", " ");
    }

    private static Map<String, Object> factors(Unit pressure, String pressureName, Unit length, String lengthName) {
        Map<String, Object> factors = new LinkedHashMap<>();
        factors.put("pressure", pressure.fromSi(Unit.MEGAPASCAL.toSi(1)));
        factors.put("pressure_name", pressureName);
        factors.put("length", length.fromSi(Unit.MILLIMETRE.toSi(1)));
        factors.put("length_name", lengthName);
        return factors;
    }
}
