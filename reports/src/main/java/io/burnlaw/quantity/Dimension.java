package io.burnlaw.quantity;

import java.util.List;

/** The dimension of a quantity: two quantities can be compared if they have the same dimension. */
public enum Dimension {
    /** SI unit m. */
    LENGTH("a length"),
    /** SI unit m2. */
    AREA("an area"),
    /** SI unit m3. */
    VOLUME("a volume"),
    /** SI unit kg. */
    MASS("a mass"),
    /** SI unit s. */
    TIME("a time"),
    /** SI unit Pa. */
    PRESSURE("a pressure"),
    /** SI unit N. */
    FORCE("a force"),
    /** SI unit K. */
    TEMPERATURE("a temperature"),
    /** SI unit kg/m3. */
    DENSITY("a density"),
    /** SI unit m/s. */
    SPEED("a speed"),
    /** SI unit 1. */
    FRACTION("a share"),
    /** SI unit Hz. */
    FREQUENCY("a rate of samples"),
    /** SI unit V. */
    VOLTAGE("a voltage"),
    /** SI unit A. */
    CURRENT("a current"),
    /** Bare steps of a converter, unit 1. */
    COUNT("a count");

    private final String noun;

    Dimension(String noun) {
        this.noun = noun;
    }

    /** {@return the dimension in words, with its article, such as {@code a length}} */
    public String noun() {
        return noun;
    }

    /**
     * The units that people use for it. A message that misses a unit asks which of them is meant: a guess could send
     * somebody to a pressure or a throat that was never meant.
     *
     * @return at least one, the usual one first
     */
    public List<Unit> choices() {
        return switch (this) {
            case LENGTH -> List.of(Unit.MILLIMETRE, Unit.CENTIMETRE, Unit.INCH);
            case MASS -> List.of(Unit.GRAM, Unit.KILOGRAM, Unit.OUNCE);
            case TIME -> List.of(Unit.SECOND, Unit.MILLISECOND);
            case PRESSURE -> List.of(Unit.MEGAPASCAL, Unit.BAR, Unit.POUND_PER_SQUARE_INCH);
            case FORCE -> List.of(Unit.NEWTON, Unit.POUND_FORCE, Unit.KILOGRAM_FORCE);
            case SPEED -> List.of(Unit.MILLIMETRE_PER_SECOND, Unit.INCH_PER_SECOND);
            case DENSITY -> List.of(Unit.GRAM_PER_CUBIC_CENTIMETRE, Unit.KILOGRAM_PER_CUBIC_METRE);
            default -> List.of(usual());
        };
    }

    /**
     * The choices written out for a message, each in the same form.
     *
     * @param form with one {@code %s} for the unit, such as {@code "70 %s"} or {@code "throat_diameter [%s]"}
     * @return such as {@code 70 MPa, 70 bar or 70 psi}
     */
    public String choicesWritten(String form) {
        List<String> all = choices().stream()
                .map(unit -> form.replace("%s", unit.symbol()))
                .toList();
        int last = all.size() - 1;
        return last == 0 ? all.get(0) : String.join(", ", all.subList(0, last)) + " or " + all.get(last);
    }

    /** {@return the unit that messages propose} */
    public Unit usual() {
        return switch (this) {
            case LENGTH -> Unit.MILLIMETRE;
            case AREA -> Unit.SQUARE_MILLIMETRE;
            case VOLUME -> Unit.CUBIC_CENTIMETRE;
            case MASS -> Unit.GRAM;
            case TIME -> Unit.MILLISECOND;
            case PRESSURE -> Unit.MEGAPASCAL;
            case FORCE -> Unit.NEWTON;
            case TEMPERATURE -> Unit.DEGREE_CELSIUS;
            case DENSITY -> Unit.GRAM_PER_CUBIC_CENTIMETRE;
            case SPEED -> Unit.MILLIMETRE_PER_SECOND;
            case FRACTION -> Unit.PERCENT;
            case FREQUENCY -> Unit.HERTZ;
            case VOLTAGE -> Unit.VOLT;
            case CURRENT -> Unit.MILLIAMPERE;
            case COUNT -> Unit.COUNT;
        };
    }
}
