package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The law in a pair of units that people design with.
 *
 * @param pressureUnit UCUM code
 * @param rateUnit UCUM code
 * @param coefficient a of r = a P^n in these units
 * @param low lower end of its interval
 * @param high upper end of its interval
 * @param exponent n [1]
 * @param covariance of (ln coefficient, exponent) in these units
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record UnitPair(
        String pressureUnit,
        String rateUnit,
        double coefficient,
        @Nullable Double low,
        @Nullable Double high,
        double exponent,
        List<List<Double>> covariance) {

    public UnitPair {
        covariance = List.copyOf(covariance);
    }
}
