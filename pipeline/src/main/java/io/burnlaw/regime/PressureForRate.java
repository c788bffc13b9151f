package io.burnlaw.regime;

import io.burnlaw.campaign.PressureLimit;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.regime.Regimes.Break;
import io.burnlaw.regime.Regimes.Regime;
import io.burnlaw.regime.Regimes.UnsettledRegime;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Answers the owner's question "it must burn k times faster: can a smaller throat do it?".
 *
 * <p>A throat only sets the pressure. Within one regime r ∝ Pⁿ, so that k times the rate needs k^(1/n) times the
 * pressure; its interval is that of n, carried through. Only another regime can do better.
 */
public final class PressureForRate {

    /** The factors that are answered unless others are asked for. */
    public static final List<Double> USUAL_FACTORS = List.of(2.0, 5.0, 10.0, 50.0);

    private static final int STEPS = 400;

    /** Pressures this near are the same one. */
    private static final double ROUNDING = 1 + 1e-9;

    private PressureForRate() {}

    /**
     * Answers for several factors.
     *
     * @param basePressure where the propellant burns now [Pa, absolute]; usually the lowest point, or ambient
     * @param limit        of the case; where none is stated, no pressure above those that were fired is named
     * @param factors      k, each above 1
     * @return an answer for each factor, in their order
     */
    public static List<FasterAnswer> answer(
            Regimes regimes, double basePressure, PressureLimit limit, List<Double> factors) {
        List<FasterAnswer> answers = new ArrayList<>();
        for (double factor : factors) {
            if (!(factor > 1)) {
                throw new IllegalArgumentException("a factor of " + factor + ": faster means above 1");
            }
            answers.add(new Base(regimes, basePressure, limit).answer(factor));
        }
        return answers;
    }

    /** Where the propellant burns now. */
    private static final class Base {

        private final Regimes regimes;
        private final double pressure;
        private final PressureLimit limit;
        private final double rate;
        private final boolean lone;
        private final Regime regime;
        private final double highest;

        Base(Regimes regimes, double pressure, PressureLimit limit) {
            this.regimes = regimes;
            this.pressure = pressure;
            this.limit = limit;
            this.regime = regimes.at(pressure);
            this.lone = regimes.unsettled()
                    .map(u -> u.side() == UnsettledRegime.Side.BELOW && pressure < u.gapHigh())
                    .orElse(false);
            this.rate = lone
                    ? regimes.unsettled().orElseThrow().rate()
                            * regime.law().rate(pressure)
                            / regime.law().rate(loneMiddle())
                    : regimes.rate(pressure);
            this.highest = regimes.regimes().get(regimes.selected() - 1).law().pressureHigh();
        }

        private double loneMiddle() {
            UnsettledRegime u = regimes.unsettled().orElseThrow();
            return Math.sqrt(u.pressureLow() * u.pressureHigh());
        }

        FasterAnswer answer(double factor) {
            double target = factor * rate;
            double top = top();
            OptionalDouble found = lowest(target, top);
            if (found.isEmpty()) {
                return outOfReach(factor, target, top);
            }
            double needed = found.getAsDouble();
            boolean same = !lone && regimes.at(needed) == regime;
            boolean beyond = needed > highest;
            FasterAnswer.Reach reach = beyond
                    ? FasterAnswer.Reach.EXTRAPOLATED
                    : same ? FasterAnswer.Reach.SAME_REGIME : FasterAnswer.Reach.ANOTHER_REGIME;
            Interval interval = same ? sameLaw(factor) : otherLaw(target, needed);
            double most = interval.estimated().map(Interval.Estimated::high).orElse(needed);
            if (limit.allowed().isPresent() && !limit.allowsMean(Math.max(needed, most), highest)) {
                return aboveTheLimit(factor, target);
            }
            String sentence =
                    NumberFormat.significant(factor, 3) + " times faster than " + now() + " is " + Words.rate(target)
                            + ", and needs " + Words.pressure(needed, interval) + ": "
                            + switch (reach) {
                                case SAME_REGIME ->
                                    "in the same regime, where the exponent is "
                                            + Words.number(regime.law().exponent(), regime.exponentInterval()) + ".";
                                case ANOTHER_REGIME -> "in another regime, which was measured. " + within();
                                case EXTRAPOLATED ->
                                    "above the highest point, " + Words.pressure(highest)
                                            + ", and true only if the law continues to there.";
                                case OUT_OF_REACH -> "";
                            }
                            + (limit.allowed().isPresent() ? " Stay below " + limit.inWords() + "." : NO_LIMIT);
            return new FasterAnswer(factor, rate, found, interval, reach, sentence);
        }

