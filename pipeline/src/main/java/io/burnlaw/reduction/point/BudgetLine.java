package io.burnlaw.reduction.point;

/**
 * One source of a rate's uncertainty.
 *
 * @param source       what is uncertain, such as {@code web} or {@code web burnout}
 * @param std          its standard uncertainty, in the unit of {@code unit}
 * @param unit         UCUM code of the std, {@code 1} for relative ones
 * @param contribution what it adds to the relative standard uncertainty of the rate [1]
 * @param share        of the rate's variance [1]
 */
public record BudgetLine(String source, double std, String unit, double contribution, double share) {}
