package io.burnlaw.reduction.events;

import io.burnlaw.campaign.Campaign.ReductionSettings;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Finds the times of the events of a burn, each by two estimates.
 *
 * <p>The record is smoothed for this (zero phase, and no wider than 1.2 % of the operation); integrals never use the
 * smoothed one.
 *
 * <p><b>Source.</b> Event letters A, B, E, G: DeLuca et al., RTO-MP-091 paper 35. See docs/methods.md, Events.
 */
public final class EventFinder {

    /** Widest half window of the smoothing, as a share of the operation [1]. */
    private static final double WIDEST = 0.012;

    /** What noise may be left in the smoothed record, as a share of the highest pressure [1]. */
    private static final double WANTED_NOISE = 0.003;

    /** Less than this share of the pressure integral before the ignition is nothing to look for [1]. */
    private static final double LITTLE = 0.01;

    private EventFinder() {}

    /**
     * What was found.
     *
     * @param start       A, first sign of burning [s]
     * @param crossing    B by the threshold [s]
     * @param tangent     B by the tangent [s]
     * @param bisector    E by the tangent bisector, where the lines met the trace [s]
     * @param curvature   E by the sharpest bend [s]
     * @param actionStart [s]
     * @param actionEnd   [s]
     * @param highest     highest smoothed pressure over ambient [Pa]
     * @param dwellStart  begin of a dwell at low pressure before the main rise [s]
     * @param dwellEnd    its end [s]; there whenever its begin is
     * @param half        half width of the smoothing [s]
     */
    public record Found(
            double start,
            double crossing,
            double tangent,
            OptionalDouble bisector,
            double curvature,
            double actionStart,
            double actionEnd,
            double highest,
            OptionalDouble dwellStart,
            OptionalDouble dwellEnd,
            double half) {

        /**
         * The burnout that somebody asked for by name.
         *
         * @return [s]; empty where the mean web is asked for, which no event of the trace shows
         */
        public OptionalDouble burnout(ReductionSettings.BurnoutEvent event) {
            return switch (event) {
                case MEAN_WEB -> OptionalDouble.empty();
                case TANGENT_BISECTOR -> OptionalDouble.of(bisector.orElse(curvature));
                case MAXIMUM_CURVATURE -> OptionalDouble.of(curvature);
            };
        }

        /** {@return by how much the two opinions on the ignition differ [s]} */
        public double ignitionSpread() {
            return Math.abs(crossing - tangent);
        }

        /** {@return by how much the two opinions on the web burnout differ [s]} */
        public double burnoutSpread() {
            return Math.abs(bisector.orElse(curvature) - curvature);
        }
    }

    /**
     * Finds the events.
     *
     * @param record  the operation [Pa, absolute], with a little before and after it
     * @param ambient [Pa, absolute]
     * @param noise   standard deviation of a cell [Pa]
     * @return the events; empty where there is no rise or no fall in the record
     */
    public static Optional<Found> find(UniformTrace record, double ambient, double noise, ReductionSettings settings) {
        int n = record.size();
        double[] gauge = record.shifted(-ambient).pressures();
        double rough = highest(Smoothing.twice(gauge, 1));
        double windows = noise / (WANTED_NOISE * rough);
        // Two running means of 2h+1 leave sqrt(2/3 / (2h+1)) of the noise.
        int half = (int) Math.round(Math.min(WIDEST * n, Math.max(1, (windows * windows * 2 / 3 - 1) / 2)));
        half = Math.max(1, half);
        int quick = Math.max(1, Math.min(half, (int) (0.004 * n)));
        double[] smooth = Smoothing.twice(gauge, half);
        double[] quickly = Smoothing.twice(gauge, quick);
        double top = highest(smooth);
        double floor = Math.max(0.002 * top, 4 * noise / Math.sqrt(2 * quick + 1.0));
        int first = firstAbove(quickly, 0, n - 1, floor);
        int last = lastAbove(smooth, first, floor);
        if (last - first < 10) {
            return Optional.empty();
        }
        Optional<Dwell> dwell = Dwell.find(smooth, first, last, floor);
        int middle = half(gauge, dwell.map(Dwell::to).orElse(first));
        double foot = dwell.map(Dwell::mean).orElse(0.0);
        double level = foot + settings.ignitionThreshold() * (top - foot);
        int from = dwell.map(Dwell::to).orElse(Math.max(0, first - 2 * quick));
        double risen = foot + 0.6 * (Math.min(top, quickly[middle]) - foot);
        int to = firstAbove(quickly, firstAbove(quickly, from, middle, risen), n - 1, level);
        IgnitionRise rise = IgnitionRise.find(quickly, quick, from, to, foot, level);
        if (dwell.isEmpty()) {
            rise = earlier(quickly, quick, first, rise, settings.ignitionThreshold());
        }
        int begin = (int) Math.max(0, Math.min(n - 10, Math.round(rise.crossing())));
        TailOffKnee knee = TailOffKnee.of(smooth, half, begin, top);
        OptionalDouble bisector = TangentBisector.find(knee);
        double curvature = MaximumCurvature.find(knee);
        double share = settings.endThreshold() * top;
        Optional<Dwell> alight = dwell.filter(Dwell::alight);
        return Optional.of(new Found(
                record.time(first),
                when(record, rise.crossing()),
                when(record, rise.tangent()),
                bisector.isPresent() ? OptionalDouble.of(when(record, bisector.getAsDouble())) : OptionalDouble.empty(),
                when(record, curvature),
                when(record, up(quickly, share)),
                when(record, down(smooth, share)),
                top,
                alight.isPresent() ? OptionalDouble.of(record.time(alight.get().from())) : OptionalDouble.empty(),
                alight.isPresent() ? OptionalDouble.of(record.time(alight.get().to())) : OptionalDouble.empty(),
                half * record.step()));
    }

