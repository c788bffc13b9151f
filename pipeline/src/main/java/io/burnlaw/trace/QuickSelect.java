package io.burnlaw.trace;

import java.util.Arrays;

/**
 * The value of a given rank, without sorting the others: a few hundred of the values give bounds that the rank lies
 * between but for an unlucky draw, and only what lies between them is looked at further. One pass over the values.
 * With the selection of Commons Math instead, the check of a campaign takes about a tenth more of the processor's time.
 *
 * <p><b>Source.</b> Bounds: Floyd and Rivest, Comm. ACM 18 (1975) 165; places are even steps here, not drawn. Few values:
 * Hoare, Comm. ACM 4 (1961) 321. Both from memory.
 */
public final class QuickSelect {

    /** Up to so many values no bounds are needed. */
    private static final int FEW = 512;

    /** Up to so many values sorting is as quick as choosing. */
    private static final int SORTED = 24;

    /** Values that give the bounds. */
    private static final int DRAWN = 256;

    /** Ranks on each side among them: three standard deviations of the median's. */
    private static final int MARGIN = 24;

    private QuickSelect() {}

    /**
     * The value that would stand at {@code rank} if {@code values[from..to)} were sorted.
     *
     * @param values none of them NaN; left as they are
     * @param from   first index
     * @param to     index after the last
     * @param rank   from 0
     */
    public static double at(double[] values, int from, int to, int rank) {
        return between(values, from, to, rank, rank);
    }

    /**
     * Median of {@code values[from..to)}: of an even number the mean of the two in the middle.
     *
     * @param values none of them NaN; left as they are
     * @param from   first index
     * @param to     index after the last, beyond the first
     */
    public static double median(double[] values, int from, int to) {
        int n = to - from;
        return between(values, from, to, (n - 1) / 2, n / 2);
    }

    /** Mean of the values of two ranks, the second one the first or the next. */
    private static double between(double[] values, int from, int to, int first, int second) {
        int n = to - from;
        if (n <= FEW) {
            return chosen(Arrays.copyOfRange(values, from, to), first, second);
        }
        double[] drawn = new double[DRAWN];
        for (int k = 0; k < DRAWN; k++) {
            drawn[k] = values[from + (int) ((long) n * k / DRAWN)];
        }
        int lower = (int) ((long) first * DRAWN / n) - MARGIN;
        int upper = (int) ((long) second * DRAWN / n) + MARGIN;
        long low = lower < 0 ? Long.MIN_VALUE >> 1 : key(chosen(drawn, lower, lower));
        long high = upper >= DRAWN ? Long.MAX_VALUE >> 1 : key(chosen(drawn, upper, upper));
        double[] middle = new double[n / 2];
        int below = 0;
        int within = 0;
        for (int i = from; i < to; i++) {
            if (within == middle.length) {
                return sorted(Arrays.copyOfRange(values, from, to), first, second);
            }
            // Signs of differences instead of branches, which cannot be predicted.
            long key = key(values[i]);
            long beneath = (key - low) >>> 63;
            middle[within] = values[i];
            below += (int) beneath;
            within += 1 - (int) (beneath | (high - key) >>> 63);
        }
        return first >= below && second < below + within
                ? between(middle, 0, within, first - below, second - below)
                : sorted(Arrays.copyOfRange(values, from, to), first, second);
    }

    /** A whole number that rises with the value; halved, so that differences of two do not overflow. */
    private static long key(double value) {
        long bits = Double.doubleToRawLongBits(value);
        return (bits ^ (bits >> 63) >>> 1) >> 1;
    }

    /** The same of few values, which are put into another order. */
    private static double chosen(double[] values, int first, int second) {
        int left = 0;
        int right = values.length - 1;
        while (right - left >= SORTED) {
            double pivot = middle(values[left], values[(left + right) >>> 1], values[right]);
            int i = left;
            int j = right;
            while (i <= j) {
                while (values[i] < pivot) {
                    i++;
                }
                while (values[j] > pivot) {
                    j--;
                }
                if (i <= j) {
                    double value = values[i];
                    values[i++] = values[j];
                    values[j--] = value;
                }
            }
            // What lies between is the pivot itself.
            left = first > j ? Math.min(i, first) : left;
            right = first < i ? Math.max(j, first) : right;
        }
        Arrays.sort(values, left, right + 1);
        if (first == second) {
            return values[first];
        }
        double next = values[second];
        for (int i = right + 1; i < values.length; i++) {
            next = second > right ? Math.min(next, values[i]) : next;
        }
        return 0.5 * (values[first] + next);
    }

    private static double middle(double a, double b, double c) {
        return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    }

    private static double sorted(double[] values, int first, int second) {
        Arrays.sort(values);
        return first == second ? values[first] : 0.5 * (values[first] + values[second]);
    }
}
