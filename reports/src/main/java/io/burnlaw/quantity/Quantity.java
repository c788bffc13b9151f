package io.burnlaw.quantity;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A number with its unit, as written, such as {@code 1.80 ± 0.01 g/cm3}.
 *
 * @param value in the unit; finite
 * @param std   standard uncertainty in the same unit, at least zero; empty where none was written
 * @param unit  as written
 */
public record Quantity(double value, OptionalDouble std, Unit unit) {

    /** {@return the quantity in SI} */
    public Measured si() {
        double si = unit.toSi(value);
        return std.isPresent() ? Measured.of(si, unit.differenceToSi(std.getAsDouble())) : Measured.of(si);
    }

    /**
     * Reads a quantity with its unit: {@code 12.7 mm}, {@code 12,7 mm}, {@code 1.80 ± 0.01 g/cm3},
     * {@code 1.80 g/cm3 +/- 0.5 %}, {@code (1.80 ± 0.01) g/cm3}.
     *
     * @param text as written
     * @return the quantity, or what is wrong with the text
     */
    public static QuantityReading read(String text, Dimension dimension) {
        return new QuantityText(text, dimension, null).read();
    }

    /**
     * Reads a table's cell: a number in the unit of its heading, or a quantity with a unit of its own.
     *
     * @param text as written
     * @return the quantity, or what is wrong with the text
     */
    public static QuantityReading read(String text, Unit unit) {
        return new QuantityText(text, unit.dimension(), unit).read();
    }

    /** One text that should be a quantity, taken apart. */
    private static final class QuantityText {

        /** Longer ones are no quantities; the bound keeps hostile input cheap. */
        private static final int LONGEST = 200;

        /** In SI; nothing that is measured about a motor is nearly so large, or so small (own convention). */
        private static final double LARGEST = 1e30;

        private static final double SMALLEST = 1e-30;

        private static final String NUMBER = "[+\\-\u2212]?[\\d.,]+(?:[eE][+\\-\u2212]?\\d+)?";

        private static final Pattern PART = Pattern.compile("\\s*(" + NUMBER + ")\\s*(.*?)\\s*");

        private static final Pattern BRACKETED = Pattern.compile("\\(([^()]*)\\)(.*)");

        private static final Pattern PLUS_MINUS = Pattern.compile("±|\\+/-|\\+-");

        /** What spreadsheets make of a number such as 7.5 or 5-7. */
        private static final Pattern DATE = Pattern.compile(
                "\\d{1,4}([-/.])\\d{1,2}\\1\\d{1,4}(?:[T ].*)?"
                        + "|\\d{1,2}[-. ]{0,2}(?i:jan|feb|m[aä]r|apr|ma[iy]|jun|jul|aug|sep|o[ck]t|nov|de[cz])[a-zä]*[-. ]{0,2}(?:\\d{2,4})?");

        /** Says that a number is about right: the number is what was read off. */
        private static final Pattern ABOUT = Pattern.compile("^(?:~|≈|(?i:ca\\.?|approx\\.?|about)(?=[\\s\\d]))\\s*");

        /** Inches as a rule has them. */
        private static final Pattern FRACTION =
                Pattern.compile("(?:(\\d{1,4})[\\s\\-]+)?(\\d{1,3})/(\\d{1,3})(?![\\d/])(.*)");

        private static final Pattern CLOCK = Pattern.compile("(\\d{1,3}):([0-5]\\d(?:\\.\\d{1,6})?)");

        private final String text;
        private final Dimension dimension;
        private final @Nullable Unit ofHeading;

        QuantityText(String text, Dimension dimension, @Nullable Unit ofHeading) {
            this.text = dimension == Dimension.LENGTH
                    ? decimal(text.strip())
                    : ABOUT.matcher(text.strip()).replaceFirst("");
            this.dimension = dimension;
            this.ofHeading = ofHeading;
        }

