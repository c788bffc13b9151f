package io.burnlaw.quantity;

/** What kind of thing a quantity is: two quantities can be compared if they have the same dimension. */
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
            case VOLTAGE -> Unit.VOLT;
            case CURRENT -> Unit.MILLIAMPERE;
            case COUNT -> Unit.COUNT;
        };
    }
}
