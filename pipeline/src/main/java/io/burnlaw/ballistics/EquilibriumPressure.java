package io.burnlaw.ballistics;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * Pressures at which the propellant makes as much gas as the nozzle passes.
 *
 * <pre>
 *     S · r(P) · (rho - P / (Gamma c*)^2) = m(P)
 *     for r = a P^n, choked, gas density left out:  P = (Kn · rho · a · c*)^(1 / (1 - n))           [Pa]
 * </pre>
 *
 * <p>There can be none, one, or several: a law with a slow regime has a low and a high equilibrium and an unstable one
 * between them. <b>Source.</b> Sutton and Biblarz (2001), chapter 11; several roots: derived.
 */
public final class EquilibriumPressure {

    /** Points of the search in ln P; laws bend on a much coarser scale. */
    private static final int GRID = 600;

    private EquilibriumPressure() {}

    /**
     * One equilibrium.
     *
     * @param pressure [Pa, absolute]
     * @param stable   whether a small disturbance dies out: gas made rises less steeply with pressure than gas that leaves
     */
    public record Equilibrium(double pressure, boolean stable) {}

    /**
     * All equilibria for a burning surface and a throat.
     *
     * @param surface burning surface [m2]
     * @param area    of the throat [m2]
     * @param motor   for propellant, gas and ambient pressure
     * @param rate    the law, rate [m/s] by absolute pressure [Pa]; it may have jumps
     * @param highest where the search ends [Pa, absolute]
     * @return in rising order; a jump of the law across the balance counts as an equilibrium at the jump
     */
    public static List<Equilibrium> of(
            double surface, double area, Motor motor, DoubleUnaryOperator rate, double highest) {
        DoubleUnaryOperator surplus = x -> {
            double pressure = StrictMath.exp(x);
            double made = surface
                    * rate.applyAsDouble(pressure)
                    * (motor.density() - motor.gas().density(pressure));
            return made - Nozzle.massFlow(pressure, motor.ambientPressure(), area, motor.gas());
        };
        double from = StrictMath.log(Math.max(motor.ambientPressure(), 1));
        double to = StrictMath.log(highest);
        List<Equilibrium> found = new ArrayList<>();
        double left = from;
        double atLeft = surplus.applyAsDouble(left);
        for (int i = 1; i <= GRID; i++) {
            double right = from + (to - from) * i / GRID;
            double atRight = surplus.applyAsDouble(right);
            if (atLeft > 0 != atRight > 0) {
                found.add(new Equilibrium(StrictMath.exp(root(surplus, left, right, atLeft > 0)), atLeft > 0));
            }
            left = right;
            atLeft = atRight;
        }
        return List.copyOf(found);
    }

    private static double root(DoubleUnaryOperator surplus, double left, double right, boolean positiveLeft) {
        double low = left;
        double high = right;
        // 60 halvings of a few hundredths reach the last bit; they also close in on a jump, where Brent's method
        // wanders
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (surplus.applyAsDouble(middle) > 0 == positiveLeft) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
