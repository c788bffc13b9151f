package io.burnlaw.campaign;

import java.util.Optional;

/**
 * Bounds outside of which a value is certainly in the wrong unit, or is a value of something else. They are wide on
 * purpose: within them nothing is doubted. All of them: common practice, no source. The table of docs/methods.md,
 * Bounds, is made of them.
 */
public enum Plausible {
    AMBIENT_PRESSURE(
            20e3,
            120e3,
            "an absolute pressure of air, 20 to 120 kPa",
            "this cannot be the pressure of the air",
            "from the highest mountain to the deepest mine; a gauge reads 0 in open air"),

    DENSITY(
            500,
            5000,
            "the density of a solid propellant, 0.5 to 5 g/cm³",
            "no solid propellant has this density",
            "from a foam to a grain of heavy metal; kg/m³ instead of g/cm³ is a factor of 1,000"),

    TEMPERATURE(
            173.15,
            423.15,
            "the temperature of a grain, -100 to 150 °C",
            "no grain is fired at this temperature",
            "below, binders fail; above, grains ignite; K instead of °C is wrong by 273"),

    LENGTH(
            0,
            10,
            "a length below 10 m",
            "this is too long for a grain or a strand",
            "mm instead of m is a factor of 1,000"),

    BURNING_PRESSURE(
            1e3,
            200e6,
            "an absolute pressure of burning, 1 kPa to 200 MPa",
            "no propellant is burned at this pressure",
            "from a vacuum chamber to a closed vessel; Pa instead of MPa is a factor of a million"),

    RATE(
            0.01e-3,
            0.5,
            "the burning rate of a solid propellant, 0.01 to 500 mm/s",
            "no solid propellant burns at this rate",
            "from a smoulder in air to porous powders in closed vessels; m/s instead of mm/s is a factor of 1,000"),

    MOTOR_RATE(
            0.1e-3,
            0.1,
            "the burning rate of a motor grain, 0.1 to 100 mm/s",
            "no motor grain burns at this rate",
            "from a grain that barely smoulders to the fastest cast ones at 20 MPa; ms instead of s is a factor of 1,000"),

    CASE_LIMIT(
            0.1e6,
            100e6,
            "the gauge pressure that a motor case can stand, 0.1 to 100 MPa",
            "no motor case has this limit",
            "from a paper tube to a gun barrel"),

    VELOCITY(
            100,
            5000,
            "the c* of a solid propellant, 100 to 5000 m/s",
            "no solid propellant has this characteristic velocity",
            "wide on purpose, since the campaign states it; ft/s instead of m/s, a factor of 3.3, is not detected"),

    MEASURED_VELOCITY(
            300,
            1900,
            "the c* that a motor gives, 300 to 1900 m/s",
            "no motor gives this characteristic velocity",
            "from a cold gas generator to the hottest metallized propellants; a wrong throat or unit is usually outside"),

    NOZZLE_EFFICIENCY(
            0.70,
            1.03,
            "the thrust of a nozzle over the ideal one, 0.70 to 1.03",
            "no nozzle has this efficiency",
            "from a drilled orifice to a perfect nozzle, and 3 % for the gauges"),

    EXPONENT(
            -5,
            5,
            "an exponent of -5 to 5",
            "no propellant has this exponent",
            "wider than from a mesa to a detonation; a rate written here by mistake is usually outside"),

    SAMPLING_INTERVAL(
            1e-8,
            10,
            "a time of 10 ns to 10 s between two samples",
            "no logger records a burn at this rate",
            "from a logger of a shock tube to a burn read by eye; ms instead of s is a factor of 1,000"),

    CHAMBER_OVER_GRAIN(
            1,
            20,
            "a chamber of 1 to 20 times the cylinder around its grain",
            "this chamber does not belong to this grain",
            "the grain must fit in; L instead of cm³ is a factor of 1,000");

    private final double low;
    private final double high;
    private final String words;
    private final String doubt;
    private final String reason;

    Plausible(double low, double high, String words, String doubt, String reason) {
        this.low = low;
        this.high = high;
        this.words = words;
        this.doubt = doubt;
        this.reason = reason;
    }

    /** {@return the lower bound, in SI} */
    public double low() {
        return low;
    }

    /** {@return the upper bound, in SI} */
    public double high() {
        return high;
    }

    /** {@return what is expected, with the bounds} */
    public String words() {
        return words;
    }

    /** {@return why there} */
    public String reason() {
        return reason;
    }

    /**
     * Whether a value can be one.
     *
     * @param value in SI
     * @return whether it lies within the bounds; false for NaN
     */
    public boolean holds(double value) {
        return value >= low && value <= high;
    }

    /**
     * What speaks against a value.
     *
     * @param value in SI
     * @return what to say; empty where it is within the bounds
     */
    public Optional<String> doubt(double value) {
        return holds(value) ? Optional.empty() : Optional.of(doubt);
    }
}