        /** As far beyond what was fired as a next firing is proposed [1]: common practice, no source. */
        private static final double FAR = 1.5;

        private static final String NO_LIMIT = " No case limit is given; add case_pressure_limit.";

        /** The highest pressure that may be named: allowed, and within what the laws support. */
        private double top() {
            return Math.max(pressure, Math.min(limit.ceiling(highest), FAR * highest));
        }

        private String now() {
            return "the " + Words.rate(rate) + " at " + Words.pressure(pressure);
        }

        /** The lowest pressure above the base at which the laws reach a rate; beyond the last point the last law goes on. */
        private OptionalDouble lowest(double target, double top) {
            if (lone) {
                UnsettledRegime u = regimes.unsettled().orElseThrow();
                return above(target, Math.max(u.gapHigh(), pressure), top);
            }
            return above(target, pressure, top);
        }

        private OptionalDouble above(double target, double from, double top) {
            if (from <= top && regimes.rate(from) >= target) {
                return OptionalDouble.of(from);
            }
            double low = from;
            List<Break> breaks = regimes.breaks();
            for (int j = 0; j <= breaks.size(); j++) {
                double high = j < breaks.size() ? breaks.get(j).pressure() : Double.POSITIVE_INFINITY;
                if (high <= low) {
                    continue;
                }
                RateLaw law = regimes.regimes().get(j).law();
                double needed = Math.max(low, crossing(law, target));
                if (law.rate(low) >= target) {
                    needed = low;
                }
                if (needed < high || (j == breaks.size() && needed < Double.POSITIVE_INFINITY)) {
                    return needed <= top ? OptionalDouble.of(needed) : OptionalDouble.empty();
                }
                low = high;
            }
            return OptionalDouble.empty();
        }

        private static double crossing(RateLaw law, double target) {
            if (!(law.exponent() > 0)) {
                return Double.POSITIVE_INFINITY;
            }
            double ln = StrictMath.log(target / law.rateAtReference()) / law.exponent();
            return ln > 100 ? Double.POSITIVE_INFINITY : law.referencePressure() * StrictMath.exp(ln);
        }

        private Interval sameLaw(double factor) {
            return regime.exponentInterval()
                    .estimated()
                    .<Interval>map(e -> e.low() > 0
                            ? new Interval.Estimated(
                                    pressure * StrictMath.pow(factor, 1 / e.high()),
                                    pressure * StrictMath.pow(factor, 1 / e.low()),
                                    e.level(),
                                    e.method())
                            : new Interval.NotEstimable(
                                    "the exponent's interval reaches zero, so perhaps no pressure gives this rate;"
                                            + " firings further apart in pressure would narrow it"))
                    .orElseGet(regime::exponentInterval);
        }

