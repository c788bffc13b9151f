package io.burnlaw.quantity;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The units that people write in logs, on sensors and in papers: each with its exact factor to SI, its UCUM code, and
 * the spellings that are read.
 *
 * <p><b>Source.</b> Factors: NIST Special Publication 811 (2008), appendix B, where exact definitions are given; see
 * {@link Exact}. Codes: The Unified Code for Units of Measure, version 2.1.
 */
public enum Unit {
    METRE(Dimension.LENGTH, 1, 1, "m", "m", "metre, meter, metres, meters"),
    CENTIMETRE(Dimension.LENGTH, 1, 100, "cm", "cm"),
    MILLIMETRE(Dimension.LENGTH, 1, 1000, "mm", "mm", "MM, millimetre, millimeter"),
    MICROMETRE(Dimension.LENGTH, 1, 1e6, "um", "µm", "um, μm, micron, microns"),
    INCH(Dimension.LENGTH, Exact.INCH, 1, "[in_i]", "in", "inch, inches, IN, \", ″"),
    FOOT(Dimension.LENGTH, Exact.FOOT, 1, "[ft_i]", "ft", "foot, feet, ′"),
    THOUSANDTH_OF_AN_INCH(Dimension.LENGTH, Exact.INCH, 1000, "[mil_i]", "thou", "mil, mils"),
    SQUARE_METRE(Dimension.AREA, 1, 1, "m2", "m²", "m^2"),
    SQUARE_CENTIMETRE(Dimension.AREA, 1, 1e4, "cm2", "cm²", "cm^2"),
    SQUARE_MILLIMETRE(Dimension.AREA, 1, 1e6, "mm2", "mm²", "mm^2"),
    SQUARE_INCH(Dimension.AREA, Exact.SQUARE_INCH, 1, "[in_i]2", "in²", "in2, in^2, [sin_i], sq.in, sqin"),
    CUBIC_METRE(Dimension.VOLUME, 1, 1, "m3", "m³", "m^3"),
    CUBIC_CENTIMETRE(Dimension.VOLUME, 1, 1e6, "cm3", "cm³", "cm^3, cc, ccm, ml, mL"),
    CUBIC_MILLIMETRE(Dimension.VOLUME, 1, 1e9, "mm3", "mm³", "mm^3"),
    LITRE(Dimension.VOLUME, 1, 1000, "L", "L", "l, litre, liter"),
    CUBIC_INCH(Dimension.VOLUME, Exact.CUBIC_INCH, 1, "[in_i]3", "in³", "in3, in^3, [cin_i], cu.in, cuin"),
    KILOGRAM(Dimension.MASS, 1, 1, "kg", "kg", "Kg, KG"),
    GRAM(Dimension.MASS, 1, 1000, "g", "g", "gram, grams"),
    MILLIGRAM(Dimension.MASS, 1, 1e6, "mg", "mg"),
    POUND(Dimension.MASS, Exact.POUND, 1, "[lb_av]", "lb", "lbs, lbm, pound, pounds"),
    OUNCE(Dimension.MASS, Exact.POUND, 16, "[oz_av]", "oz", "ounce, ounces"),
    SECOND(Dimension.TIME, 1, 1, "s", "s", "sec, secs, second, seconds"),
    MILLISECOND(Dimension.TIME, 1, 1000, "ms", "ms", "msec, millisecond, milliseconds, millis"),
    MICROSECOND(Dimension.TIME, 1, 1e6, "us", "µs", "us, μs, usec, microsecond, microseconds, micros"),
    NANOSECOND(Dimension.TIME, 1, 1e9, "ns", "ns", "nsec"),
    MINUTE(Dimension.TIME, 60, 1, "min", "min", "minute, minutes"),
    HOUR(Dimension.TIME, 3600, 1, "h", "h", "hr, hour, hours"),
    PASCAL(Dimension.PRESSURE, 1, 1, "Pa", "Pa", "pascal, N/m2, N/m^2, N/m²"),
    HECTOPASCAL(Dimension.PRESSURE, 100, 1, "hPa", "hPa", "mbar, mBar"),
    KILOPASCAL(Dimension.PRESSURE, 1000, 1, "kPa", "kPa", "KPa, kpa"),
    MEGAPASCAL(Dimension.PRESSURE, 1e6, 1, "MPa", "MPa", "N/mm2, N/mm^2, N/mm²"),
    BAR(Dimension.PRESSURE, 1e5, 1, "bar", "bar", "Bar, BAR, bars"),
    STANDARD_ATMOSPHERE(Dimension.PRESSURE, Exact.STANDARD_ATMOSPHERE, 1, "atm", "atm", "ATM"),
    TECHNICAL_ATMOSPHERE(
            Dimension.PRESSURE,
            Exact.STANDARD_GRAVITY * 1e4,
            1,
            "att",
            "kgf/cm²",
            "kgf/cm2, kgf/cm^2, kp/cm2, kg/cm2, kg/cm², kg/cm^2"),
    POUND_PER_SQUARE_INCH(
            Dimension.PRESSURE,
            Exact.POUND_FORCE,
            Exact.SQUARE_INCH,
            "[psi]",
            "psi",
            "PSI, Psi, lbf/in2, lbf/in^2, lbf/in², lb/in2, lb/in², lb/in^2, lbs/in2, lbf/sq in, lb/sq in"),
    KILOPOUND_PER_SQUARE_INCH(
            Dimension.PRESSURE, 1000 * Exact.POUND_FORCE, Exact.SQUARE_INCH, "k[psi]", "ksi", "KSI, kpsi"),
    MILLIMETRE_OF_MERCURY(Dimension.PRESSURE, Exact.METRE_OF_MERCURY, 1000, "mm[Hg]", "mmHg", "torr, Torr"),
    INCH_OF_MERCURY(Dimension.PRESSURE, Exact.METRE_OF_MERCURY * Exact.INCH, 1, "[in_i'Hg]", "inHg", "\"Hg"),
    NEWTON(Dimension.FORCE, 1, 1, "N", "N", "newton, newtons"),
    KILONEWTON(Dimension.FORCE, 1000, 1, "kN", "kN"),
    MILLINEWTON(Dimension.FORCE, 1, 1000, "mN", "mN"),
    POUND_FORCE(Dimension.FORCE, Exact.POUND_FORCE, 1, "[lbf_av]", "lbf", "LBF, lbs-f, lb-f"),
    OUNCE_FORCE(Dimension.FORCE, Exact.POUND_FORCE, 16, "[oz_av].[g]", "ozf"),
    KILOGRAM_FORCE(Dimension.FORCE, Exact.STANDARD_GRAVITY, 1, "kgf", "kgf", "kp"),
    GRAM_FORCE(Dimension.FORCE, Exact.STANDARD_GRAVITY, 1000, "gf", "gf"),
    KELVIN(Dimension.TEMPERATURE, 1, 1, "K", "K", "kelvin"),
    DEGREE_CELSIUS(Dimension.TEMPERATURE, 1, 1, 273.15, "Cel", "°C", "degC, C, ℃"),
    DEGREE_FAHRENHEIT(Dimension.TEMPERATURE, 5, 9, 459.67, "[degF]", "°F", "degF, F, ℉"),
    DEGREE_RANKINE(Dimension.TEMPERATURE, 5, 9, "[degR]", "°R", "degR, R"),
    KILOGRAM_PER_CUBIC_METRE(Dimension.DENSITY, 1, 1, "kg/m3", "kg/m³", "kg/m^3, g/L, g/l"),
    GRAM_PER_CUBIC_CENTIMETRE(
            Dimension.DENSITY, 1000, 1, "g/cm3", "g/cm³", "g/cm^3, g/cc, g/ml, g/mL, kg/L, kg/l, kg/dm3, t/m3"),
    POUND_PER_CUBIC_INCH(
            Dimension.DENSITY, Exact.POUND, Exact.CUBIC_INCH, "[lb_av]/[in_i]3", "lb/in³", "lb/in3, lb/in^3, lbm/in3"),
    POUND_PER_CUBIC_FOOT(
            Dimension.DENSITY, Exact.POUND, Exact.CUBIC_FOOT, "[lb_av]/[ft_i]3", "lb/ft³", "lb/ft3, lb/ft^3, lbm/ft3"),
    METRE_PER_SECOND(Dimension.SPEED, 1, 1, "m/s", "m/s"),
    CENTIMETRE_PER_SECOND(Dimension.SPEED, 1, 100, "cm/s", "cm/s"),
    MILLIMETRE_PER_SECOND(Dimension.SPEED, 1, 1000, "mm/s", "mm/s", "mm/sec"),
    MICROMETRE_PER_SECOND(Dimension.SPEED, 1, 1e6, "um/s", "µm/s", "um/s, μm/s"),
    INCH_PER_SECOND(Dimension.SPEED, Exact.INCH, 1, "[in_i]/s", "in/s", "in/sec, ips, inch/s"),
    FOOT_PER_SECOND(Dimension.SPEED, Exact.FOOT, 1, "[ft_i]/s", "ft/s", "ft/sec, fps"),
    MILLIMETRE_PER_MINUTE(Dimension.SPEED, 1, 60000, "mm/min", "mm/min"),
    INCH_PER_MINUTE(Dimension.SPEED, Exact.INCH, 60, "[in_i]/min", "in/min"),
    ONE(Dimension.FRACTION, 1, 1, "1", "1"),
    PERCENT(Dimension.FRACTION, 1, 100, "%", "%", "percent, wt%, wt.%, wt-%"),
    PER_MILLE(Dimension.FRACTION, 1, 1000, "[ppth]", "‰"),
    PART_PER_MILLION(Dimension.FRACTION, 1, 1e6, "[ppm]", "ppm"),
    HERTZ(Dimension.FREQUENCY, 1, 1, "Hz", "Hz", "hz, HZ, 1/s, S/s, Sa/s, samples/s, sps, SPS"),
    KILOHERTZ(Dimension.FREQUENCY, 1000, 1, "kHz", "kHz", "khz, KHz, kS/s, kSa/s, ksps, kSPS"),
    VOLT(Dimension.VOLTAGE, 1, 1, "V", "V", "volt, volts, Volt, Volts"),
    MILLIVOLT(Dimension.VOLTAGE, 1, 1000, "mV", "mV", "millivolt, millivolts"),
    MICROVOLT(Dimension.VOLTAGE, 1, 1e6, "uV", "µV", "uV, μV"),
    AMPERE(Dimension.CURRENT, 1, 1, "A", "A", "amp, amps"),
    MILLIAMPERE(Dimension.CURRENT, 1, 1000, "mA", "mA"),
    COUNT(Dimension.COUNT, 1, 1, "{count}", "count", "counts, digit, digits, LSB, lsb, ADC, adc");

