package io.burnlaw.report.document;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import org.jspecify.annotations.Nullable;

/**
 * What it takes to burn so many times faster.
 *
 * @param factor k [1]
 * @param pressure that k needs; absent where no allowed pressure gives it
 * @param sentence the answer in words
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record FasterAnswer(double factor, @Nullable Quantity pressure, String sentence) {}
