package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * One source of a rate uncertainty.
 *
 * @param source what is uncertain
 * @param std its standard uncertainty
 * @param unit UCUM code
 * @param contribution to the relative standard uncertainty of the rate [1]
 * @param share of the variance [1]
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record BudgetLine(String source, double std, String unit, double contribution, double share) {}