    private static final Map<String, Unit> BY_SPELLING = bySpelling();
    private static final Map<String, Unit> IN_ANY_CASE = inAnyCase();

    private final Dimension dimension;
    private final double multiplier;
    private final double divisor;
    private final double offset;
    private final String ucum;
    private final String symbol;
    private final List<String> otherSpellings;

    Unit(Dimension dimension, double multiplier, double divisor, String ucum, String symbol) {
        this(dimension, multiplier, divisor, ucum, symbol, symbol);
    }

    Unit(Dimension dimension, double multiplier, double divisor, String ucum, String symbol, String others) {
        this(dimension, multiplier, divisor, 0.0, ucum, symbol, others);
    }

    /** Factors are a fraction, so that 12.7 mm is 0.0127 m to the last bit; other spellings are parted by commas. */
    Unit(
            Dimension dimension,
            double multiplier,
            double divisor,
            double offset,
            String ucum,
            String symbol,
            String others) {
        this.dimension = dimension;
        this.multiplier = multiplier;
        this.divisor = divisor;
        this.offset = offset;
        this.ucum = ucum;
        this.symbol = symbol;
        this.otherSpellings = List.of(others.split(", "));
    }

    /**
     * The unit that a spelling stands for. Capitals matter, since mPa is not MPa.
     *
     * @param text as written, without brackets around it
     * @return the unit; empty where the spelling is not known
     */
    public static Optional<Unit> spelled(String text) {
        return Optional.ofNullable(BY_SPELLING.get(text.strip()));
    }

