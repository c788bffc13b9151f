package io.burnlaw.report.document;

import org.jspecify.annotations.Nullable;

/**
 * A rate-pressure point.
 *
 * @param id unique in the campaign
 * @param cluster points of one cluster are not independent
 * @param firing that it comes from
 * @param batch the casting that its propellant came from
 * @param source {@code firing}, {@code dwell}, {@code strand} or {@code point}
 * @param pressure rate-averaged, absolute
 * @param meanPressure plain mean over the burn time, absolute
 * @param rate as it was fitted
 * @param temperature of the propellant
 * @param method such as {@code mass-balance}
 * @param lowerGrade derived from thrust, or timed by eye
 * @param used in the fit
 * @param reason why not
 * @param standardizedResidual studentized residual about the law [1]
 * @param segment number of the regime of the point, from 1
 */
public record Point(
        String id,
        String cluster,
        @Nullable String firing,
        @Nullable String batch,
        String source,
        Quantity pressure,
        Quantity meanPressure,
        Quantity rate,
        @Nullable Quantity temperature,
        String method,
        boolean lowerGrade,
        boolean used,
        @Nullable String reason,
        @Nullable Double standardizedResidual,
        @Nullable Integer segment) {}
