package io.burnlaw.reduction;

import io.burnlaw.campaign.Firing;
import io.burnlaw.quantity.Measured;
import io.burnlaw.trace.Trace;
import java.util.OptionalDouble;

/**
 * Figures of a firing from its thrust record.
 *
 * <pre>
 *     I    = integral of F dt                                  total impulse       [N s]
 *     I_sp = I / (m_p g0)                                      specific impulse    [s]
 *     C_F  = I / integral of P·A_t dt                          thrust coefficient, impulse-averaged [1]
 * </pre>
 * over the operation, P absolute.
 *
 * <p><b>Source.</b> Sutton and Biblarz (2001), chapters 2 and 3; g0 = 9.80665 m/s2 (3rd CGPM, 1901).
 *
 * @param totalImpulse      [N s]
 * @param specificImpulse   [s]; empty where the mass is unknown
 * @param thrustCoefficient [1]; empty where no pressure was recorded
 */
public record ThrustFigures(double totalImpulse, OptionalDouble specificImpulse, OptionalDouble thrustCoefficient) {

    private static final double STANDARD_GRAVITY = 9.80665;

    /**
     * Works them out.
     *
     * @param pressureRecorded whether its pressure was measured; a derived one gives no C_F
     * @param firing           mass and throat
     * @param from             begin of operation [s]
     * @param to               end of operation [s]
     */
    public static ThrustFigures of(Trace trace, boolean pressureRecorded, Firing firing, double from, double to) {
        double before = firing.throatDiameter().value();
        double after = firing.throatDiameterAfter().map(Measured::value).orElse(before);
        double impulse = 0;
        double force = 0;
        for (int i = 1; i < trace.size(); i++) {
            double left = Math.max(from, trace.time(i - 1));
            double right = Math.min(to, trace.time(i));
            if (right > left) {
                double share = ((left + right) / 2 - from) / (to - from);
                double diameter = before + share * (after - before);
                impulse += mean(trace.thrust(i - 1), trace.thrust(i)) * (right - left);
                if (pressureRecorded) {
                    force += mean(trace.pressure(i - 1), trace.pressure(i))
                            * (Math.PI / 4 * diameter * diameter)
                            * (right - left);
                }
            }
        }
        double total = impulse;
        return new ThrustFigures(
                total,
                firing.propellantMass().isPresent()
                        ? OptionalDouble.of(
                                total / (firing.propellantMass().get().value() * STANDARD_GRAVITY))
                        : OptionalDouble.empty(),
                force > 0 ? OptionalDouble.of(total / force) : OptionalDouble.empty());
    }

    private static double mean(double a, double b) {
        return 0.5 * (a + b);
    }
}
