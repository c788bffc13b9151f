package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * A law as it would be without the points of one firing.
 *
 * @param cluster of the points that are left out: the firing, or a point by itself
 * @param law place in {@code use_laws} of the law that changes, from 0
 * @param coefficient mm/s at 1 MPa absolute
 * @param exponent n
 * @param rateChange of the rate at the law's reference pressure, relative [1]
 * @param exponentChange of the exponent
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record LawWithout(
        String cluster, int law, double coefficient, double exponent, double rateChange, double exponentChange) {}
