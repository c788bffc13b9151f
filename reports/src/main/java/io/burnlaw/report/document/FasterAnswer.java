package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import org.jspecify.annotations.Nullable;

/**
 * What it takes to burn so many times faster.
 *
 * @param factor k [1]
 * @param pressure that k needs; absent where no allowed pressure gives it
 * @param reach what it takes: {@code same-regime}, {@code another-regime}, {@code extrapolated} (above all pressures that
 *     were fired) or {@code out-of-reach}
 * @param sentence the answer in words
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record FasterAnswer(
        double factor,
        @Nullable Quantity pressure,
        @Nullable String reach,
        String sentence) {}
