package io.burnlaw.ballistics;

import java.util.OptionalDouble;

/**
 * The nozzle: mass flow and thrust at a chamber pressure.
 *
 * <pre>
 *     choked (ambient / p at most the critical ratio):   m = p A / c*                                  [kg/s]
 *     unchoked, with q = ambient / p:                    m = p A / c* · f(q) / Gamma
 *         f(q) = sqrt( 2k/(k-1) · (q^(2/k) - q^((k+1)/k)) )
 * </pre>
 *
 * <p><b>Valid</b> for one ideal gas; below choking the throat is taken as the exit, as a divergent part that is not
 * filled leaves it. <b>Source.</b> Sutton and Biblarz (2001), chapter 3.
 *
 * @param throatDiameter      before the firing [m]
 * @param throatDiameterAfter after it [m]
 * @param exitDiameter        [m], at least the throat's; empty where there is no divergent part
 */
public record Nozzle(double throatDiameter, double throatDiameterAfter, OptionalDouble exitDiameter) {

    /** Share of the ambient pressure over it below which the flow is unchoked and nearly at rest: linear there. */
    private static final double NEAR_REST = 1e-3;

    public Nozzle {
        if (!(throatDiameter > 0 && throatDiameterAfter > 0)) {
            throw new IllegalArgumentException(
                    "no throat: " + throatDiameter + " m, after " + throatDiameterAfter + " m");
        }
        if (exitDiameter.isPresent() && !(exitDiameter.getAsDouble() >= throatDiameter)) {
            throw new IllegalArgumentException("exit of " + exitDiameter.getAsDouble() + " m below the throat");
        }
    }

    /**
     * A throat that keeps its size, without a divergent part.
     *
     * @param throatDiameter [m]
     */
    public Nozzle(double throatDiameter) {
        this(throatDiameter, throatDiameter, OptionalDouble.empty());
    }

    /**
     * The same nozzle with a throat that changes.
     *
     * @param before [m]
     * @param after  [m]
     */
    public Nozzle withThroat(double before, double after) {
        return new Nozzle(before, after, exitDiameter);
    }

    /** {@return area of the throat before the firing [m2]} */
    public double throatArea() {
        return throatArea(0);
    }

    /**
     * Area of the throat along the burn.
     *
     * @param share of the change that has happened [1], 0 to 1
     * @return [m2]
     */
    public double throatArea(double share) {
        double diameter = throatDiameter + share * (throatDiameterAfter - throatDiameter);
        return Math.PI / 4 * diameter * diameter;
    }

    /** {@return exit area over throat area before the firing [1]; 1 where there is no divergent part} */
    public double expansionRatio() {
        double ratio = exitDiameter.orElse(throatDiameter) / throatDiameter;
        return ratio * ratio;
    }

    /**
     * Mass flow through a throat.
     *
     * @param pressure in the chamber [Pa, absolute]
     * @param ambient  [Pa, absolute]
     * @param area     of the throat [m2]
     * @return [kg/s]; 0 at or below the ambient pressure
     */
    public static double massFlow(double pressure, double ambient, double area, Gas gas) {
        if (pressure <= ambient) {
            return 0;
        }
        double choked = pressure * area / gas.characteristicVelocity();
        double ratio = ambient / pressure;
        if (ratio <= gas.criticalRatio()) {
            return choked;
        }
        double nearRest = ambient * (1 + NEAR_REST);
        if (pressure < nearRest) {
            // the square root has no finite slope at rest; a straight line over 0.1 % of ambient keeps integrators
            // going
            return massFlow(nearRest, ambient, area, gas) * (pressure - ambient) / (nearRest - ambient);
        }
        double k = gas.specificHeatRatio();
        double toTheK = StrictMath.pow(ratio, 1 / k);
        double function = Math.sqrt(2 * k / (k - 1) * (toTheK * toTheK - ratio * toTheK));
        return choked * function / gas.flowFactor();
    }

    /** {@return the ideal thrust coefficient of this nozzle, F / (p A), by pressure} */
    public ThrustCoefficient thrustCoefficient(Gas gas) {
        return ThrustCoefficient.of(expansionRatio(), gas);
    }
}
