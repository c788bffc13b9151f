package io.burnlaw.trace;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.trace.SineFit.Blocks;
import io.burnlaw.trace.SineFit.Turns;
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

    /** Blocks in a period of the fastest line that is looked for: it loses 5 % of its amplitude in them. */
    private static final int PER_PERIOD = 6;

    private static final double OVER_NEIGHBOURS = 4;
    private static final double LEAST_SHARE = 1e-3;

    static Hum remove(double[] time, double[] values, double range, Channel channel) {
        int n = time.length;
        if (n < 64 || !(range > 0)) {
            return new Hum(values, List.of());
        }
        double interval = (time[n - 1] - time[0]) / (n - 1);
        int together = (int) Math.max(1, Math.floor(1 / (PER_PERIOD * HARMONICS * MAINS[1] * interval)));
        Blocks blocks = Blocks.of(time, values, together);
        double[] clean = values;
        List<SineFit.Line> lines = new ArrayList<>();
        for (double mains : MAINS) {
            int half = (int) Math.round(0.5 * (1 / (mains * interval) - 1));
            // Four samples a period at least; and some periods, or there is no line to speak of.
            if (half < 2 || n < 12 * (2 * half + 1)) {
                continue;
            }
            int halfBlocks = Math.max(1, (int) Math.round(0.5 * (1 / (mains * together * interval) - 1)));
            LineSearch search = LineSearch.of(
                    SineFit.of(blocks, residual(blocks.mean(), halfBlocks), halfBlocks), mains, HARMONICS);
            SineFit fit = null;
            for (int harmonic = 1; harmonic <= HARMONICS && harmonic * mains * interval < 0.4; harmonic++) {
                if (!search.mayHold(harmonic, SIGNIFICANT)) {
                    continue;
                }
                fit = fit == null ? SineFit.of(time, residual(values, half), half) : fit;
                SineFit.Line line = fit.best(harmonic * mains);
                double kept = 1 - kernel(line.frequency() * interval, half);
                SineFit.Line whole =
                        new SineFit.Line(line.frequency(), line.cosine() / kept, line.sine() / kept, line.z());
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

    private static Finding told(List<SineFit.Line> lines, double range, double from, Channel channel) {
        SineFit.Line strongest = lines.get(0);
        StringBuilder others = new StringBuilder();
        for (SineFit.Line line : lines) {
            strongest = line.amplitude() > strongest.amplitude() ? line : strongest;
        }
        for (SineFit.Line line : lines) {
            if (line != strongest) {
                others.append(String.format(Locale.ROOT, "%s%.0f Hz", others.isEmpty() ? "" : ", ", line.frequency()));
            }
        }
        return Finding.at(
                FindingCode.MAINS_HUM,
                Sentence.of(
                        "A sine of %.2f Hz with an amplitude of %.3g %s (%.2g %% of the range) is in the %s from %.4g s"
                                + " on%s; it was subtracted.",
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

    /**
     * A quick look for the lines of one mains frequency, to spare the least-squares fit where there is nothing.
     *
     * <p>The residual is multiplied by sines of the mains frequency and its multiples once, and summed over stretches
     * so short that a slightly different frequency turns by little within one: {@code 2 pi 0.12 Hz 0.05 s / 2}, 0.02 of
     * a radian. Sums at the frequencies about the line then follow from one turn a stretch. Cosine and sine are taken
     * as orthogonal, which over twelve periods they are within a twelfth.
     */
    static final class LineSearch {

        /** Longest stretch [s]. */
        private static final double STRETCH = 0.05;

        /** Lines that reach half of what is asked for are looked at closely. */
        private static final double MARGIN = 0.5;

        private final SineFit fit;
        private final double mains;
        /** Middle of each stretch [s]. */
        private final double[] middle;
        /** By harmonic and stretch. */
        private final double[][] withCosine;

        private final double[][] withSine;
        private int stretches;

        private LineSearch(SineFit fit, double mains, int harmonics) {
            this.fit = fit;
            this.mains = mains;
            double[] time = fit.times();
            int most = 1;
            for (int first = 0, i = 1; i < time.length; i++) {
                if (time[i] - time[first] > STRETCH) {
                    most++;
                    first = i;
                }
            }
            middle = new double[most];
            withCosine = new double[harmonics][most];
            withSine = new double[harmonics][most];
        }

        /**
         * Multiplies and sums.
         *
         * @param mains     [Hz]
         * @param harmonics how many lines, 1 for the mains frequency alone
         */
        static LineSearch of(SineFit fit, double mains, int harmonics) {
            LineSearch search = new LineSearch(fit, mains, harmonics);
            search.sum(harmonics);
            return search;
        }

        private void sum(int harmonics) {
            double[] time = fit.times();
            double[] residual = fit.residuals();
            int n = time.length;
            double[] turns = new double[n];
            for (int i = 0; i < n; i++) {
                turns[i] = mains * time[i];
            }
            double[] cosine = new double[n];
            double[] sine = new double[n];
            Turns.cosineAndSine(turns, cosine, sine);
            double[] c = new double[harmonics];
            double[] s = new double[harmonics];
            int first = 0;
            for (int i = 0; i < n; i++) {
                if (time[i] - time[first] > STRETCH) {
                    close(first, i, c, s);
                    first = i;
                }
                double re = cosine[i];
                double im = sine[i];
                double x = residual[i];
                for (int h = 0; h < harmonics; h++) {
                    c[h] += x * re;
                    s[h] += x * im;
                    double next = re * cosine[i] - im * sine[i];
                    im = re * sine[i] + im * cosine[i];
                    re = next;
                }
            }
            if (n > 0) {
                close(first, n, c, s);
            }
        }

        private void close(int from, int to, double[] c, double[] s) {
            middle[stretches] = 0.5 * (fit.times()[from] + fit.times()[to - 1]);
            for (int h = 0; h < c.length; h++) {
                withCosine[h][stretches] = c[h];
                withSine[h][stretches] = s[h];
                c[h] = 0;
                s[h] = 0;
            }
            stretches++;
        }

        /**
         * Whether a line may stand at or near a multiple of the mains frequency.
         *
         * @param harmonic    which, from 1
         * @param significant the z that it must have
         * @return false where a fit would not find it
         */
        boolean mayHold(int harmonic, double significant) {
            return fit.highest(harmonic * mains, 3, frequency -> at(harmonic, frequency))
                            .z()
                    > MARGIN * significant;
        }

        private SineFit.Line at(int harmonic, double frequency) {
            double[] turns = new double[stretches];
            for (int k = 0; k < stretches; k++) {
                turns[k] = (frequency - harmonic * mains) * middle[k];
            }
            double[] cosine = new double[stretches];
            double[] sine = new double[stretches];
            Turns.cosineAndSine(turns, cosine, sine);
            double xc = 0;
            double xs = 0;
            for (int k = 0; k < stretches; k++) {
                xc += withCosine[harmonic - 1][k] * cosine[k] - withSine[harmonic - 1][k] * sine[k];
                xs += withCosine[harmonic - 1][k] * sine[k] + withSine[harmonic - 1][k] * cosine[k];
            }
            double scale = 2.0 / Math.max(1, fit.times().length);
            return fit.line(frequency, scale * xc, scale * xs);
        }
    }
}