    /**
     * A burn whose pressure climbs to many times its first level has burned for long when it crosses a share of its
     * highest one. Then the share is taken of the mean up to there, until hardly anything is before the crossing.
     */
    private static IgnitionRise earlier(double[] gauge, int half, int first, IgnitionRise rise, double threshold) {
        double whole = sum(gauge, first, gauge.length);
        IgnitionRise found = rise;
        for (int pass = 0; pass < 4; pass++) {
            int crossing = (int) Math.ceil(found.crossing());
            double before = sum(gauge, first, crossing);
            if (crossing - first < 4 || before < LITTLE * whole) {
                return found;
            }
            double level = threshold * before / (crossing - first);
            int from = Math.max(0, first - 2 * half);
            found = IgnitionRise.find(gauge, half, from, firstAbove(gauge, from, crossing, 6 * level), 0, level);
        }
        return found;
    }

    private static double sum(double[] values, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += values[i];
        }
        return sum;
    }

    private static double when(UniformTrace record, double place) {
        return record.time(0) + place * record.step();
    }

    private static double highest(double[] values) {
        double top = values[0];
        for (double v : values) {
            top = Math.max(top, v);
        }
        return top;
    }

    /** Cell at which half of the pressure integral from a cell on has passed. */
    private static int half(double[] gauge, int from) {
        double whole = 0;
        for (int i = from; i < gauge.length; i++) {
            whole += gauge[i];
        }
        double sum = 0;
        int i = from;
        while (i < gauge.length - 1 && (sum += gauge[i]) < 0.5 * whole) {
            i++;
        }
        return Math.max(from + 1, i);
    }

    /** The first place from {@code from} on that reaches a level; {@code last} where none before it does. */
    private static int firstAbove(double[] values, int from, int last, double level) {
        int i = from;
        while (i < last && values[i] < level) {
            i++;
        }
        return i;
    }

    /** The last place that reaches a level; {@code first} where none behind it does. */
    private static int lastAbove(double[] values, int first, double level) {
        int i = values.length - 1;
        while (i > first && values[i] < level) {
            i--;
        }
        return i;
    }

    private static double up(double[] values, double level) {
        int i = firstAbove(values, 0, values.length - 1, level);
        return i == 0 ? 0 : i - 1 + (level - values[i - 1]) / (values[i] - values[i - 1]);
    }

    private static double down(double[] values, double level) {
        int i = lastAbove(values, 0, level);
        return i == values.length - 1 ? i : i + (values[i] - level) / (values[i] - values[i + 1]);
    }

    /**
     * When the web began to burn: where the rise crosses a share of the highest pressure; and as the second opinion where
     * the steepest tangent of the rise, drawn back, meets the pressure that it rose from.
     *
     * <p><b>Source.</b> Threshold: Jones et al., AIAA 2015-4103 (10 % of the highest pressure). Tangent: common practice,
     * no source.
     *
     * @param crossing place where the threshold is crossed [cells]
     * @param tangent  place where the tangent meets the foot [cells]
     */
    private record IgnitionRise(double crossing, double tangent) {

        /**
         * Times a rise.
         *
         * @param gauge smoothed pressure over ambient, by cell [Pa]
         * @param half  half width of the smoothing [cells]
         * @param from  cell from which to look
         * @param to    cell up to which the rise must have come
         * @param foot  pressure over ambient that it rises from [Pa]
         * @param level pressure over ambient that must be crossed [Pa], above the foot
         */
        static IgnitionRise find(double[] gauge, int half, int from, int to, double foot, double level) {
            int cross = to;
            // The last crossing before the web burns for good: an igniter's spike before it is none of the web's.
            while (cross > from && gauge[cross - 1] >= level) {
                cross--;
            }
            double before = cross > 0 ? gauge[cross - 1] : gauge[cross];
            double span = gauge[cross] - before;
            double crossing = span > 0 ? cross - 1 + (level - before) / span : cross;
            int h = Math.max(1, half);
            int steepest = Math.max(cross, h);
            double most = -Double.MAX_VALUE;
            for (int i = Math.max(h, cross - h); i <= Math.min(to, gauge.length - 1 - h); i++) {
                double rise = gauge[i + h] - gauge[i - h];
                if (rise > most) {
                    most = rise;
                    steepest = i;
                }
            }
            double slope = most / (2 * h);
            double tangent = slope > 0 ? steepest - (gauge[steepest] - foot) / slope : crossing;
            return new IgnitionRise(crossing, Math.max(from - 2.0 * h, Math.min(tangent, steepest)));
        }
    }
}