    /**
     * The unit of a heading, where people care less for capitals: {@code MPA}, {@code Sec}, {@code PSI}. What could be
     * milli or mega is read with its capitals only, but for a pressure in capitals or small letters throughout, which is
     * always mega.
     *
     * @param text as written, without brackets around it
     * @return the unit; empty where the spelling is not known, or could be two
     */
    public static Optional<Unit> spelledInAnyCase(String text) {
        String stripped = text.strip();
        Optional<Unit> exact = spelled(stripped);
        boolean prefixed = stripped.startsWith("mP")
                || stripped.startsWith("M")
                        && !stripped.toUpperCase(Locale.ROOT).startsWith("MP");
        if (exact.isPresent() || stripped.length() < 2) {
            return exact;
        }
        return Optional.ofNullable(IN_ANY_CASE.get(stripped.toLowerCase(Locale.ROOT)))
                .filter(unit -> !prefixed || unit.dimension == Dimension.TIME || unit.dimension == Dimension.LENGTH);
    }

    /**
     * The known spelling that looks most like an unknown one.
     *
     * @param text as written
     * @return the unit of that dimension whose spelling differs least; empty where none comes near
     */
    public static Optional<Unit> nearest(String text, Dimension dimension) {
        Unit nearest = null;
        double least = Double.POSITIVE_INFINITY;
        for (Map.Entry<String, Unit> known : BY_SPELLING.entrySet()) {
            if (known.getValue().dimension != dimension) {
                continue;
            }
            double distance = Spelling.distance(text.strip(), known.getKey());
            boolean closer = distance < least
                    || distance == least && nearest != null && known.getValue().compareTo(nearest) < 0;
            if (Spelling.near(distance, text) && closer) {
                nearest = known.getValue();
                least = distance;
            }
        }
        return Optional.ofNullable(nearest);
    }

