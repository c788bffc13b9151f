package io.burnlaw.cli;

import io.burnlaw.quantity.DecimalNumber;
import io.burnlaw.quantity.NumberFormat;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** A level of confidence as typed: per cent, with or without the sign. */
final class Confidence {

    private Confidence() {}

    /**
     * Reads it.
     *
     * @param typed such as {@code 95} or {@code "95 %"}
     * @param least per cent; more than this, or this itself where it is above 50
     * @param line  for messages
     * @return the level [1]; empty where nothing was typed
     * @throws ParameterException that says what to type
     */
    static OptionalDouble of(Optional<String> typed, double least, CommandLine line) {
        if (typed.isEmpty()) {
            return OptionalDouble.empty();
        }
        String bare = typed.get().strip().replaceFirst("\\s*%$", "");
        double percent = DecimalNumber.read(bare).orElse(Double.NaN);
        boolean enough = least > 50 ? percent >= least : percent > least;
        if (!(enough && percent < 100)) {
            throw new ParameterException(
                    line,
                    "--confidence " + typed.get() + ": write per cent between " + NumberFormat.plain(least, 3)
                            + " and 100, such as 95");
        }
        return OptionalDouble.of(percent / 100);
    }
}
