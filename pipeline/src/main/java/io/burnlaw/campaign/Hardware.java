package io.burnlaw.campaign;

import java.util.OptionalDouble;

/**
 * What the motor case can stand.
 *
 * @param casePressureLimit as stated [Pa, gauge]
 * @param safetyFactor      by which planned pressures stay below it [1], at least 1
 */
public record Hardware(OptionalDouble casePressureLimit, double safetyFactor) {}
