package io.burnlaw.cli;

import io.burnlaw.campaign.Plausible;
import io.burnlaw.planning.PlannedThroat.Drill;
import io.burnlaw.planning.PressureRange;
import io.burnlaw.quantity.DecimalNumber;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Quantity;
import io.burnlaw.quantity.Quantity.QuantityReading;
import io.burnlaw.quantity.Unit;
import io.burnlaw.report.wording.ShownUnits;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;

/** What an option's text becomes; each says what is wrong with a text and what to write. */
final class OptionTypes {

    private static final String IMPOSSIBLE = "this value is impossible; check its unit";

    private OptionTypes() {}

    /**
     * What is wrong with an option only beside the others.
     *
     * @param message what is wrong, and what to type
     * @return the refusal, with the text as typed
     */
    static ParameterException wrong(CommandLine line, String option, String message) {
        List<String> typed = line.getParseResult().matchedOption(option).originalStringValues();
        return new ParameterException(line, option + " " + String.join(", ", typed) + ": " + message);
    }

    /** What the parser says, and the same in plain words. */
    private static final Map<Pattern, String> PLAIN = new LinkedHashMap<>();

    static {
        PLAIN.put(Pattern.compile("^Error: "), "");
        PLAIN.put(
                Pattern.compile("^Invalid value for option '([\\w-]+)'[^:]*: '(.*)' is not an int$"),
                "$1 $2: this is not a whole number");
        PLAIN.put(
                Pattern.compile("^Invalid value for option '([\\w-]+)'[^:]*: '(.*)' is not a double$"),
                "$1 $2: this is not a number");
        PLAIN.put(Pattern.compile("^Unknown options?: (.*)$"), "there is no option $1");
        PLAIN.put(
                Pattern.compile("^Missing required parameter for option '(.*)' \\((.*)\\)$"),
                "$1 needs a value: $1 $2");
        PLAIN.put(Pattern.compile("^Missing required (?:parameter|option)s?: (.*)$"), "this is missing: $1");
        PLAIN.put(Pattern.compile("^Unmatched arguments? (?:at|from) index \\d+: (.*)$"), "this is not known here: $1");
        PLAIN.put(Pattern.compile("^(.*) are mutually exclusive \\(specify only one\\)$"), "give only one of $1");
    }

    /** {@return the first line of what the parser says, in plain words} */
    static String plain(String said) {
        String line = said.lines().findFirst().orElse("");
        for (Map.Entry<Pattern, String> each : PLAIN.entrySet()) {
            line = each.getKey().matcher(line).replaceFirst(each.getValue());
        }
        return line;
    }

    /** A word of a closed list, in small letters or capitals. */
    private abstract static class Word<E extends Enum<E>> implements ITypeConverter<E> {

        private final Class<E> words;

        private Word(Class<E> words) {
            this.words = words;
        }

        @Override
        public E convert(String text) {
            return EnumSet.allOf(words).stream()
                    .filter(word -> word.name().equalsIgnoreCase(text))
                    .findFirst()
                    .orElseThrow(() -> new TypeConversionException("write one of "
                            + EnumSet.allOf(words).stream()
                                    .map(word -> word.name().toLowerCase(Locale.ROOT))
                                    .collect(Collectors.joining(", "))));
        }
    }

    static final class Goal extends Word<PlanQuestions.Sharpen> {
        Goal() {
            super(PlanQuestions.Sharpen.class);
        }
    }

    static final class Drills extends Word<Drill.Series> {
        Drills() {
            super(Drill.Series.class);
        }
    }

    static final class Units extends Word<ShownUnits> {
        Units() {
            super(ShownUnits.class);
        }
    }

    /** A quantity above zero with its unit, in SI; beyond the bounds it was certainly meant in another unit. */
    private abstract static class Positive implements ITypeConverter<Measured> {

        private final Dimension dimension;
        private final double least;
        private final double most;

        private Positive(Dimension dimension, double least, double most) {
            this.dimension = dimension;
            this.least = least;
            this.most = most;
        }

        @Override
        public Measured convert(String text) {
            Measured value = si(Quantity.read(text, dimension));
            need(value.value() > 0, "give " + dimension.noun() + " above zero");
            need(value.value() >= least && value.value() <= most, IMPOSSIBLE);
            return value;
        }
    }

    /** [m]. */
    static final class Length extends Positive {
        private Length() {
            super(Dimension.LENGTH, 0, 10);
        }
    }

    /** [m³]. */
    static final class Volume extends Positive {
        private Volume() {
            super(Dimension.VOLUME, 0, 10);
        }
    }

