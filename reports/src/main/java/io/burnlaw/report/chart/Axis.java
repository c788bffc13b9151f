package io.burnlaw.report.chart;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * One axis of a picture.
 *
 * @param title with the unit
 * @param low   value at its start
 * @param high  value at its end, above {@code low}
 * @param logarithmic whether equal ratios are equally long; then both ends are positive
 */
record Axis(String title, double low, double high, boolean logarithmic) {

    /** Tenths of a decade's first place in the order in which they are given a label while there is room. */
    private static final int[] BY_WORTH = {10, 20, 50, 30, 70, 40, 60, 80, 90, 15, 25, 35, 45};

    /** Below this ratio of its ends an axis has ticks between the whole places too. */
    private static final double NARROW = 12;

    Axis {
        if (!(high > low) || (logarithmic && !(low > 0)) || !Double.isFinite(high - low)) {
            throw new IllegalArgumentException("axis " + title + " from " + low + " to " + high);
        }
    }

    /**
     * A place on the axis.
     *
     * @param label words beside it; empty for a small tick
     * @param strong whether it is a decade, or any labelled tick of a linear axis
     */
    record Tick(double value, String label, boolean strong) {}

    static Axis logarithmic(String title, List<Double> values) {
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        for (double value : values) {
            if (value > 0 && Double.isFinite(value)) {
                low = Math.min(low, value);
                high = Math.max(high, value);
            }
        }
        if (high == 0) {
            return new Axis(title, 1, 10, true);
        }
        // at least a factor of two is shown, so that scatter about one pressure does not look like a law
        double middle = Math.sqrt(low * high);
        double half = Math.max(Math.sqrt(high / low) * 1.12, Math.sqrt(2));
        return new Axis(title, middle / half, middle * half, true);
    }

    static Axis linear(String title, double low, double high, double margin) {
        double span = high > low ? high - low : Math.max(Math.abs(high), 1);
        return new Axis(title, low - margin * span, high + margin * span, false);
    }

    /** Share of the axis that lies below a value, 0 at its start and 1 at its end. */
    double share(double value) {
        return logarithmic ? Math.log(value / low) / Math.log(high / low) : (value - low) / (high - low);
    }

    /** Both ends, 1 where it is logarithmic, and the unit: for scripts that draw on a picture. */
    String ends() {
        return low + " " + high + (logarithmic ? " 1" : " 0")
                + (title.matches(".*, (?:MPa|mm|mm/s)") ? title.substring(title.lastIndexOf(' ')) : "");
    }

    boolean holds(double value) {
        return value >= low && value <= high;
    }

    /** Ticks, such that labels are at least {@code apart} of the axis' length apart. */
    List<Tick> ticks(double apart) {
        if (!logarithmic) {
            return even(apart, false);
        }
        Set<Integer> labelled = new TreeSet<>();
        for (int tenths : BY_WORTH) {
            labelled.add(tenths);
            if (!clear(decades(labelled), apart)) {
                labelled.remove(tenths);
            }
        }
        List<Tick> ticks = decades(labelled);
        long labels = ticks.stream().filter(tick -> !tick.label().isEmpty()).count();
        return labels >= 3 ? ticks : even(apart, true);
    }

    private List<Tick> decades(Set<Integer> labelled) {
        List<Tick> ticks = new ArrayList<>();
        for (int exponent = (int) Math.floor(Math.log10(low)) - 1;
                exponent <= Math.ceil(Math.log10(high));
                exponent++) {
            for (int tenths = 10; tenths < 100; tenths += tenths < 50 && high / low < NARROW ? 5 : 10) {
                double value = BigDecimal.valueOf(tenths)
                        .scaleByPowerOfTen(exponent - 1)
                        .doubleValue();
                if (holds(value)) {
                    boolean named = labelled.contains(tenths);
                    ticks.add(new Tick(value, named ? plain(value) : "", tenths == 10));
                }
            }
        }
        return ticks;
    }

    private boolean clear(List<Tick> ticks, double apart) {
        double last = Double.NEGATIVE_INFINITY;
        for (Tick tick : ticks) {
            if (!tick.label().isEmpty()) {
                if (share(tick.value()) - last < apart) {
                    return false;
                }
                last = share(tick.value());
            }
        }
        return true;
    }

    private List<Tick> even(double apart, boolean strongOnlyDecades) {
        double wanted = (high - low) * Math.max(apart, 1e-3);
        BigDecimal decade = BigDecimal.ONE.scaleByPowerOfTen((int) Math.floor(Math.log10(wanted)));
        for (int times : new int[] {1, 2, 5, 10, 20, 50, 100}) {
            BigDecimal step = decade.multiply(BigDecimal.valueOf(times));
            List<Tick> ticks = new ArrayList<>();
            long first = (long) Math.ceil(low / step.doubleValue() - 1e-9);
            for (long k = first; k * step.doubleValue() <= high * (1 + 1e-12); k++) {
                BigDecimal value = step.multiply(BigDecimal.valueOf(k));
                // as many decimals as the step has, so that the labels of one axis look alike
                String label = value.setScale(
                                Math.max(0, step.stripTrailingZeros().scale()), RoundingMode.HALF_EVEN)
                        .toPlainString();
                ticks.add(new Tick(value.doubleValue(), minus(label), !strongOnlyDecades));
            }
            if (clear(ticks, apart)) {
                return ticks;
            }
        }
        return List.of();
    }

    /** The shortest decimal of a tick, with a true minus sign. */
    static String plain(double value) {
        BigDecimal shortest = new BigDecimal(value, new MathContext(6)).stripTrailingZeros();
        return minus(shortest.scale() < 0 ? shortest.setScale(0).toPlainString() : shortest.toPlainString());
    }

    private static String minus(String text) {
        return text.startsWith("-") ? "\u2212" + text.substring(1) : text;
    }
}
