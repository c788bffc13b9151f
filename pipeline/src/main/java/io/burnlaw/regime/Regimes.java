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

    /**
     * A law and the range of pressures in which it holds.
     *
     * @param settled          whether the exponent's interval lies wholly within what the word means; false where the
     *                         word is only the best estimate
     * @param exponentInterval of the exponent, at the level of the search
     * @param low              lower end of the range: the break below, or the lowest point [Pa, absolute]
     * @param high             upper end of the range: the break above, or the highest point [Pa, absolute]
     * @param ids              of the points that it rests on, from low to high pressure
     * @param sentence         the law in words, with numbers
     */
    public record Regime(
            RateLaw law,
            RegimeKind kind,
            boolean settled,
            Interval exponentInterval,
            double low,
            double high,
            List<String> ids,
            String sentence) {

        public Regime {
            ids = List.copyOf(ids);
        }
    }

    /** The trade's word for a regime. */
    public enum RegimeKind {
        /** The exponent lies between those of plateau and of instability. */
        ORDINARY,
        /** The rate hardly depends on pressure. */
        PLATEAU,
        /** The rate falls as the pressure rises: the exponent is negative. */
        MESA,
        /** The exponent is 1 or more: no steady pressure in a motor. */
        UNSTABLE,
        /** Below the threshold pressure, by a slower law than above it. */
        SLOW_BURNING
    }

    /**
     * A pressure at which the law changes.
     *
     * @param pressure      [Pa, absolute]
     * @param interval      of the pressure, from the profile of the sum of squares [Pa, absolute]
     * @param rateRatio     rate just above over rate just below [1]; 1 where only the slope changes
     * @param exponentBelow [1]
     * @param exponentAbove [1]
     */
    public record Break(
            double pressure,
            Interval interval,
            Kind kind,
            double rateRatio,
            Interval rateRatioInterval,
            double exponentBelow,
            double exponentAbove) {

        /** What changes at a break. */
        public enum Kind {
            /** The exponent only. */
            SLOPE,
            /** The rate itself. */
            JUMP
        }
    }

    /** The conclusion about a change of regime that the points allow. */
    public enum Claim {
        /** One power law is enough. */
        SINGLE_LAW,
        /**
         * One power law is not enough, but a smooth curve fits decisively better than laws with breaks between them.
         */
        SMOOTH_CURVE,
        /** One power law is not enough; these points do not show whether it breaks or bends smoothly. */
        BEND,
        /** One power law is not enough, and breaks beat every smooth rival. */
        BREAK
    }

    /** How neighbouring laws meet. */
    enum Shape {
        /** The rate is the same on both sides of a break; only the exponent changes. */
        JOINED,
        /** The rate itself changes at a break. */
        JUMPING
    }

    /**
     * One or two points at an end of the range that clearly do not follow the law of the others and are too few for a
     * law of their own: probably another regime, with the firing that would decide it.
     *
     * @param side             at which end they lie
     * @param pressureLow      lowest among them [Pa, absolute]
     * @param pressureHigh     highest among them [Pa, absolute]
     * @param rate             geometric mean of their rates [m/s]
     * @param rateRatio        the others' law over these points' rate below, its inverse above [1]: how many times faster
     *                         the upper side burns at the pressures of these points
     * @param ratioInterval    of that ratio, from the prediction of the others' law
     * @param gapLow           highest pressure known on the slow side [Pa, absolute]
     * @param gapHigh          lowest pressure known on the fast side [Pa, absolute]
     * @param settlingPressure where the next firing would say most [Pa, absolute]
     * @param sentence         what can be said, and what would settle it
     */
    public record UnsettledRegime(
            Side side,
            List<String> ids,
            double pressureLow,
            double pressureHigh,
            double rate,
            double rateRatio,
            Interval ratioInterval,
            double gapLow,
            double gapHigh,
            double settlingPressure,
            String sentence) {

        /** At which end of the pressures. */
        public enum Side {
            /** Slow points below the others. */
            BELOW,
            /** Fast points above the others. */
            ABOVE
        }

        public UnsettledRegime {
            ids = List.copyOf(ids);
        }

        /** {@return whether it may as well be bad firings: one or two points, off by no more than those usually are} */
        public boolean mayBeBadFirings() {
            return ids.size() < 3 && Math.log(rateRatio) < BadPoints.USUAL;
        }
    }
}
