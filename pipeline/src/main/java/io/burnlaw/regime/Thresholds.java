package io.burnlaw.regime;

import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.regime.Regimes.Break;
import io.burnlaw.regime.Regimes.UnsettledRegime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Finds the pressure below which a propellant burns slowly, and the ratio of burning surface to throat area that keeps
 * a motor above it.
 *
 * <p>At equilibrium the gas that is made leaves: ρ·A_b·r(P) = P·A_t/c*, so K_n = A_b/A_t = P/(ρ·r(P)·c*), the usual
 * P^(1−n)/(ρ·a·c*) for r = a·Pⁿ (Sutton and Biblarz, chapter 11). With r of the fast law at the threshold it is the
 * smallest K_n at which a motor that burns fast stays there. With r of the slow law it is the K_n at which a motor that
 * starts slow comes up by itself; between the two, which of them it does depends on how it was lit.
 */
public final class Thresholds {

    private Thresholds() {}

    /**
     * The threshold, where there is one.
     *
     * @param density                of the propellant [kg/m³]; empty where unknown
     * @param characteristicVelocity c* [m/s]; empty where unknown
     * @return the threshold; empty where there is none
     */
    public static Optional<Threshold> find(
            Regimes regimes, OptionalDouble density, OptionalDouble characteristicVelocity) {
        OptionalDouble product = density.isPresent() && characteristicVelocity.isPresent()
                ? OptionalDouble.of(density.getAsDouble() * characteristicVelocity.getAsDouble())
                : OptionalDouble.empty();
        List<Break> breaks = regimes.breaks();
        double level = regimes.regimes()
                .get(0)
                .exponentInterval()
                .estimated()
                .map(Interval.Estimated::level)
                .orElse(0.95);
        int slow = SlowSide.lawsBelow(regimes.laws(), breaks, level);
        if (slow > 0) {
            return Optional.of(atBreak(regimes, slow, level, product));
        }
        return regimes.unsettled()
                .filter(found -> !found.mayBeBadFirings())
                .map(unsettled -> inGap(regimes, unsettled, product));
    }

    private static Threshold atBreak(Regimes regimes, int slow, double level, OptionalDouble product) {
        Break at = regimes.breaks().get(slow - 1);
        RateLaw fast = regimes.regimes().get(slow).law();
        RateLaw last = regimes.regimes().get(slow - 1).law();
        double ratio = SlowSide.ratio(regimes.laws(), regimes.breaks(), slow - 1, level);
        List<String> below = new ArrayList<>();
        List<String> above = new ArrayList<>();
        for (int j = 0; j < regimes.selected(); j++) {
            (j < slow ? below : above).addAll(regimes.regimes().get(j).ids());
        }
        double safe = at.interval().estimated().map(Interval.Estimated::high).orElse(at.pressure());
        OptionalDouble stay = areaRatio(at.pressure(), fast.rate(at.pressure()), product);
        OptionalDouble climb = areaRatio(at.pressure(), fast.rate(at.pressure()) / ratio, product);
        String sentence = "Below " + Words.pressure(at.pressure(), at.interval())
                + " the propellant burns slowly. At this threshold the rate rises " + NumberFormat.significant(ratio, 2)
                + " times, from " + Words.rate(fast.rate(at.pressure()) / ratio) + " to "
                + Words.rate(fast.rate(at.pressure())) + "."
                + areaWords(stay, climb, areaRatio(safe, fast.rate(safe), product), safe);
        return new Threshold(
                at.pressure(),
                at.interval(),
                last.pressureHigh(),
                fast.pressureLow(),
                ratio,
                below,
                above,
                stay,
                climb,
                sentence);
    }

    private static Threshold inGap(Regimes regimes, UnsettledRegime unsettled, OptionalDouble product) {
        boolean lone = unsettled.side() == UnsettledRegime.Side.BELOW;
        List<String> others =
                regimes.regimes().stream().flatMap(r -> r.ids().stream()).toList();
        double middle = unsettled.settlingPressure();
        double high = unsettled.gapHigh();
        double fastRate = lone ? regimes.rate(high) : unsettled.rate();
        // only the upper end of the gap is known to burn fast
        OptionalDouble stay = areaRatio(high, fastRate, product);
        OptionalDouble climb = lone ? OptionalDouble.empty() : areaRatio(high, regimes.rate(high), product);
        String sentence = unsettled.sentence() + areaWords(stay, climb, stay, high);
        return new Threshold(
                middle,
                new Interval.NotEstimable("only a range is known: slow at " + Words.pressure(unsettled.gapLow())
                        + ", fast at " + Words.pressure(high) + "; fire between the two to narrow it"),
                unsettled.gapLow(),
                high,
                unsettled.rateRatio(),
                lone ? unsettled.ids() : others,
                lone ? others : unsettled.ids(),
                stay,
                climb,
                sentence);
    }