        /** {@code 1 1/2 in} is read as {@code 1.5 in}. */
        private static String decimal(String length) {
            String plain = ABOUT.matcher(length).replaceFirst("");
            Matcher fraction = FRACTION.matcher(plain);
            if (!fraction.matches() || fraction.group(3).matches("0+")) {
                return plain;
            }
            double whole = fraction.group(1) == null ? 0 : Double.parseDouble(fraction.group(1));
            double value = whole + Double.parseDouble(fraction.group(2)) / Double.parseDouble(fraction.group(3));
            return NumberFormat.plain(value, 12) + fraction.group(4);
        }

        QuantityReading read() {
            if (text.isEmpty()) {
                return misread("there is no value", "write " + example());
            }
            if (text.length() > LONGEST) {
                return misread("the text is too long for a quantity", "write " + example());
            }
            if (ofHeading != null && ofHeading.dimension() == dimension && DecimalNumber.isPlain(text)) {
                return checked(new Quantity(DecimalNumber.read(text).orElseThrow(), OptionalDouble.empty(), ofHeading));
            }
            if (DATE.matcher(text).matches()) {
                return misread(
                        "this is a date: a spreadsheet may have changed a number into it",
                        "give the cell the format of a number or of text, and write " + example());
            }
            Matcher clock = CLOCK.matcher(text);
            if (dimension == Dimension.TIME && clock.matches()) {
                double seconds = 60 * Double.parseDouble(clock.group(1)) + Double.parseDouble(clock.group(2));
                return misread(
                        "this is the time of a clock, in minutes and seconds",
                        "write " + NumberFormat.plain(seconds, 7) + " s");
            }
            String[] halves = PLUS_MINUS.split(unbracketed(), -1);
            if (halves.length > 2) {
                return misread("there are two uncertainties", "write one, as in " + example());
            }
            Matcher value = PART.matcher(halves[0]);
            if (!value.matches()) {
                return misread("the text is not a number", "write " + example());
            }
            if (halves.length == 1) {
                return quantity(value.group(1), value.group(2), Optional.empty(), "");
            }
            Matcher std = PART.matcher(halves[1]);
            if (!std.matches()) {
                return misread("the uncertainty is not a number", "write " + example());
            }
            return quantity(value.group(1), value.group(2), Optional.of(std.group(1)), std.group(2));
        }

        /** {@code (1.80 ± 0.01) g/cm3} is read as {@code 1.80 ± 0.01 g/cm3}. */
        private String unbracketed() {
            Matcher bracketed = BRACKETED.matcher(text);
            return bracketed.matches() ? bracketed.group(1) + bracketed.group(2) : text;
        }

        private QuantityReading quantity(String number, String unit, Optional<String> std, String stdUnit) {
            Optional<QuantityReading> wrong = wrongNumber(number).or(() -> std.flatMap(this::wrongNumber));
            if (wrong.isPresent()) {
                return wrong.get();
            }
            boolean share = std.isPresent() && stdUnit.equals("%") && valueHasOtherUnit(unit);
            String spelled = unit.isEmpty() && !share ? stdUnit : unit;
            if (!spelled.isEmpty() && Character.isDigit(spelled.charAt(0))) {
                return misread("there is a space inside the number", "write it without thousands separators");
            }
            if (spelled.isEmpty() && ofHeading == null) {
                return misread(
                        "the number has no unit",
                        (dimension.choices().size() > 1 ? "say which unit: write " : "write ")
                                + dimension.choicesWritten(number + " %s"));
            }
            Optional<Unit> known = spelled.isEmpty() ? Optional.ofNullable(ofHeading) : Unit.spelled(spelled);
            if (known.isEmpty()) {
                return misread(
                        "the unit " + spelled + " is not known",
                        "write "
                                + Unit.nearest(spelled, dimension)
                                        .map(near -> number + " " + near.symbol())
                                        .orElse(example()));
            }
            if (known.get().dimension() != dimension) {
                return misread(
                        spelled + " is the unit of " + known.get().dimension().noun() + ", not of " + dimension.noun(),
                        "write " + example());
            }
            double value = DecimalNumber.read(number).orElseThrow();
            return std.map(text ->
                            withStd(value, known.get(), DecimalNumber.read(text).orElseThrow(), stdUnit, share))
                    .orElseGet(() -> checked(new Quantity(value, OptionalDouble.empty(), known.get())));
        }

