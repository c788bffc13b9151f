package io.burnlaw.batch;

import io.burnlaw.ratelaw.FitPoint;

/**
 * A rate-pressure point and the casting that its propellant came from.
 *
 * @param point as a fit sees it
 */
public record BatchPoint(FitPoint point, String batch) {}
