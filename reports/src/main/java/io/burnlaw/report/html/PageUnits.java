package io.burnlaw.report.html;

import io.burnlaw.quantity.Unit;
import io.burnlaw.report.document.DocumentFile;
import java.util.LinkedHashMap;
import java.util.Map;

/** The units that the switch of a page offers, by its key, for the script of the page. */
public final class PageUnits {

    private PageUnits() {}

    /** {@return names, and factors from MPa, mm and mm/s, in JSON} */
    public static String factors() {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("mpa", factors(Unit.MEGAPASCAL, "MPa", Unit.MILLIMETRE, "mm", Unit.MILLIMETRE_PER_SECOND, "mm/s"));
        all.put("bar", factors(Unit.BAR, "bar", Unit.MILLIMETRE, "mm", Unit.MILLIMETRE_PER_SECOND, "mm/s"));
        all.put("psi", factors(Unit.POUND_PER_SQUARE_INCH, "psi", Unit.INCH, "in", Unit.INCH_PER_SECOND, "in/s"));
        return DocumentFile.text(all).replaceAll("\\s+", " ");
    }

    private static Map<String, Object> factors(
            Unit pressure, String pressureName, Unit length, String lengthName, Unit rate, String rateName) {
        Map<String, Object> factors = new LinkedHashMap<>();
        factors.put("pressure", pressure.fromSi(Unit.MEGAPASCAL.toSi(1)));
        factors.put("pressure_name", pressureName);
        factors.put("length", length.fromSi(Unit.MILLIMETRE.toSi(1)));
        factors.put("length_name", lengthName);
        factors.put("rate", rate.fromSi(Unit.MILLIMETRE_PER_SECOND.toSi(1)));
        factors.put("rate_name", rateName);
        return factors;
    }
}
