package io.burnlaw.cli;

import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Quantity;
import io.burnlaw.quantity.Unit;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** Quantities typed on the command line, each with its unit. */
final class TypedQuantity {

    private final CommandLine line;

    TypedQuantity(CommandLine line) {
        this.line = line;
    }

    /**
     * Reads a quantity above zero.
     *
     * @param option    that it was given with
     * @param text      as typed
     * @param dimension what is expected
     * @return it in SI
     * @throws ParameterException that says what is wrong with it and what to type
     */
    Measured positive(String option, String text, Dimension dimension) {
        Measured value = Quantity.read(text, dimension)
                .match(read -> read.quantity().si(), misread -> {
                    throw wrong(option, text, misread.what() + "; " + misread.mend());
                });
        if (!(value.value() > 0)) {
            throw wrong(option, text, dimension.noun() + " above zero is needed");
        }
        within(option, text, value.value(), least(dimension), most(dimension));
        return value;
    }

    /** Outside of these bounds a number was certainly meant in another unit. */
    void within(String option, String text, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw wrong(option, text, "this cannot be meant; look at its unit");
        }
    }

    private static double least(Dimension dimension) {
        return switch (dimension) {
            case DENSITY -> 300;
            case PRESSURE -> 1e3;
            case SPEED -> 1e-7;
            default -> Double.MIN_NORMAL;
        };
    }

    private static double most(Dimension dimension) {
        return switch (dimension) {
            case DENSITY, SPEED -> 1e4;
            case PRESSURE -> 1e9;
            case LENGTH, VOLUME -> 10;
            default -> Double.MAX_VALUE;
        };
    }

    Optional<Measured> positive(String option, Optional<String> text, Dimension dimension) {
        return text.map(typed -> positive(option, typed, dimension));
    }

    /** A bare number, with or without its standard uncertainty. */
    Measured number(String option, String text) {
        return Quantity.read(text, Unit.ONE).match(read -> read.quantity().si(), misread -> {
            throw wrong(option, text, misread.what() + "; write a number such as 0.35, or 0.35 ± 0.05");
        });
    }

    /** Two quantities with a word between them. */
    String[] two(String option, String text, String word, String example) {
        String[] parts = text.split("\\s+" + word + "\\s+", -1);
        if (parts.length != 2) {
            throw wrong(option, text, "write it as in " + option + " \"" + example + "\"");
        }
        return parts;
    }

    CommandLine line() {
        return line;
    }

    ParameterException wrong(String option, String text, String message) {
        return new ParameterException(line, option + " " + text + ": " + message);
    }
}
