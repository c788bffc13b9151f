package io.burnlaw.trace;

/**
 * A quick look for the lines of one mains frequency, to spare the least-squares fit where there is nothing.
 *
 * <p>The residual is multiplied by sines of the mains frequency and its multiples once, and summed over stretches so
 * short that a slightly different frequency turns by little within one: {@code 2 pi 0.12 Hz 0.05 s / 2}, 0.02 of a
 * radian. Sums at the frequencies about the line then follow from one turn a stretch. Cosine and sine are taken as
 * orthogonal, which over twelve periods they are within a twelfth.
 */
final class LineSearch {

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
     * @param fit       the residual
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
