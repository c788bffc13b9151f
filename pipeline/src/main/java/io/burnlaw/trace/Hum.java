package io.burnlaw.trace;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Lines of the mains, 50 Hz and 60 Hz and twice and three times them, fitted to the record and taken off it.
 *
 * <pre>
 *     e(t)     = x(t) - mean of x over one mains period about t
 *     e(t)    ~ A cos(2 pi f t) + B sin(2 pi f t)                    least squares, wild e left out
 *     z        = (A^2 + B^2) N / (4 s^2)                             exponential with mean 1 for white noise
 * </pre>
 * A line counts where z is above 20 (chance of 2e-9 at one frequency), where it is four times as high as what the same
 * fit gives at frequencies beside it, and where its amplitude is above a thousandth of the range. The mean over a
 * period has its zero at the line, so that e keeps the line whole and loses the burn.
 *
 * <p><b>Source.</b> Least-squares spectrum: Lomb, Astrophys. Space Sci. 39 (1976) 447; distribution: Scargle, Astrophys.
 * J. 263 (1982) 835. Both from memory.
 *
 * @param values  without the lines
 * @param finding what was taken off
 */
record Hum(double[] values, List<Finding> finding) {

    private static final double[] MAINS = {50, 60};
    private static final int HARMONICS = 3;
    private static final double SIGNIFICANT = 20;
    private static final double OVER_NEIGHBOURS = 4;
    private static final double LEAST_SHARE = 1e-3;

    /** Beside the line, far enough not to see it and near enough to see the same noise [Hz]. */
    private static final double[] NEIGHBOURS = {-9, -6.5, -4, 4, 6.5, 9};

    /** How far mains and logger may be off [Hz]. */
    private static final double WANDER = 0.12;

    /** More samples than this make the fit no better. */
    private static final int MOST_SAMPLES = 20_000;

    static Hum remove(double[] time, double[] values, double range, Channel channel) {
        int n = time.length;
        if (n < 64 || !(range > 0)) {
            return new Hum(values, List.of());
        }
        double interval = (time[n - 1] - time[0]) / (n - 1);
        double[] clean = values;
        List<Line> lines = new ArrayList<>();
        for (double mains : MAINS) {
            int half = (int) Math.round(0.5 * (1 / (mains * interval) - 1));
            // Four samples a period at least; and some periods, or there is no line to speak of.
            if (half < 2 || n < 12 * (2 * half + 1)) {
                continue;
            }
            double[] residual = residual(values, half);
            for (int harmonic = 1; harmonic <= HARMONICS && harmonic * mains * interval < 0.4; harmonic++) {
                Fit fit = new Fit(time, residual, half);
                Line line = fit.best(harmonic * mains);
                double kept = 1 - kernel(line.frequency() * interval, half);
                Line whole = new Line(line.frequency(), line.cosine() / kept, line.sine() / kept, line.z());
                if (line.z() > SIGNIFICANT
                        && whole.amplitude() > LEAST_SHARE * range
                        && line.amplitude() > OVER_NEIGHBOURS * fit.beside(harmonic * mains)) {
                    lines.add(whole);
                    clean = whole.takenOff(time, clean);
                }
            }
        }
        return new Hum(clean, lines.isEmpty() ? List.of() : List.of(told(lines, range, time[0], channel)));
    }

    private static Finding told(List<Line> lines, double range, double from, Channel channel) {
        Line strongest = lines.get(0);
        StringBuilder others = new StringBuilder();
        for (Line line : lines) {
            strongest = line.amplitude() > strongest.amplitude() ? line : strongest;
        }
        for (Line line : lines) {
            if (line != strongest) {
                others.append(String.format(Locale.ROOT, "%s%.0f Hz", others.isEmpty() ? "" : ", ", line.frequency()));
            }
        }
        return Finding.at(
                FindingCode.MAINS_HUM,
                String.format(
                        Locale.ROOT,
                        "A sine of %.2f Hz with an amplitude of %.3g %s (%.2g %% of the range) runs through the %s from"
                                + " %.4g s on%s; it was taken off.",
                        strongest.frequency(),
                        strongest.amplitude() / channel.unit(),
                        channel.symbol(),
                        100 * strongest.amplitude() / range,
                        channel.name(),
                        from,
                        others.isEmpty() ? "" : ", with lines at " + others),
                from);
    }