    /** [Pa]. */
    static final class Pressure extends Positive {
        private Pressure() {
            super(Dimension.PRESSURE, 1e3, 1e9);
        }
    }

    /** [kg/m³]. */
    static final class Density extends Positive {
        private Density() {
            super(Dimension.DENSITY, 300, 1e4);
        }
    }

    /** Characteristic velocity [m/s]. */
    static final class Velocity extends Positive {
        private Velocity() {
            super(Dimension.SPEED, Plausible.VELOCITY.low(), Plausible.VELOCITY.high());
        }
    }

    /** Burning rate [m/s]. */
    private static final class Rate extends Positive {
        private Rate() {
            super(Dimension.SPEED, Plausible.RATE.low(), Plausible.RATE.high());
        }
    }

    /** Limit of a case [Pa, gauge]. */
    static final class CaseLimit extends Positive {
        private CaseLimit() {
            super(Dimension.PRESSURE, Plausible.CASE_LIMIT.low(), Plausible.CASE_LIMIT.high());
        }

        @Override
        public Measured convert(String text) {
            Measured limit = super.convert(text);
            need(
                    limit.std().isEmpty(),
                    "a limit cannot have an uncertainty; write the lowest pressure at which such a case may fail");
            return limit;
        }
    }

    /**
     * A rate at a pressure.
     *
     * @param rate     [m/s]
     * @param pressure [Pa, absolute]
     */
    record RateAt(Measured rate, double pressure) {}

    /** {@code 5.7 ± 0.5 mm/s at 1 MPa}. */
    static final class RateAtPressure implements ITypeConverter<RateAt> {
        @Override
        public RateAt convert(String text) {
            String[] parts = two(text, "at", "--rate \"5.7 mm/s at 1 MPa\"");
            Measured rate = new Rate().convert(parts[0]);
            need(rate.stdOr(0) <= rate.value(), IMPOSSIBLE);
            return new RateAt(rate, new Pressure().convert(parts[1]).value());
        }
    }

    /** {@code 0.35 ± 0.05} [1]. */
    static final class Exponent implements ITypeConverter<Measured> {
        @Override
        public Measured convert(String text) {
            Measured exponent = Quantity.read(text, Unit.ONE)
                    .match(read -> read.quantity().si(), misread -> {
                        throw new TypeConversionException(
                                misread.what() + "; write a number such as 0.35, or 0.35 ± 0.05");
                    });
            need(Plausible.EXPONENT.holds(exponent.value()) && exponent.stdOr(0) <= 1, IMPOSSIBLE);
            return exponent;
        }
    }

    /** {@code 1 MPa to 4 MPa} [Pa, absolute]. */
    static final class Range implements ITypeConverter<PressureRange> {
        @Override
        public PressureRange convert(String text) {
            String[] ends = two(text, "to", "--ladder \"1 MPa to 4 MPa\"");
            double low = new Pressure().convert(ends[0]).value();
            double high = new Pressure().convert(ends[1]).value();
            need(high > low, "the second pressure must be the higher one");
            return new PressureRange(low, high);
        }
    }

    /** A level of confidence [1]: per cent, with or without the sign. */
    private abstract static class Confidence implements ITypeConverter<Double> {

        private final double least;

        private Confidence(double least) {
            this.least = least;
        }

        @Override
        public Double convert(String text) {
            double percent =
                    DecimalNumber.read(text.strip().replaceFirst("\\s*%$", "")).orElse(Double.NaN);
            boolean enough = least > 50 ? percent >= least : percent > least;
            need(
                    enough && percent < 100,
                    "write a percentage between " + NumberFormat.plain(least, 3) + " and 100, such as 95");
            return percent / 100;
        }
    }

    /** Of an interval that is only shown. */
    static final class ConfidenceOfIntervals extends Confidence {
        private ConfidenceOfIntervals() {
            super(50);
        }
    }

    /** Of a plan: a limit of the case is no safer than the prediction that is compared with it. */
    static final class ConfidenceOfPlans extends Confidence {
        private ConfidenceOfPlans() {
            super(90);
        }
    }

    private static String[] two(String text, String word, String example) {
        String[] parts = text.split("\\s+" + word + "\\s+", -1);
        need(parts.length == 2, "write it as in " + example);
        return parts;
    }

    private static Measured si(QuantityReading reading) {
        return reading.match(read -> read.quantity().si(), misread -> {
            throw new TypeConversionException(misread.what() + "; " + misread.mend());
        });
    }

    private static void need(boolean met, String otherwise) {
        if (!met) {
            throw new TypeConversionException(otherwise);
        }
    }
}
