package io.burnlaw.report.html;

import io.burnlaw.report.chart.OffLaw;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.Firing.BudgetLine;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Law.UnitPair;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.document.Regimes.RegimeEvidence;
import io.burnlaw.report.document.Unit;
import io.burnlaw.report.wording.Numbers;
import io.burnlaw.report.wording.ShownUnits;
import io.burnlaw.report.wording.Units;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Words that the pages show for words of the document. */
public final class Words {

    private static final Map<String, String> SIGNS = Map.of(
            "used",
            "\u25cf",
            "flagged",
            "\u25b2",
            "rejected",
            "\u2715",
            "note",
            "\u25cb",
            "caution",
            "\u25b2",
            "rejection",
            "\u2715");

    private static final Map<String, String> METHODS = Map.of(
            "student-t", "Student\u2019s t from the covariance",
            "kenward-roger", "Kenward and Roger\u2019s from batches",
            "profile", "profile likelihood",
            "bootstrap-bca", "bootstrap over firings, bias-corrected (BCa)",
            "mass-balance", "mass balance",
            "thickness-time", "thickness over time",
            "effective-variance", "effective variance",
            "orthogonal-distance", "orthogonal distance");

    private static final Map<String, Map.Entry<String, Double>> READABLE = Map.of(
            "m", Map.entry("mm", 1e3),
            "Pa", Map.entry("kPa", 1e-3),
            "m3", Map.entry("cm3", 1e6),
            "m2", Map.entry("mm2", 1e6));

    private static final String UNITS = DocumentFile.text(ShownUnits.all()).replaceAll("\\s*\n\\s*", "");

    private Words() {}

    /** {@return the units that the switch of a page offers, for its script, in JSON} */
    public static String units() {
        return UNITS;
    }

    /**
     * A sign for a status or a severity, beside the word and never instead of it.
     *
     * @param word such as {@code flagged}
     * @return a sign whose form tells it from the others
     */
    public static String sign(String word) {
        return SIGNS.getOrDefault(word, "");
    }

    /**
     * A method in words.
     *
     * @param code such as {@code student-t}
     * @return such as Student's t from the covariance; an unknown code as it is
     */
    public static String method(String code) {
        return METHODS.getOrDefault(code, code.replace('-', ' '));
    }

    /**
     * A temperature in degrees Celsius beside kelvin, as people read it.
     *
     * @return the quantity in degrees Celsius, or null
     */
    public static @Nullable Quantity celsius(@Nullable Quantity kelvin) {
        if (kelvin == null || !"K".equals(kelvin.unit())) {
            return kelvin;
        }
        // to a thousandth: 294.15 - 273.15 is not 21 in binary
        double celsius = Math.rint((kelvin.value() - 273.15) * 1000) / 1000;
        return new Quantity(celsius, "Cel", null, null, null, kelvin.std());
    }

    /**
     * A unit as people write it.
     *
     * @param code UCUM
     * @return such as {@code g/cm³}
     */
    public static String unit(@Nullable String code) {
        return Units.shown(code);
    }

    /**
     * A diameter in millimetres, without the unit.
     *
     * @param diameter in any unit of length
     * @return such as {@code 12.35}
     */
    public static String mm(Quantity diameter) {
        return Numbers.written(Unit.MM.value(diameter), 4);
    }

    /**
     * A length that somebody measured, in millimetres, for a column whose heading has the unit.
     *
     * @param length in any unit of length, or null
     * @return such as {@code 80.2 ± 0.1}, or a dash
     */
    public static String length(@Nullable Quantity length) {
        return length == null
                ? "\u2013"
                : Numbers.stated(new Quantity(Unit.MM.value(length), null, null, null, null, Unit.MM.std(length)));
    }

    /**
     * What a column is sorted by.
     *
     * @return its value in full, or an empty text
     */
    public static String sortKey(@Nullable Quantity quantity) {
        return quantity == null ? "" : Double.toString(quantity.value());
    }

    /**
     * The interval of the coefficient in another pair of units.
     *
     * @return both ends, or a dash
     */
    public static String coefficientRange(UnitPair pair) {
        return Numbers.range(quantity(pair));
    }

