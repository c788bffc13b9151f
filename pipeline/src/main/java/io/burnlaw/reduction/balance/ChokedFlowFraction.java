package io.burnlaw.reduction.balance;

/**
 * Mass flow of a nozzle as a share of what it would pass choked at the same chamber pressure.
 *
 * <pre>
 *     critical ratio  x* = (2/(k+1))^(k/(k-1))
 *     phi(P) = 1                                                             where Pa/P &lt;= x*
 *     phi(P) = sqrt( 2k/(k-1) (x^(2/k) - x^((k+1)/k)) ) / Gamma,  x = Pa/P   above
 *     m' = phi P At / c*                                                     [kg/s]
 * </pre>
 *
 * <p>Below ambient the flow turns round and so does the sign; noise about ambient then sums to nothing.
 *
 * <p><b>Source.</b> One-dimensional isentropic flow, Sutton and Biblarz (2001), chapter 3. Tabulated, because a record
 * has many samples: the table over sqrt(1 - x) is good to 1e-4 of the choked flow.
 */
public final class ChokedFlowFraction {

    private static final int CELLS = 128;

    private final double specificHeatRatio;
    private final double vandenkerckhove;
    private final double ambient;
    private final double criticalRatio;
    private final double rootSpan;
    private final double[] table = new double[CELLS + 1];

    /**
     * For one gas and one day.
     *
     * @param specificHeatRatio k [1], above 1
     * @param ambient           Pa [Pa, absolute]
     */
    ChokedFlowFraction(double specificHeatRatio, double ambient) {
        double k = specificHeatRatio;
        this.specificHeatRatio = k;
        this.vandenkerckhove = vandenkerckhove(k);
        this.ambient = ambient;
        criticalRatio = StrictMath.pow(2 / (k + 1), k / (k - 1));
        rootSpan = Math.sqrt(1 - criticalRatio);
        for (int i = 0; i <= CELLS; i++) {
            double root = rootSpan * i / CELLS;
            double x = 1 - root * root;
            double flow = 2 * k / (k - 1) * (StrictMath.pow(x, 2 / k) - StrictMath.pow(x, (k + 1) / k));
            table[i] = Math.sqrt(Math.max(0, flow)) / vandenkerckhove;
        }
    }

    /**
     * The function of the specific heat ratio that choked flow is written with.
     *
     * @param k specific heat ratio [1], above 1
     * @return sqrt(k) (2/(k+1))^((k+1)/(2(k-1))) [1]
     */
    private static double vandenkerckhove(double k) {
        return Math.sqrt(k) * StrictMath.pow(2 / (k + 1), (k + 1) / (2 * (k - 1)));
    }

    /** {@return pressure of the surroundings [Pa, absolute]} */
    public double ambient() {
        return ambient;
    }

    /** {@return k [1]} */
    public double specificHeatRatio() {
        return specificHeatRatio;
    }

    /** {@return Gamma [1]} */
    double gamma() {
        return vandenkerckhove;
    }

    /**
     * Chamber pressure as far as it drives flow.
     *
     * @param pressure [Pa, absolute]
     * @return phi times pressure [Pa]; negative below ambient
     */
    public double drivingPressure(double pressure) {
        if (pressure * criticalRatio >= ambient) {
            return pressure;
        }
        if (pressure < ambient) {
            // The mirror image: the flow that the same difference would drive outward.
            double mirrored = 2 * ambient - pressure;
            return mirrored * criticalRatio >= ambient ? -mirrored : -unchoked(mirrored);
        }
        return unchoked(pressure);
    }

    private double unchoked(double pressure) {
        double place = Math.sqrt(1 - ambient / pressure) / rootSpan * CELLS;
        int cell = Math.min((int) place, CELLS - 1);
        return pressure * (table[cell] + (place - cell) * (table[cell + 1] - table[cell]));
    }
}
