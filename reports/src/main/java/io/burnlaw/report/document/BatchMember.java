package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import org.jspecify.annotations.Nullable;

/**
 * One batch of a propellant.
 *
 * @param id of the batch
 * @param points how many firings of it count
 * @param rateRatio its rate over the mean of the batches fired [1]
 * @param law of this batch: its own rate, the exponent of all; absent where there are several regimes
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record BatchMember(
        String id, int points, Quantity rateRatio, @Nullable Law law) {}
