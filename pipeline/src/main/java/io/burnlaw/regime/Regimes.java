package io.burnlaw.regime;

import io.burnlaw.finding.Finding;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The laws that a propellant follows, from low to high pressure.
 *
 * @param claim     what may be said about a change of regime
 * @param shape     how the laws meet; {@link Shape#JOINED} where there is one
 * @param regimes   from low to high pressure, at least one
 * @param breaks    between them, one fewer
 * @param evidence  why that many
 * @param unsettled points at an end that lie off the laws and are too few for a law of their own
 * @param off       ids of points that belong to none of several laws and were not fitted with them
 * @param findings  what the reader must know
 */
public record Regimes(
        Claim claim,
        Shape shape,
        List<Regime> regimes,
        List<Break> breaks,
        Evidence evidence,
        Optional<UnsettledRegime> unsettled,
        List<String> off,
        List<Finding> findings) {

    /**
     * A range of pressures.
     *
     * @param low  [Pa, absolute]
     * @param high [Pa, absolute]
     */
    public record Span(double low, double high) {}

    public Regimes {
        regimes = List.copyOf(regimes);
        breaks = List.copyOf(breaks);
        off = List.copyOf(off);
        findings = List.copyOf(findings);
        if (regimes.isEmpty() || breaks.size() != regimes.size() - 1) {
            throw new IllegalArgumentException(regimes.size() + " regimes with " + breaks.size() + " breaks");
        }
    }

    /** {@return ids of all points on which no law rests: those at an end that are too few, and those off every law} */
    public List<String> apart() {
        return Stream.concat(unsettled.stream().flatMap(found -> found.ids().stream()), off.stream())
                .toList();
    }

    /** {@return how many laws} */
    public int selected() {
        return regimes.size();
    }

    /**
     * The pressures in which the law with the most points holds beyond doubt: between the intervals of its breaks, and
     * without an end where there is no break.
     *
     * @return these pressures
     */
    public Span widest() {
        int most = 0;
        for (int j = 1; j < regimes.size(); j++) {
            most = regimes.get(j).ids().size() > regimes.get(most).ids().size() ? j : most;
        }
        double low = most == 0
                ? 0
                : breaks.get(most - 1)
                        .interval()
                        .estimated()
                        .map(Interval.Estimated::high)
                        .orElse(breaks.get(most - 1).pressure());
        double high = most == breaks.size()
                ? Double.POSITIVE_INFINITY
                : breaks.get(most)
                        .interval()
                        .estimated()
                        .map(Interval.Estimated::low)
                        .orElse(breaks.get(most).pressure());
        return new Span(low, high);
    }

    /** {@return the laws, from low to high pressure} */
    public List<RateLaw> laws() {
        return regimes.stream().map(Regime::law).toList();
    }

    /**
     * The regime that holds at a pressure; beyond the ends, the last one.
     *
     * @param pressure [Pa, absolute]
     * @return the regime
     */
    public Regime at(double pressure) {
        int i = 0;
        while (i < breaks.size() && pressure >= breaks.get(i).pressure()) {
            i++;
        }
        return regimes.get(i);
    }

    /**
     * The rate that the laws give.
     *
     * @param pressure [Pa, absolute], above zero
     * @return [m/s]
     */
    public double rate(double pressure) {
        return at(pressure).law().rate(pressure);
    }
}
