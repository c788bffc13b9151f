package io.burnlaw.report.document;

import org.jspecify.annotations.Nullable;

/**
 * Something wrong or odd in a firing or in a law.
 *
 * @param code kebab-case, see docs/findings.md
 * @param severity {@code note}, {@code caution} or {@code rejection}
 * @param title a few words
 * @param message a sentence with the number and the place
 * @param advice what was done about it, or what to do
 * @param at when in the record
 */
public record Finding(
        String code,
        String severity,
        String title,
        String message,
        String advice,
        @Nullable Quantity at) {}