    /** {@return what kind of thing it measures} */
    public Dimension dimension() {
        return dimension;
    }

    /** {@return the case-sensitive code of the Unified Code for Units of Measure} */
    public String ucum() {
        return ucum;
    }

    /** {@return what people read, such as {@code °C} or {@code g/cm³}} */
    public String symbol() {
        return symbol;
    }

    /** {@return all spellings that are read, the code first, then the symbol} */
    public List<String> spellings() {
        return Stream.concat(Stream.of(ucum, symbol), otherSpellings.stream())
                .distinct()
                .toList();
    }

    /**
     * Converts a value to SI.
     *
     * @param value in this unit
     * @return in the SI unit of the dimension
     */
    public double toSi(double value) {
        return (value + offset) * multiplier / divisor;
    }

    /**
     * Converts a value from SI.
     *
     * @param si in the SI unit of the dimension
     * @return in this unit
     */
    public double fromSi(double si) {
        return si * divisor / multiplier - offset;
    }

    /**
     * Converts a difference, such as a standard uncertainty, to SI: the zero of a temperature scale does not matter.
     *
     * @param difference in this unit
     * @return in the SI unit of the dimension
     */
    public double differenceToSi(double difference) {
        return difference * multiplier / divisor;
    }

    /**
     * Converts a difference, such as a standard uncertainty, from SI.
     *
     * @param si in the SI unit of the dimension
     * @return in this unit
     */
    public double differenceFromSi(double si) {
        return si * divisor / multiplier;
    }

    private static Map<String, Unit> inAnyCase() {
        Map<String, Set<Unit>> all = new HashMap<>();
        BY_SPELLING.forEach((spelling, unit) -> all.computeIfAbsent(
                        spelling.toLowerCase(Locale.ROOT), key -> EnumSet.noneOf(Unit.class))
                .add(unit));
        Map<String, Unit> single = new HashMap<>();
        all.forEach((spelling, units) -> {
            if (units.size() == 1) {
                single.put(spelling, units.iterator().next());
            }
        });
        return Map.copyOf(single);
    }

    private static Map<String, Unit> bySpelling() {
        Map<String, Unit> known = new HashMap<>();
        for (Unit unit : values()) {
            unit.spellings().forEach(spelling -> known.put(spelling, unit));
        }
        return Map.copyOf(known);
    }
}
