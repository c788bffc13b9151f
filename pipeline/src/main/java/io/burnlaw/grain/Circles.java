package io.burnlaw.grain;

/** A round port in a round grain, centred or not: what is left of its wall and of the propellant around it. */
final class Circles {

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
