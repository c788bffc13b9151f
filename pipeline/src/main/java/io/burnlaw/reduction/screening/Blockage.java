package io.burnlaw.reduction.screening;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.events.Burn;
import java.util.List;

/**
 * A short hump in the middle of the burn. At each place and for widths from some samples to an eighth of the burn, the
 * mean over the width is compared with a parabola through the flanks beside it; a hump is above the parabola by
 * much more than its uncertainty, and above either flank, so that neither the arch of a grain nor the step of a segment
 * that burns out is one.
 */
final class Blockage {

    /** In standard uncertainties of the difference: thousands of places are looked at. */
    private static final double CLEAR = 7;

    /** Of the pressure there [1]: less is roughness of the flame. */
    private static final double LEAST_SHARE = 0.025;

    private static final double WIDEST = 0.12;
    private static final double NARROWEST = 0.01;

    private Blockage() {}

    static List<Finding> look(Burn burn, BurnShape shape) {
        int from = shape.mainRise();
        int to = Math.min(shape.mainFall(), shape.size());
        int burning = to - from;
        // The igniter's own hump and the knee at burnout belong to other findings.
        int first = from + burning / 10;
        int last = to - burning / 12;
        double[] sums = sums(shape.gauge());
        double noise = burn.record().noiseStd();
        Hump best = null;
        for (int width = Math.max(5, (int) (NARROWEST * burning)); width <= WIDEST * burning; width = width * 3 / 2) {
            for (int at = first; at < last; at += Math.max(1, width / 4)) {
                if (!mayStand(sums, noise, at, width, first, last)) {
                    continue;
                }
                Hump hump = hump(shape, noise, at, width, first, last);
                if (hump != null && (best == null || hump.height() > best.height())) {
                    best = hump;
                }
            }
        }
        if (best == null) {
            return List.of();
        }
        return List.of(Finding.at(
                FindingCode.BLOCKAGE,
                Sentence.of(
                        "At about %.5g s the pressure is %.3g kPa (%.2g %%) above its trend for some %.2g ms.",
                        best.time(), best.height() / 1e3, 100 * best.height() / best.course(), 1e3 * best.duration()),
                best.time()));
    }

    private record Hump(double time, double height, double course, double duration) {}

    private static double[] sums(double[] values) {
        double[] sums = new double[values.length + 1];
        for (int i = 0; i < values.length; i++) {
            sums[i + 1] = sums[i] + values[i];
        }
        return sums;
    }

    /** Whether the top is above both flanks by what a hump must; nearly all places fail here, and need no parabola. */
    private static boolean mayStand(double[] sums, double noise, int at, int width, int first, int last) {
        int half = width / 2;
        int outer = 5 * width / 2;
        if (at - outer < first || at + outer >= last) {
            return false;
        }
        double top = (sums[at + half + 1] - sums[at - half]) / (2 * half + 1);
        double left = (sums[at - width + 1] - sums[at - width - half]) / (half + 1);
        double right = (sums[at + width + half + 1] - sums[at + width]) / (half + 1);
        // A hair less than what is asked for below: these sums round differently.
        double least = 0.59 * CLEAR * std(noise, width);
        return top - left > least && top - right > least;
    }

    /** A parabola through flanks that leave out the middle knows it about as well as half of its samples would. */
    private static double std(double noise, int width) {
        return noise * Math.sqrt(1.0 / (2 * (width / 2) + 1) + 4.0 / (5 * width / 2 - width));
    }

    private static Hump hump(BurnShape shape, double noise, int at, int width, int first, int last) {
        int half = width / 2;
        int inner = width;
        int outer = 5 * width / 2;
        if (at - outer < first || at + outer >= last) {
            return null;
        }
        double[] gauge = shape.gauge();
        Parabola flanks = new Parabola();
        for (int d = inner; d <= outer; d++) {
            flanks.add(-d / (double) outer, gauge[at - d]);
            flanks.add(d / (double) outer, gauge[at + d]);
        }
        double course = flanks.atZero();
        double top = BurnShape.mean(gauge, at - half, at + half + 1);
        double height = top - course;
        double std = std(noise, width);
        if (!(height > CLEAR * std) || !(height > LEAST_SHARE * course)) {
            return null;
        }
        double left = BurnShape.mean(gauge, at - inner - half, at - inner + 1);
        double right = BurnShape.mean(gauge, at + inner, at + inner + half + 1);
        boolean comesBack = top - left > 0.6 * height && top - right > 0.6 * height;
        return comesBack
                ? new Hump(shape.time()[at], height, course, shape.time()[at + half] - shape.time()[at - half])
                : null;
    }

    /** Least-squares parabola, asked for its value at zero; symmetric places leave the odd part out. */
    private static final class Parabola {
        private double n;
        private double xx;
        private double xxxx;
        private double y;
        private double yxx;

        void add(double x, double value) {
            n++;
            xx += x * x;
            xxxx += x * x * x * x;
            y += value;
            yxx += value * x * x;
        }

        double atZero() {
            return (y * xxxx - yxx * xx) / (n * xxxx - xx * xx);
        }
    }
}
