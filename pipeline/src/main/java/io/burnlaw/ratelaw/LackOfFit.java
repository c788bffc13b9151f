package io.burnlaw.ratelaw;

/**
 * Whether repeated firings agree better with each other than with the law.
 *
 * @param statistic  F, lack of fit over pure error [1]
 * @param lackDegreesOfFreedom of the numerator
 * @param pureDegreesOfFreedom of the denominator
 * @param pValue     of so large an F if the law were right [1]
 * @param pureScatter relative standard deviation of repeated firings [1]
 */
public record LackOfFit(
        double statistic, int lackDegreesOfFreedom, int pureDegreesOfFreedom, double pValue, double pureScatter) {}