        /** Then a percentage after the sign is a share of the value; otherwise the value itself is in per cent. */
        private boolean valueHasOtherUnit(String unit) {
            return unit.isEmpty() ? ofHeading != null && ofHeading != Unit.PERCENT : !unit.equals("%");
        }

        private QuantityReading withStd(double value, Unit unit, double std, String stdUnit, boolean share) {
            if (std < 0) {
                return misread("the uncertainty is negative", "write it without the sign");
            }
            if (share) {
                return checked(new Quantity(value, OptionalDouble.of(Math.abs(value) * std / 100), unit));
            }
            Unit of = stdUnit.isEmpty() ? unit : Unit.spelled(stdUnit).orElse(null);
            if (of == null || of.dimension() != unit.dimension()) {
                return misread("the uncertainty has another unit than the value", "write both in " + unit.symbol());
            }
            double inUnit = unit.differenceFromSi(of.differenceToSi(std));
            return checked(new Quantity(value, OptionalDouble.of(inUnit), unit));
        }

        /**
         * Beyond these a typing error or a wrong unit is certain, and products of such numbers leave the range of a
         * double.
         */
        private QuantityReading checked(Quantity quantity) {
            Unit unit = quantity.unit();
            double value = Math.abs(unit.toSi(quantity.value()));
            if (!(value < LARGEST && unit.differenceToSi(quantity.std().orElse(0)) < LARGEST)) {
                return misread("the number is too large", "write " + example());
            }
            if (value < SMALLEST && value != 0) {
                return misread("the number is too small", "write " + example());
            }
            return new QuantityReading.Read(quantity);
        }

        private Optional<QuantityReading> wrongNumber(String number) {
            if (DecimalNumber.readsTwoWays(number)) {
                return Optional.of(misread(
                        "the comma can be read in two ways",
                        "write %s or %s".formatted(number.replace(',', '.'), number.replace(",", ""))));
            }
            if (DecimalNumber.read(number).isEmpty()) {
                return Optional.of(
                        misread("the number cannot be read", "write " + example() + ", without thousands separators"));
            }
            return Optional.empty();
        }

        private String example() {
            return ofHeading == null
                    ? "a number and its unit, such as 12.7 %s"
                            .formatted(dimension.usual().symbol())
                    : "a number in %s, such as 12.7".formatted(ofHeading.symbol());
        }

        private QuantityReading misread(String what, String mend) {
            String expected = ofHeading == null
                    ? "%s with its unit".formatted(dimension.noun())
                    : "a number in %s, or %s with a unit of its own".formatted(ofHeading.symbol(), dimension.noun());
            return new QuantityReading.Misread(what, expected, mend);
        }
    }

    /** Result of reading a quantity: the quantity, or why there is none. */
    public sealed interface QuantityReading {

        /** It was read. */
        record Read(Quantity quantity) implements QuantityReading {}

        /**
         * It could not be read.
         *
         * @param what     what is wrong, in a few words
         * @param expected what should stand there
         */
        record Misread(String what, String expected, String mend) implements QuantityReading {}

        /**
         * Answers for both cases.
         *
         * @param read    the answer where it was read
         * @param misread the answer where it was not
         */
        default <T> T match(Function<Read, T> read, Function<Misread, T> misread) {
            return this instanceof Read r ? read.apply(r) : misread.apply((Misread) this);
        }
    }
}
