package io.burnlaw.campaign;

import java.util.Optional;

/**
 * Bounds outside of which a value was certainly written in another unit than meant. They are wide on purpose: within
 * them nothing is doubted. Common practice, no source.
 */
final class Plausible {

    static final String AMBIENT_PRESSURE = "an absolute pressure of air, 20 to 120 kPa";
    static final String DENSITY = "the density of a solid propellant, 0.5 to 5 g/cm³";
    static final String TEMPERATURE = "the temperature of a grain, -100 to 150 °C";
    static final String LENGTH = "a length below 10 m";
    static final String BURNING_PRESSURE = "an absolute pressure of burning, 1 kPa to 200 MPa";
    static final String RATE = "the burning rate of a solid propellant, 0.01 to 500 mm/s";
    static final String CASE_LIMIT = "the gauge pressure that a motor case can stand, 0.1 to 100 MPa";
    static final String VELOCITY = "the c* of a solid propellant, 100 to 5000 m/s";

    private Plausible() {}

    static Optional<String> ambientPressure(double pascal) {
        return within(pascal, 20e3, 120e3, "this cannot be the pressure of the air");
    }

    static Optional<String> density(double kilogramPerCubicMetre) {
        return within(kilogramPerCubicMetre, 500, 5000, "no solid propellant has this density");
    }

    static Optional<String> temperature(double kelvin) {
        return within(kelvin, 173.15, 423.15, "no grain is fired at this temperature");
    }

    static Optional<String> length(double metre) {
        return within(metre, 0, 10, "this is too long for a grain or a strand");
    }

    static Optional<String> burningPressure(double pascal) {
        return within(pascal, 1e3, 200e6, "nobody burns a propellant at this pressure");
    }

    static Optional<String> rate(double metrePerSecond) {
        return within(metrePerSecond, 0.01e-3, 0.5, "no solid propellant burns at this rate");
    }

    static Optional<String> caseLimit(double pascal) {
        return within(pascal, 0.1e6, 100e6, "no motor case has this limit");
    }

    static Optional<String> velocity(double metrePerSecond) {
        return within(metrePerSecond, 100, 5000, "no solid propellant has this characteristic velocity");
    }

    private static Optional<String> within(double value, double low, double high, String doubt) {
        return value >= low && value <= high ? Optional.empty() : Optional.of(doubt);
    }
}
