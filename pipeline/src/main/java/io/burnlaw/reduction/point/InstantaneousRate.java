package io.burnlaw.reduction.point;

/**
 * Rate and pressure at a moment of a burn.
 *
 * @param time     [s]
 * @param web      burned by then [m]
 * @param pressure [Pa, absolute]
 * @param rate     [m/s]
 */
public record InstantaneousRate(double time, double web, double pressure, double rate) {}