    private static OptionalDouble areaRatio(double pressure, double rate, OptionalDouble product) {
        return product.isPresent()
                ? OptionalDouble.of(pressure / (rate * product.getAsDouble()))
                : OptionalDouble.empty();
    }

    private static String areaWords(OptionalDouble stay, OptionalDouble climb, OptionalDouble safe, double pressure) {
        if (stay.isEmpty()) {
            return " Add density and c* to get the ratio of burning surface to throat area that keeps a motor above"
                    + " it.";
        }
        String text = " Keep the ratio of burning surface to throat area (Kn) at" + " least "
                + NumberFormat.significant(stay.getAsDouble(), 3) + " for the whole burn";
        text += safe.getAsDouble() > stay.getAsDouble() * 1.005
                ? " (" + NumberFormat.significant(safe.getAsDouble(), 3) + " to be above " + Words.pressure(pressure)
                        + ")"
                : "";
        text += climb.isPresent()
                ? ". A motor that started slowly speeds up by itself only above Kn "
                        + NumberFormat.significant(climb.getAsDouble(), 3) + "."
                : ".";
        return text + " Check that the case can stand the pressure that this gives.";
    }

    /**
     * The pressure below which the propellant burns slowly.
     *
     * @param pressure     best estimate [Pa, absolute]; the geometric middle of the gap where only the gap is known
     * @param interval     of the pressure; not estimable where only the gap is known
     * @param gapLow       highest pressure of a slow point [Pa, absolute]
     * @param gapHigh      lowest pressure of a fast point [Pa, absolute]
     * @param rateRatio    fast over slow rate across it [1]
     * @param below        ids of the slow points
     * @param above        ids of the fast points
     * @param stayRatio    smallest ratio of burning surface to throat area at which a motor that burns fast stays above
     *                     the threshold [1]; empty without density and c*
     * @param climbRatio   ratio at which a motor that starts slow comes up through the threshold by itself [1]; empty
     *                     without density and c*, or where the slow side has no law
     * @param sentence     what it means for the owner of the motor
     */
    public record Threshold(
            double pressure,
            Interval interval,
            double gapLow,
            double gapHigh,
            double rateRatio,
            List<String> below,
            List<String> above,
            OptionalDouble stayRatio,
            OptionalDouble climbRatio,
            String sentence) {

        public Threshold {
            below = List.copyOf(below);
            above = List.copyOf(above);
        }
    }

    /**
     * Which laws are slow ones: those below a break at which the rate jumps up, or below the top of a steep passage
     * with an exponent of 1 or more, in which no motor stands still.
     */
    static final class SlowSide {

        /** A jump of less than this is no threshold for the owner of a motor. */
        private static final double LEAST_RATIO = 1.25;

        private SlowSide() {}

        /** {@return how many laws, from the lowest, lie below the threshold; zero where there is none} */
        static int lawsBelow(List<RateLaw> laws, List<Break> breaks, double level) {
            int best = 0;
            double largest = LEAST_RATIO;
            for (int j = 0; j < breaks.size(); j++) {
                double ratio = ratio(laws, breaks, j, level);
                if (ratio > largest) {
                    largest = ratio;
                    best = j + 1;
                }
            }
            return best;
        }

        /** {@return fast over slow rate across a break, or 1 where that break is no threshold} */
        static double ratio(List<RateLaw> laws, List<Break> breaks, int j, double level) {
            Break at = breaks.get(j);
            if (at.kind() == Break.Kind.JUMP) {
                double low = at.rateRatioInterval()
                        .estimated()
                        .map(Interval.Estimated::low)
                        .orElse(0.0);
                return low > 1 ? at.rateRatio() : 1;
            }
            RateLaw passage = laws.get(j);
            boolean steep = passage.exponentInterval(level)
                            .estimated()
                            .map(Interval.Estimated::low)
                            .orElse(0.0)
                    >= 1;
            if (!steep || laws.get(j + 1).exponent() >= 1) {
                return 1;
            }
            double bottom = j == 0 ? passage.pressureLow() : breaks.get(j - 1).pressure();
            return passage.rate(at.pressure()) / passage.rate(bottom);
        }
    }
}
