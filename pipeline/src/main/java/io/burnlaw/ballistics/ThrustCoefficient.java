package io.burnlaw.ballistics;

/**
 * Ideal thrust coefficient C_F = F / (p A) of a nozzle.
 *
 * <pre>
 *     full flow:   C_F = Gamma · sqrt( 2k/(k-1) · (1 - x^((k-1)/k)) ) + (x - ambient/p) · E
 *                  with x = exit pressure / p, and E = exit area / throat area from
 *                  E = Gamma / ( x^(1/k) · sqrt( 2k/(k-1) · (1 - x^((k-1)/k)) ) )
 *     separated:   the same at the area where x·p = 0.4 · ambient
 *     unchoked:    C_F = 2k/(k-1) · q · (q^(-(k-1)/k) - 1),  q = ambient / p
 * </pre>
 *
 * <p><b>Source.</b> Sutton and Biblarz (2001), chapter 3; separation at 0.4 of the ambient pressure: Summerfield's
 * criterion, from memory. Losses are not in it: a real nozzle gives a share of this, closed on the impulse.
 */
public final class ThrustCoefficient {

    private static final double SEPARATION = 0.4;

    private final Gas gas;
    private final double exitPressureRatio;
    private final double expansionRatio;

    private ThrustCoefficient(Gas gas, double exitPressureRatio, double expansionRatio) {
        this.gas = gas;
        this.exitPressureRatio = exitPressureRatio;
        this.expansionRatio = expansionRatio;
    }

    /**
     * The coefficient of a nozzle.
     *
     * @param expansionRatio exit area over throat area [1], at least 1
     * @return the coefficient by pressure
     * @throws IllegalArgumentException if the ratio is below 1
     */
    public static ThrustCoefficient of(double expansionRatio, Gas gas) {
        if (!(expansionRatio >= 1)) {
            throw new IllegalArgumentException("an expansion ratio is at least 1, not " + expansionRatio);
        }
        return new ThrustCoefficient(gas, exitPressureRatio(expansionRatio, gas), expansionRatio);
    }

    /** {@return exit pressure over chamber pressure in full flow [1]} */
    public double exitPressureRatio() {
        return exitPressureRatio;
    }

    /**
     * The coefficient.
     *
     * @param pressure in the chamber [Pa, absolute]
     * @param ambient  [Pa, absolute]; 0 is vacuum
     * @return [1]; 0 at or below the ambient pressure
     */
    public double at(double pressure, double ambient) {
        if (pressure <= ambient) {
            return 0;
        }
        double q = ambient / pressure;
        double k = gas.specificHeatRatio();
        if (q > gas.criticalRatio()) {
            return 2 * k / (k - 1) * q * (StrictMath.pow(q, -(k - 1) / k) - 1);
        }
        double separated = SEPARATION * q;
        if (exitPressureRatio >= separated) {
            return at(exitPressureRatio, expansionRatio, q);
        }
        // a jet that leaves right behind the throat is the least that a choked nozzle gives
        return Math.max(at(separated, areaRatio(separated, gas), q), at(gas.criticalRatio(), 1, q));
    }

    private double at(double exitRatio, double areaRatio, double q) {
        return gas.flowFactor() * speed(exitRatio, gas.specificHeatRatio()) + (exitRatio - q) * areaRatio;
    }

    /** The velocity function sqrt(2k/(k-1) (1 - x^((k-1)/k))). */
    private static double speed(double x, double k) {
        return Math.sqrt(2 * k / (k - 1) * (1 - StrictMath.pow(x, (k - 1) / k)));
    }

    private static double areaRatio(double x, Gas gas) {
        double k = gas.specificHeatRatio();
        return gas.flowFactor() / (StrictMath.pow(x, 1 / k) * speed(x, k));
    }

    /** Halves the logarithm between vacuum and choking; the area ratio falls with the exit pressure there. */
    private static double exitPressureRatio(double expansionRatio, Gas gas) {
        double low = Math.log(1e-12);
        double high = StrictMath.log(gas.criticalRatio());
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (areaRatio(StrictMath.exp(middle), gas) > expansionRatio) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return StrictMath.exp((low + high) / 2);
    }
}
