package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import org.jspecify.annotations.Nullable;

/**
 * A figure that these firings cannot give: instead of a number, why, and what would mend it.
 *
 * @param what the figure, such as {@code temperature sensitivity}
 * @param reason a sentence
 * @param mend which firing would change that
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record NotEstimated(
        String what, String reason, @Nullable String mend) {}
