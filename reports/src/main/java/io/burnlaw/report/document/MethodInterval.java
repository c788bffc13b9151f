package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import org.jspecify.annotations.Nullable;

/**
 * The interval of coefficient and exponent by one method.
 *
 * @param method {@code student-t}, {@code profile} or {@code bootstrap-bca}
 * @param level [1]
 * @param coefficientLow mm/s at 1 MPa
 * @param coefficientHigh mm/s at 1 MPa
 * @param exponentLow [1]
 * @param exponentHigh [1]
 * @param published whether it is the one shown elsewhere
 * @param replicates of a bootstrap
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record MethodInterval(
        String method,
        double level,
        double coefficientLow,
        double coefficientHigh,
        double exponentLow,
        double exponentHigh,
        boolean published,
        @Nullable Integer replicates) {}
