package io.burnlaw.planning;

/**
 * A predicted value with its prediction interval for a single firing.
 *
 * @param value middle
 * @param low   lower end
 * @param high  upper end; infinite where none can be stated
 */
public record Predicted(double value, double low, double high) {}
