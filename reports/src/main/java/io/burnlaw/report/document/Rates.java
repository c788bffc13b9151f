package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import org.jspecify.annotations.Nullable;

/**
 * The mean rate by each definition.
 *
 * @param thicknessTime web over burn time
 * @param massBalance corrected by the share of the pressure integral
 * @param difference the first over the second less 1, both at one pressure; absent where there is one rate only [1]
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record Rates(
        Quantity thicknessTime,
        @Nullable Quantity massBalance,
        @Nullable Double difference) {

    /** Rates of which nothing is compared. */
    public Rates(Quantity thicknessTime, @Nullable Quantity massBalance) {
        this(thicknessTime, massBalance, null);
    }
}
