package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * Whether two laws differ.
 *
 * @param parallel same exponent
 * @param coincident same law
 * @param adjustedPValue of coincidence, after Holm over all candidates
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record ComparisonTests(FTest parallel, FTest coincident, double adjustedPValue) {}
