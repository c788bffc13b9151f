package io.burnlaw.reduction.balance;

import io.burnlaw.reduction.events.UniformTrace;
import io.burnlaw.reduction.point.PressureDistribution;

/** How long a motor was at each pressure while its web burned. */
public final class BurnPressures {

    private static final int MOST_BINS = 200;

    private BurnPressures() {}

    /**
     * Sorts a stretch of a record by pressure.
     *
     * @param record [Pa, absolute]
     * @param from   begin [s]
     * @param to     end [s]
     * @param lowest what the pressure is not below [Pa, absolute], above zero: noise may reach under it
     */
    public static PressureDistribution between(UniformTrace record, double from, double to, double lowest) {
        int first = record.cell(from + 0.5 * record.step());
        int last = Math.max(first, record.cell(to - 0.5 * record.step()));
        double least = Double.MAX_VALUE;
        double most = lowest;
        for (int i = first; i <= last; i++) {
            double p = Math.max(lowest, record.pressure(i));
            least = Math.min(least, p);
            most = Math.max(most, p);
        }
        int bins = most > least ? MOST_BINS : 1;
        double[] time = new double[bins];
        double[] sum = new double[bins];
        double scale = bins / Math.max(StrictMath.log(most / least), 1e-12);
        double share = (to - from) / (last - first + 1);
        for (int i = first; i <= last; i++) {
            double p = Math.max(lowest, record.pressure(i));
            int bin = bins == 1 ? 0 : (int) Math.min(bins - 1.0, scale * StrictMath.log(p / least));
            time[bin] += share;
            sum[bin] += share * p;
        }
        int filled = 0;
        for (double t : time) {
            filled += t > 0 ? 1 : 0;
        }
        double[] pressure = new double[filled];
        double[] duration = new double[filled];
        int into = 0;
        for (int i = 0; i < bins; i++) {
            if (time[i] > 0) {
                pressure[into] = sum[i] / time[i];
                duration[into++] = time[i];
            }
        }
        return PressureDistribution.of(pressure, duration);
    }
}
