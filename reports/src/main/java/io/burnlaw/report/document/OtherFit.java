package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import org.jspecify.annotations.Nullable;

/**
 * The same points fitted in another way, for comparison.
 *
 * @param name such as {@code huber} or {@code orthogonal-distance}
 * @param coefficient mm/s at 1 MPa
 * @param coefficientLow lower end
 * @param coefficientHigh upper end
 * @param exponent [1]
 * @param exponentLow lower end
 * @param exponentHigh upper end
 * @param sentence what it says against the published fit
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record OtherFit(
        String name,
        double coefficient,
        @Nullable Double coefficientLow,
        @Nullable Double coefficientHigh,
        double exponent,
        @Nullable Double exponentLow,
        @Nullable Double exponentHigh,
        String sentence) {}
