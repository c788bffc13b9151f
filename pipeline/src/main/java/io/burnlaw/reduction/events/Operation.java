package io.burnlaw.reduction.events;

import io.burnlaw.trace.ConditionedTrace;
import io.burnlaw.trace.QuietStep;
import io.burnlaw.trace.Trace;
import io.burnlaw.trace.WorkingLevel;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The part of a record in which the motor worked, found roughly, to give the fine search a scale of time and of
 * pressure.
 *
 * @param from     begin [s]
 * @param to       end [s]
 * @param highest  highest smoothed pressure over ambient [Pa]
 * @param recorded whether the record goes on after the end
 */
public record Operation(double from, double to, double highest, boolean recorded) {

    /** Below this share of the highest pressure a motor is taken to be out. */
    private static final double OUT = 0.007;

    /**
     * Above this share of the highest pressure something burns [1]: much less than for the end, because a smoulder in
     * unchoked flow burns a good share of the web at a pressure that is hardly visible, while after the end a hot sensor
     * drifts.
     */
    private static final double LIT = 0.001;

    /** How far above the noise of the smoothed record something must rise to be a burn. */
    private static final double CLEAR = 8;

    /**
     * Finds the operation.
     *
     * @param ambient     [Pa, absolute]
     * @param conditioned noise and zero of the record
     * @return the operation; empty where nothing rises clearly above the noise
     */
    public static Optional<Operation> find(Trace trace, double ambient, ConditionedTrace conditioned) {
        double[] time = trace.times();
        double[] gauge = trace.pressures();
        for (int i = 0; i < gauge.length; i++) {
            gauge[i] -= ambient;
        }
        double noise = conditioned.noiseStd();
        int n = time.length;
        if (n < 20) {
            return Optional.empty();
        }
        double[] first = Smoothing.twice(gauge, 2);
        int top = highest(first);
        double usual = WorkingLevel.of(gauge, 0, first[top]);
        int above = 0;
        for (double p : first) {
            if (p > 0.3 * usual) {
                above++;
            }
        }
        double wanted = noise / (0.003 * Math.max(usual, 1));
        int half = (int) Math.max(1, Math.min(above / 60, Math.round(wanted * wanted / 2)));
        double[] smooth = Smoothing.twice(gauge, half);
        top = highest(smooth);
        double left = noise / Math.sqrt(2 * half + 1.0);
        if (!(smooth[top] > CLEAR * left) || !(smooth[top] > 0)) {
            return Optional.empty();
        }
        double sure = Math.max(5 * left, 3 * conditioned.zeroStd());
        double lit = Math.max(LIT * smooth[top], sure);
        double out = Math.max(OUT * Math.min(smooth[top], usual), sure);
        // The window narrows at the ends of the record and leaves more noise there: they count only if the stretch
        // next to them is above the threshold too.
        int edge = Math.min(2 * half, n / 10);
        int from = Math.min(top, edge);
        while (from < top && smooth[from] < lit) {
            from++;
        }
        from = from == edge ? 0 : from;
        int to = Math.max(top, n - 1 - edge);
        while (to > top && smooth[to] < out) {
            to--;
        }
        to = to == n - 1 - edge ? n - 1 : to;
        boolean recorded = to < n - 1;
        OptionalInt smouldered = recorded ? QuietStep.end(gauge, to + 1, 0, smooth[top]) : OptionalInt.empty();
        // The zero behind the burn was made by taking the drift off: what is smaller than that is no burning.
        if (smouldered.isPresent() && mean(gauge, to + 1, smouldered.getAsInt()) > 3 * conditioned.zeroStd()) {
            to = smouldered.getAsInt();
        }
        return Optional.of(new Operation(time[from], time[to], smooth[top], recorded));
    }

    private static double mean(double[] values, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += values[i];
        }
        return sum / (to - from);
    }

    private static int highest(double[] values) {
        int top = 0;
        for (int i = 1; i < values.length; i++) {
            if (values[i] > values[top]) {
                top = i;
            }
        }
        return top;
    }
}