    private static double[] residual(double[] values, int half) {
        double[] mean = Scatter.runningMean(values, half);
        double[] residual = new double[values.length];
        for (int i = 0; i < residual.length; i++) {
            residual[i] = values[i] - mean[i];
        }
        return residual;
    }

    /** What a running mean of 2·half + 1 samples leaves of a sine, by its frequency in cycles a sample. */
    private static double kernel(double frequency, int half) {
        int width = 2 * half + 1;
        return Math.sin(Math.PI * frequency * width) / (width * Math.sin(Math.PI * frequency));
    }

    private record Line(double frequency, double cosine, double sine, double z) {

        double amplitude() {
            return Math.hypot(cosine, sine);
        }

        double[] takenOff(double[] time, double[] values) {
            double[] clean = values.clone();
            for (int i = 0; i < clean.length; i++) {
                double phase = 2 * Math.PI * frequency * (time[i] - time[0]);
                clean[i] -= cosine * StrictMath.cos(phase) + sine * StrictMath.sin(phase);
            }
            return clean;
        }
    }

    /** Least squares of one sine on the samples of a residual that are not wild. */
    private static final class Fit {

        private final double[] time;
        private final double[] residual;
        private final int used;
        private final double meanSquare;

        Fit(double[] allTimes, double[] all, int half) {
            int n = all.length;
            double wild = 3.5 * Scatter.std(all, half, n - half);
            int stride = Math.max(1, n / MOST_SAMPLES);
            double[] keptTimes = new double[n / stride + 1];
            double[] kept = new double[n / stride + 1];
            int count = 0;
            double sum = 0;
            for (int i = half; i < n - half; i += stride) {
                if (Math.abs(all[i]) <= wild) {
                    keptTimes[count] = allTimes[i] - allTimes[0];
                    kept[count] = all[i];
                    sum += all[i] * all[i];
                    count++;
                }
            }
            this.time = keptTimes;
            this.residual = kept;
            this.used = count;
            this.meanSquare = count == 0 ? 0 : sum / count;
        }

        Line best(double near) {
            double length = used < 2 ? 1 : time[used - 1] - time[0];
            double step = Math.min(WANDER, 0.25 / length);
            int steps = (int) Math.min(40, Math.ceil(WANDER / step));
            Line best = at(near);
            for (int k = 1; k <= steps && best.z() > 4 || k <= Math.min(1, steps); k++) {
                for (int sign = -1; sign <= 1; sign += 2) {
                    Line other = at(near + sign * k * WANDER / steps);
                    best = other.amplitude() > best.amplitude() ? other : best;
                }
            }
            return best;
        }

        double beside(double frequency) {
            double[] amplitudes = new double[NEIGHBOURS.length];
            for (int k = 0; k < amplitudes.length; k++) {
                amplitudes[k] = at(frequency + NEIGHBOURS[k]).amplitude();
            }
            return Scatter.median(amplitudes, 0, amplitudes.length);
        }

        private Line at(double frequency) {
            double cc = 0;
            double ss = 0;
            double cs = 0;
            double xc = 0;
            double xs = 0;
            for (int i = 0; i < used; i++) {
                double phase = 2 * Math.PI * frequency * time[i];
                double cosine = StrictMath.cos(phase);
                double sine = StrictMath.sin(phase);
                cc += cosine * cosine;
                ss += sine * sine;
                cs += cosine * sine;
                xc += residual[i] * cosine;
                xs += residual[i] * sine;
            }
            double determinant = cc * ss - cs * cs;
            if (!(determinant > 1e-9 * used * used)) {
                return new Line(frequency, 0, 0, 0);
            }
            double a = (xc * ss - xs * cs) / determinant;
            double b = (xs * cc - xc * cs) / determinant;
            double power = 0.5 * (a * a + b * b);
            double left = Math.max(meanSquare - power, 1e-12 * meanSquare);
            return new Line(frequency, a, b, left > 0 ? power * used / (2 * left) : 0);
        }
    }
}