    private static Quantity quantity(UnitPair pair) {
        Double variance =
                pair.covariance().isEmpty() ? null : pair.covariance().get(0).get(0);
        // the variance of ln a is the relative variance of a
        Double std =
                variance == null || !(variance > 0) ? null : Double.valueOf(pair.coefficient() * Math.sqrt(variance));
        return new Quantity(pair.coefficient(), null, pair.low(), pair.high(), null, std);
    }

    /**
     * {@return the probability of so much evidence by chance, as a simulation knows it: where no simulated campaign
     * showed as much, only that it is at most one in their number and one, such as {@code at most 0.005}}
     */
    public static String chance(RegimeEvidence evidence) {
        double least = 1.0 / (evidence.replicates() + 1);
        return evidence.pValue() != null && evidence.replicates() > 0 && evidence.pValue() <= least * (1 + 1e-9)
                ? "at most " + Numbers.written(least, 2)
                : Numbers.probability(evidence.pValue());
    }

    /** {@return how far a point is off the law that holds there, such as {@code −1.3 %}, or a dash} */
    public static String off(Point point, Formulation formulation) {
        return OffLaw.of(point, formulation)
                .map(off -> Numbers.like(Quantity.of(100 * off.share(), "%"), Quantity.of(0, "%", 100 * off.scatter())))
                .orElse("\u2013");
    }

    /** {@return what the column of {@link #off} is sorted by: a number, or an empty text} */
    public static String offKey(Point point, Formulation formulation) {
        return OffLaw.of(point, formulation)
                .map(off -> Double.toString(off.share()))
                .orElse("");
    }

    /**
     * The covariance of a law.
     *
     * @return both variances and the covariance, in words
     */
    public static String covariance(Law law) {
        return "var(ln r) = " + Numbers.number(law.covariance().get(0).get(0), 4) + ", cov = "
                + Numbers.number(law.covariance().get(0).get(1), 4) + ", var(n) = "
                + Numbers.number(law.covariance().get(1).get(1), 4);
    }

    /** {@return the standard uncertainty of one source of a budget, in a unit people read, such as {@code 0.014 mm}} */
    public static String own(BudgetLine line) {
        String unit = line.unit();
        double factor = unit == null
                ? 1
                : READABLE.getOrDefault(unit, Map.entry(unit, 1.0)).getValue();
        String shown = unit == null
                ? ""
                : Units.shown(READABLE.getOrDefault(unit, Map.entry(unit, 1.0)).getKey());
        return Numbers.number(factor * line.std(), 2) + (shown.isEmpty() ? "" : "\u00a0" + shown);
    }

    /**
     * A share as a bar.
     *
     * @param share [1]
     * @return an svg element that is hidden from screen readers, since the number stands beside it
     */
    public static String bar(double share) {
        long width = Math.round(100 * Math.max(0, Math.min(1, share)));
        return "<svg class=\"bar\" viewBox=\"0 0 100 10\" width=\"100\" height=\"10\" aria-hidden=\"true\">"
                + "<rect class=\"f-grid\" width=\"100\" height=\"10\"/><rect class=\"f-s1\" width=\"" + width
                + "\" height=\"10\"/></svg>";
    }

    /**
     * What may be claimed about a change of regime, in words.
     *
     * @param code such as {@code bend}
     * @return such as {@code the exponent changes; whether at a break or smoothly these points cannot tell}
     */
    public static String claim(String code) {
        return switch (code) {
            case "single-law" -> "one law over the whole range";
            case "smooth-curve" -> "the exponent changes smoothly with pressure, without a break";
            case "bend" -> "the exponent changes; these points do not show whether at a break or smoothly";
            case "break" -> "a break: two laws explain the points better than all smooth curves that were tried";
            default -> code;
        };
    }

    /**
     * A phrase as the beginning of a sentence.
     *
     * @param phrase not empty
     */
    public static String capital(String phrase) {
        return Character.toUpperCase(phrase.charAt(0)) + phrase.substring(1);
    }

    static int gravity(String severity) {
        return switch (severity) {
            case "rejection" -> 0;
            case "caution" -> 1;
            default -> 2;
        };
    }
}
