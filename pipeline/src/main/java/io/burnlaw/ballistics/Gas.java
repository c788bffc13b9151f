package io.burnlaw.ballistics;

/**
 * The combustion products as one ideal gas of constant flame temperature.
 *
 * <pre>
 *     Gamma  = sqrt(k) · (2 / (k + 1))^((k + 1) / (2 (k - 1)))                       [1]
 *     c*     = sqrt(R T0 / M) / Gamma                                               [m/s]
 *     rho    = p / (Gamma c*)^2                                                     [kg/m3]
 *     p_crit = p · (2 / (k + 1))^(k / (k - 1))          pressure in a choked throat [Pa]
 * </pre>
 *
 * <p><b>Source.</b> Isentropic flow of an ideal gas: Sutton and Biblarz (2001), chapter 3.
 */
public final class Gas {

    private final double characteristicVelocity;
    private final double specificHeatRatio;
    private final double flowFactor;
    private final double criticalRatio;
    private final double specificEnergy;

    /**
     * A gas.
     *
     * @param characteristicVelocity c* as delivered [m/s], above 0
     * @param specificHeatRatio      k [1], above 1
     */
    public Gas(double characteristicVelocity, double specificHeatRatio) {
        if (!(characteristicVelocity > 0 && specificHeatRatio > 1)) {
            throw new IllegalArgumentException(
                    "no gas: c* " + characteristicVelocity + " m/s, ratio of specific heats " + specificHeatRatio);
        }
        double k = specificHeatRatio;
        this.characteristicVelocity = characteristicVelocity;
        this.specificHeatRatio = k;
        this.flowFactor = Math.sqrt(k) * StrictMath.pow(2 / (k + 1), (k + 1) / (2 * (k - 1)));
        this.criticalRatio = StrictMath.pow(2 / (k + 1), k / (k - 1));
        this.specificEnergy = flowFactor * characteristicVelocity * flowFactor * characteristicVelocity;
    }

    /** {@return c* [m/s]} */
    public double characteristicVelocity() {
        return characteristicVelocity;
    }

    /** {@return k [1]} */
    public double specificHeatRatio() {
        return specificHeatRatio;
    }

    /** {@return Gamma [1]} */
    public double flowFactor() {
        return flowFactor;
    }

    /** {@return throat pressure over chamber pressure at which the flow just chokes [1]} */
    public double criticalRatio() {
        return criticalRatio;
    }

    /** {@return pressure over density, (Gamma c*)^2 [J/kg]} */
    public double specificEnergy() {
        return specificEnergy;
    }

    /**
     * Density in the chamber.
     *
     * @param pressure [Pa, absolute]
     * @return [kg/m3]
     */
    public double density(double pressure) {
        return pressure / specificEnergy;
    }
}
