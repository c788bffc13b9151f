package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * Why there is no law.
 *
 * @param reason a sentence
 * @param mend which firing would change that
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record NotFitted(String reason, String mend) {}
