package io.burnlaw.report.document;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import org.jspecify.annotations.Nullable;

/**
 * What somebody asked of a plan, with the answer.
 *
 * @param question such as {@code a mean of 3 MPa absolute}
 * @param throat the one that was asked for, or the drill nearest to the pressure that was asked for
 * @param exactDiameter that would give the pressure exactly, mm
 * @param reason why no throat is named
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record PlannedAnswer(
        String question,
        @Nullable PlannedThroat throat,
        @Nullable Quantity exactDiameter,
        @Nullable String reason) {}
