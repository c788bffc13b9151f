package io.burnlaw.grain;

import io.burnlaw.quantity.Measured;
import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * A hollow cylinder that burns at its core and at none, one or both of its end faces; its outside does not burn. With x
 * the web burned, m the burning ends, and an arc and a cross-section that end where the outside is reached:
 *
 * <pre>
 *     V(x) = section(x) · (L - m x)                                      [m3]
 *     S(x) = arc(x) · (L - m x) + m · section(x) = -dV/dx                [m2]
 * </pre>
 *
 * <p>Where both ends burn and the length is less than twice the radial web, the piece burns out by length first.
 *
 * @param outerDiameter [m]
 * @param coreDiameter  [m], less than outerDiameter
 * @param length        [m]
 * @param burningEnds   0, 1 or 2
 * @param coreOffset    distance of the core's axis from the grain's [m]; the web is w + e·cos(angle) then
 */
public record Tube(Measured outerDiameter, Measured coreDiameter, Measured length, int burningEnds, double coreOffset)
        implements Grain {

    public Tube {
        double radialWeb = (outerDiameter.value() - coreDiameter.value()) / 2;
        if (!(coreDiameter.value() > 0 && radialWeb > 0 && length.value() > 0)) {
            throw new IllegalArgumentException("no tube: outer diameter " + outerDiameter.value() + " m, core "
                    + coreDiameter.value() + " m, length " + length.value() + " m");
        }
        if (burningEnds < 0 || burningEnds > 2) {
            throw new IllegalArgumentException("a tube has 0 to 2 burning ends, not " + burningEnds);
        }
        if (!(coreOffset >= 0 && coreOffset < radialWeb)) {
            throw new IllegalArgumentException(
                    "a core off by " + coreOffset + " m leaves the web of " + radialWeb + " m");
        }
    }

    /**
     * A tube with its core in the middle.
     *
     * @param outerDiameter [m]
     * @param coreDiameter  [m]
     * @param length        [m]
     * @param burningEnds   0, 1 or 2
     */
    public Tube(Measured outerDiameter, Measured coreDiameter, Measured length, int burningEnds) {
        this(outerDiameter, coreDiameter, length, burningEnds, 0);
    }

    @Override
    public double surface(double burned) {
        double lengthLeft = length.value() - burningEnds * burned;
        if (lengthLeft <= 0) {
            return 0;
        }
        double port = coreRadius() + burned;
        return Circles.wall(outerRadius(), port, coreOffset) * lengthLeft
                + burningEnds * Circles.left(outerRadius(), port, coreOffset);
    }

    @Override
    public double volume(double burned) {
        double lengthLeft = length.value() - burningEnds * burned;
        return lengthLeft <= 0 ? 0 : Circles.left(outerRadius(), coreRadius() + burned, coreOffset) * lengthLeft;
    }

    @Override
    public Measured web() {
        Measured radial = Webs.halfDifference(outerDiameter, coreDiameter);
        return burningEnds == 0 ? radial : Webs.smaller(radial, Webs.part(length, burningEnds));
    }

    @Override
    public double burnout() {
        double radial = outerRadius() - coreRadius() + coreOffset;
        return burningEnds == 0 ? radial : Math.min(radial, length.value() / burningEnds);
    }

    @Override
    public double[] breaks() {
        double firstThrough = outerRadius() - coreRadius() - coreOffset;
        double last = burnout();
        return firstThrough < last && coreOffset > 0 ? new double[] {firstThrough, last} : new double[] {last};
    }

    @Override
    public OptionalDouble envelope() {
        return OptionalDouble.of(Math.PI * outerRadius() * outerRadius() * length.value());
    }

    /**
     * The same tube with its core off the axis.
     *
     * @param offset [m], at least 0 and less than the radial web
     */
    public Tube withCoreOffset(double offset) {
        return new Tube(outerDiameter, coreDiameter, length, burningEnds, offset);
    }

    private double outerRadius() {
        return outerDiameter.value() / 2;
    }

    private double coreRadius() {
        return coreDiameter.value() / 2;
    }

    static double[] union(double[]... breaks) {
        return Arrays.stream(breaks)
                .flatMapToDouble(Arrays::stream)
                .sorted()
                .distinct()
                .toArray();
    }

    /** A round port in a round grain, centred or not: what is left of its wall and of the propellant around it. */
    static final class Circles {

        private Circles() {}

        /**
         * Length of the port's wall that still lies in propellant: the arc of the port's circle inside the outer circle.
         *
         * <pre>
         *     cos(phi) = (R^2 - e^2 - r^2) / (2 e r)        half angle of the part already burned through
         *     arc      = 2 r (pi - phi)
         * </pre>
         *
         * @param outer  radius R of the grain [m]
         * @param port   radius r of the port [m]
         * @param offset e between the centres [m]
         * @return [m]
         */
        static double wall(double outer, double port, double offset) {
            if (port + offset <= outer) {
                return port < outer ? 2 * Math.PI * port : 0;
            }
            if (port - offset >= outer) {
                return 0;
            }
            double cosine = (outer * outer - offset * offset - port * port) / (2 * offset * port);
            return 2 * port * (Math.PI - StrictMath.acos(clamp(cosine)));
        }

        /**
         * Cross-section of the propellant left: the outer circle without its overlap with the port's circle.
         *
         * @param outer  radius of the grain [m]
         * @param port   radius of the port [m]
         * @param offset between the centres [m]
         * @return [m2]
         */
        static double left(double outer, double port, double offset) {
            if (port + offset <= outer) {
                return Math.PI * (outer - port) * (outer + port);
            }
            if (port - offset >= outer) {
                return 0;
            }
            return Math.PI * outer * outer - overlap(outer, port, offset);
        }

        /** Overlap of two circles whose edges cross: two circular segments. */
        private static double overlap(double outer, double port, double offset) {
            double toChord = (offset * offset + outer * outer - port * port) / (2 * offset);
            return segment(outer, toChord) + segment(port, offset - toChord);
        }

        private static double segment(double radius, double toChord) {
            double half = StrictMath.acos(clamp(toChord / radius));
            return radius * radius * half - toChord * Math.sqrt(Math.max(0, radius * radius - toChord * toChord));
        }

        private static double clamp(double cosine) {
            return Math.max(-1, Math.min(1, cosine));
        }
    }
}
