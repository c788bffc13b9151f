package io.burnlaw.planning;

import io.burnlaw.ballistics.Motor;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.prediction.IgnitionSpike;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.PiecewiseLaw;
import java.util.List;
import java.util.OptionalDouble;

/**
 * All data that a plan uses.
 *
 * @param law          with its covariance and scatter
 * @param points       that it was fitted to; empty for a first guess
 * @param slowBelow    pressure from which on the propellant is known to burn fast: the upper end of what is known of its
 *                     slow regime's threshold [Pa, absolute]; empty where there is none
 * @param fastAbove    pressure above which points burn faster than the law, too few for a law of their own [Pa,
 *                     absolute]; empty where there are none
 * @param motor        to be fired, with some throat; c* pooled
 * @param strengthStd  relative standard deviation, from firing to firing, of density times c* [1]
 * @param throatStd    standard uncertainty of a measured throat diameter [m]
 * @param hardware     what the case can stand
 * @param highestFired highest pressure of any firing so far [Pa, absolute]; empty where none was fired
 * @param ignition     by how much ignition stood above the burn so far
 * @param remarks      sentences that belong beside every plan from this law
 */
public record PlanBasis(
        String formulation,
        PiecewiseLaw law,
        List<FitPoint> points,
        OptionalDouble slowBelow,
        OptionalDouble fastAbove,
        Motor motor,
        String grain,
        double strengthStd,
        double throatStd,
        Hardware hardware,
        OptionalDouble highestFired,
        IgnitionSpike ignition,
        List<String> remarks) {

    /** A throat by a pin gauge [m]; common practice, no source. */
    public static final double USUAL_THROAT_STD = 0.02e-3;

    /** Density and c* of small batches together [1]; common practice, no source. */
    public static final double USUAL_STRENGTH_STD = 0.02;

    /**
     * The same law for another motor.
     *
     * @param other to be fired, with some throat
     */
    public PlanBasis withMotor(Motor other, String words) {
        return with(other, words, hardware, highestFired);
    }

    /**
     * The same with another case.
     *
     * @param other what it can stand
     */
    public PlanBasis withHardware(Hardware other) {
        return with(motor, grain, other, highestFired);
    }

    /**
     * The same with another highest pressure of any firing.
     *
     * @param other [Pa, absolute]
     */
    public PlanBasis withHighestFired(OptionalDouble other) {
        return with(motor, grain, hardware, other);
    }

    private PlanBasis with(Motor otherMotor, String words, Hardware otherCase, OptionalDouble otherHighest) {
        return new PlanBasis(
                formulation,
                law,
                points,
                slowBelow,
                fastAbove,
                otherMotor,
                words,
                strengthStd,
                throatStd,
                otherCase,
                otherHighest,
                ignition,
                remarks);
    }

    /** How many firings the usual scatter counts for beside the measured one; own convention. */
    private static final int USUAL_COUNTS_FOR = 3;

    /**
     * How density times c* scatters: the firings' own scatter and the usual one, each with its degrees of freedom, so that
     * two firings that happen to agree promise nothing; and the uncertainty of their mean.
     *
     * @param strengths density times c* of each firing, in any unit
     * @return relative standard deviation of the next one about their mean [1]
     */
    public static double strengthStd(List<Double> strengths) {
        double squares = USUAL_COUNTS_FOR * USUAL_STRENGTH_STD * USUAL_STRENGTH_STD;
        int count = strengths.size();
        if (count < 2) {
            return USUAL_STRENGTH_STD;
        }
        double mean = strengths.stream().mapToDouble(each -> each).sum() / count;
        for (double each : strengths) {
            squares += (each / mean - 1) * (each / mean - 1);
        }
        return Math.sqrt(squares / (USUAL_COUNTS_FOR + count - 1) * (1 + 1.0 / count));
    }

    public PlanBasis {
        points = List.copyOf(points);
        remarks = List.copyOf(remarks);
        if (!(strengthStd >= 0 && throatStd >= 0)) {
            throw new IllegalArgumentException("strength " + strengthStd + ", throat " + throatStd + " m");
        }
    }
}
