package io.burnlaw.trace;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.NumberFormat;
import java.util.Arrays;
import java.util.List;

/**
 * Gaps and uneven spacing of a record whose burn is unknown, such as a strand's. For a known burn {@link Sampling}
 * checks whether the samples resolve it.
 */
public final class Spacing {

    /** An interval belongs to a multiple of the usual one if it is this near to it [1]; stamps have few digits. */
    private static final double NEAR = 0.25;

    /** More intervals than this share off the multiples make a record uneven [1]. */
    private static final double UNEVEN_SHARE = 0.05;

    /** So many equal long intervals in a row are a slower rate and no lost samples. */
    private static final int SLOWER_RATE = 10;

    /** Shortest interval that is a gap, in usual ones. */
    private static final double GAP = 1.5;

    /** The usual interval is the median of at most so many. */
    private static final int MEDIAN_OF = 20_001;

    private Spacing() {}

    /**
     * Looks at the intervals of a record whose times rise.
     *
     * @param time [s]
     * @return what was seen, at most one finding
     */
    public static List<Finding> judge(double[] time) {
        if (time.length < 3) {
            return List.of();
        }
        double usual = usualInterval(time);
        int off = 0;
        int lost = 0;
        int gaps = 0;
        int longestRun = 0;
        double rate = 1 / usual;
        int run = 0;
        double longest = 0;
        double longestAt = 0;
        long before = 1;
        for (int i = 1; i < time.length; i++) {
            double ratio = (time[i] - time[i - 1]) * rate;
            if (Math.abs(ratio - 1) <= NEAR) {
                run = 0;
                before = 1;
                continue;
            }
            long multiple = Math.max(1, Math.round(ratio));
            off += Math.abs(ratio - multiple) > NEAR ? 1 : 0;
            run = multiple > 1 && multiple == before ? run + 1 : 0;
            longestRun = Math.max(longestRun, run);
            before = multiple;
            if (ratio > GAP) {
                gaps++;
                lost += (int) Math.min(Integer.MAX_VALUE / 2, multiple - 1);
                longestAt = ratio > longest ? time[i - 1] : longestAt;
                longest = Math.max(longest, ratio);
            }
        }
        if (off > UNEVEN_SHARE * (time.length - 1) || longestRun >= SLOWER_RATE) {
            return List.of(Finding.of(
                    FindingCode.UNEVEN_SAMPLING,
                    "%s of the intervals differ from the usual %s s, the longest is %s s."
                            .formatted(
                                    NumberFormat.percent(Math.max(off, gaps) / (time.length - 1.0), 2),
                                    NumberFormat.plain(usual, 4),
                                    NumberFormat.plain(longestInterval(time), 4))));
        }
        if (gaps == 0) {
            return List.of();
        }
        Finding finding = Finding.at(
                FindingCode.DROPPED_SAMPLES,
                "%d samples are missing in %d gaps (usual interval %s s); the longest gap is %s s, at %s s."
                        .formatted(
                                lost,
                                gaps,
                                NumberFormat.plain(usual, 4),
                                NumberFormat.plain(longest * usual, 4),
                                NumberFormat.plain(longestAt, 7)),
                longestAt);
        return List.of(lost < 3 ? finding.withSeverity(Severity.NOTE) : finding);
    }

    private static double longestInterval(double[] time) {
        double longest = 0;
        for (int i = 1; i < time.length; i++) {
            longest = Math.max(longest, time[i] - time[i - 1]);
        }
        return longest;
    }

    /** The median interval; of a long record that of evenly chosen ones. */
    static double usualInterval(double[] time) {
        int intervals = time.length - 1;
        int count = Math.min(intervals, MEDIAN_OF);
        double[] some = new double[count];
        for (int k = 0; k < count; k++) {
            int i = (int) ((long) k * intervals / count);
            some[k] = time[i + 1] - time[i];
        }
        Arrays.sort(some);
        return some[count / 2];
    }
}