        /**
         * Where the band of the other law crosses the target, the base rate taken as it is; where the change itself
         * brings the rate, as well as the place of the change is known.
         */
        private Interval otherLaw(double target, double needed) {
            Regime other = regimes.at(needed);
            int place = regimes.regimes().indexOf(other);
            if (place > 0 && needed <= other.low() * ROUNDING) {
                return regimes.breaks().get(place - 1).interval();
            }
            RateLaw law = other.law();
            double from = place > 0 ? Math.max(other.low(), pressure) : pressure;
            double level = regime.exponentInterval()
                    .estimated()
                    .map(Interval.Estimated::level)
                    .orElse(0.95);
            double low = Double.NaN;
            double high = Double.NaN;
            for (int i = -STEPS; i <= STEPS; i++) {
                double at = needed * StrictMath.exp(3.0 * i / STEPS);
                Interval.Estimated band = law.interval(at, level).estimated().orElse(null);
                if (band != null && Double.isNaN(low) && band.high() >= target) {
                    low = at;
                }
                if (band != null && Double.isNaN(high) && band.low() >= target) {
                    high = at;
                }
            }
            return low <= high
                    ? new Interval.Estimated(
                            Math.max(low, from), Math.max(high, from), level, Interval.Method.STUDENT_T)
                    : new Interval.NotEstimable("the band of that law is too wide; fire more in that regime");
        }

        /** What the regime of now can give by itself. */
        private String within() {
            if (lone) {
                return "The slow side has too few points for a law of its own, so its highest rate is not known.";
            }
            double end = regime.high();
            double gain = regime.law().rate(end) / rate;
            return "Within its own regime, an exponent of "
                    + Words.number(regime.law().exponent(), regime.exponentInterval()) + " gives at most "
                    + NumberFormat.significant(gain, 2) + " times up to " + Words.pressure(end) + ".";
        }

        /** The pressure may be there, but its peak could pass the limit: none is named. */
        private FasterAnswer aboveTheLimit(double factor, double target) {
            return unanswered(
                    factor,
                    NumberFormat.significant(factor, 3) + " times the " + Words.rate(rate) + " of "
                            + Words.pressure(pressure)
                            + " (that is " + Words.rate(target)
                            + ") needs a pressure whose peak could pass " + limit.inWords() + ": none is named.");
        }

        private FasterAnswer outOfReach(double factor, double target, double top) {
            double best = regimes.rate(Math.min(top, Math.max(highest, pressure)));
            for (Regime each : regimes.regimes()) {
                double end = Math.min(top, each.high());
                if (end >= pressure && end >= each.low()) {
                    best = Math.max(best, each.law().rate(end));
                }
            }
            if (top > highest) {
                best = Math.max(best, regimes.rate(top));
            }
            boolean ofCase = limit.allowed().isPresent() && top < FAR * highest;
            String sentence = "No pressure up to " + Words.pressure(top)
                    + (ofCase
                            ? ", the case limit over its safety factor, "
                            : top > highest ? ", the limit of extrapolation, " : ", the highest that was measured, ")
                    + "gives " + NumberFormat.significant(factor, 3) + " times the " + Words.rate(rate) + " of "
                    + Words.pressure(pressure) + " (that is " + Words.rate(target) + "): by these laws it is at most "
                    + NumberFormat.significant(best / rate, 2) + " times."
                    + (limit.allowed().isPresent() ? "" : NO_LIMIT);
            return unanswered(factor, sentence);
        }

        private FasterAnswer unanswered(double factor, String sentence) {
            return new FasterAnswer(
                    factor,
                    rate,
                    OptionalDouble.empty(),
                    new Interval.NotEstimable("no allowed pressure gives it"),
                    FasterAnswer.Reach.OUT_OF_REACH,
                    sentence);
        }
    }

    /**
     * The pressure needed to burn a given number of times faster.
     *
     * @param factor       k [1], above 1
     * @param baseRate     how fast it burns now [m/s]
     * @param pressure     that k needs [Pa, absolute]; empty where no allowed pressure gives it
     * @param sentence     the answer in words, with numbers
     */
    public record FasterAnswer(
            double factor, double baseRate, OptionalDouble pressure, Interval interval, Reach reach, String sentence) {

        /** Where that pressure is. */
        public enum Reach {
            /** A higher pressure in the same regime, among the pressures that were fired. */
            SAME_REGIME,
            /** A higher pressure in another regime that was fired. */
            ANOTHER_REGIME,
            /** A pressure above all that were fired: the law would have to hold there. */
            EXTRAPOLATED,
            /** No pressure below the limit. */
            OUT_OF_REACH
        }
    }
}
