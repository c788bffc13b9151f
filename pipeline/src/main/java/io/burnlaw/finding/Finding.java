package io.burnlaw.finding;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Something wrong or odd in a firing or in a law. The terminal, the document and the page show the same finding.
 *
 * @param severity how much it matters here
 * @param message  a sentence with the number, the place, and what was expected
 * @param at       where in the record it was seen [s, on the time axis of the trace]; empty where it has no time
 */
public record Finding(FindingCode code, Severity severity, String message, OptionalDouble at) {

    public Finding {
        Objects.requireNonNull(code);
        Objects.requireNonNull(severity);
        if (message.isBlank()) {
            throw new IllegalArgumentException("a finding has a message: " + code);
        }
    }

    /**
     * A finding of the code's usual severity, without a time.
     *
     * @param message a sentence with the number and the place
     */
    public static Finding of(FindingCode code, String message) {
        return new Finding(code, code.usualSeverity(), message, OptionalDouble.empty());
    }

    /**
     * A finding of the code's usual severity, at a time.
     *
     * @param message a sentence with the number and the place
     * @param at      when [s]
     */
    public static Finding at(FindingCode code, String message, double at) {
        return new Finding(code, code.usualSeverity(), message, OptionalDouble.of(at));
    }

    /**
     * The same finding with another severity.
     *
     * @param other the severity that it has here
     */
    public Finding withSeverity(Severity other) {
        return new Finding(code, other, message, at);
    }
}
