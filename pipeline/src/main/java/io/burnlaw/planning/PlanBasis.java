package io.burnlaw.planning;

import io.burnlaw.ballistics.Motor;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.PiecewiseLaw;
import java.util.List;
import java.util.OptionalDouble;

/**
 * All that a plan rests on.
 *
 * @param formulation  id of the propellant
 * @param law          with its covariance and scatter
 * @param points       that it was fitted to; empty for a first guess
 * @param threshold    pressure above which the propellant is known to burn fast: the upper end of the interval of its
 *                     slow regime's threshold [Pa, absolute]; empty where there is none
 * @param motor        to be fired, with some throat; c* pooled
 * @param grain        its grain in words
 * @param strengthStd  relative standard deviation, from firing to firing, of density times c* [1]
 * @param throatStd    standard uncertainty of a measured throat diameter [m]
 * @param hardware     what the case can stand
 * @param highestFired highest pressure of any firing so far [Pa, absolute]; empty where none was fired
 */
public record PlanBasis(
        String formulation,
        PiecewiseLaw law,
        List<FitPoint> points,
        OptionalDouble threshold,
        Motor motor,
        String grain,
        double strengthStd,
        double throatStd,
        Hardware hardware,
        OptionalDouble highestFired) {

    /** A throat by a pin gauge [m]; common practice, no source. */
    public static final double USUAL_THROAT_STD = 0.02e-3;

    /** Density and c* of small batches together [1]; common practice, no source. */
    public static final double USUAL_STRENGTH_STD = 0.02;

    public PlanBasis {
        points = List.copyOf(points);
        if (!(strengthStd >= 0 && throatStd >= 0)) {
            throw new IllegalArgumentException("strength " + strengthStd + ", throat " + throatStd + " m");
        }
    }
}
