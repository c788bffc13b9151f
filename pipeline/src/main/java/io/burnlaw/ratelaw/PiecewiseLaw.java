package io.burnlaw.ratelaw;

import java.util.ArrayList;
import java.util.List;

/**
 * One or more power laws, each for its range of pressures; beyond the ends the last one holds.
 *
 * @param laws   from low to high pressure, at least one
 * @param breaks pressures between them [Pa, absolute], rising, one fewer
 */
public record PiecewiseLaw(List<RateLaw> laws, List<Double> breaks) {

    /** In ln r. */
    private static final double JUMP = 0.02;

    public PiecewiseLaw {
        laws = List.copyOf(laws);
        breaks = List.copyOf(breaks);
        if (laws.isEmpty() || breaks.size() != laws.size() - 1) {
            throw new IllegalArgumentException(laws.size() + " laws with " + breaks.size() + " breaks");
        }
        for (int i = 1; i < breaks.size(); i++) {
            if (!(breaks.get(i) > breaks.get(i - 1))) {
                throw new IllegalArgumentException("breaks do not rise: " + breaks);
            }
        }
    }

    /**
     * A single law.
     *
     * @param law that holds at all pressures
     */
    public static PiecewiseLaw of(RateLaw law) {
        return new PiecewiseLaw(List.of(law), List.of());
    }

    /**
     * Which law holds.
     *
     * @param pressure [Pa, absolute]
     * @return its place, from 0
     */
    public int indexAt(double pressure) {
        int i = 0;
        while (i < breaks.size() && pressure >= breaks.get(i)) {
            i++;
        }
        return i;
    }

    /**
     * The law that holds.
     *
     * @param pressure [Pa, absolute]
     */
    public RateLaw at(double pressure) {
        return laws.get(indexAt(pressure));
    }

    /**
     * The rate.
     *
     * @param pressure [Pa, absolute], above zero
     * @return [m/s]
     */
    public double rate(double pressure) {
        return at(pressure).rate(pressure);
    }

    /**
     * The same with another law in one place.
     *
     * @param index of the place, from 0
     */
    public PiecewiseLaw with(int index, RateLaw other) {
        List<RateLaw> changed = new ArrayList<>(laws);
        changed.set(index, other);
        return new PiecewiseLaw(changed, breaks);
    }

    /**
     * The laws that hold at a pressure and above, the lowest of them extended downward.
     *
     * @param pressure [Pa, absolute]
     */
    public PiecewiseLaw from(double pressure) {
        int first = indexAt(pressure);
        return new PiecewiseLaw(laws.subList(first, laws.size()), breaks.subList(first, breaks.size()));
    }

    /**
     * The laws for a motor that burns at a pressure: not those below a jump of the rate, or below a passage with an
     * exponent of 1 or more. Whether a motor gets across either depends on the igniter, not on the law.
     *
     * @param pressure at which it burns [Pa, absolute]
     * @return the laws, the lowest of them extended downward
     */
    public PiecewiseLaw ofMotorAt(double pressure) {
        int first = indexAt(pressure);
        while (first > 0 && !jumps(first - 1) && laws.get(first - 1).exponent() < 1) {
            first--;
        }
        return new PiecewiseLaw(laws.subList(first, laws.size()), breaks.subList(first, breaks.size()));
    }

    /**
     * Whether the rate jumps at a break, by more than laws that were fitted apart may miss each other.
     *
     * @param index of the break, from 0
     */
    public boolean jumps(int index) {
        double at = breaks.get(index);
        return Math.abs(StrictMath.log(
                        laws.get(index + 1).rate(at) / laws.get(index).rate(at)))
                > JUMP;
    }

    /** {@return lowest pressure among the points of all laws [Pa, absolute]} */
    public double pressureLow() {
        return laws.get(0).pressureLow();
    }

    /** {@return highest pressure among the points of all laws [Pa, absolute]} */
    public double pressureHigh() {
        return laws.get(laws.size() - 1).pressureHigh();
    }
}
