package io.burnlaw.planning;

import java.util.Arrays;
import java.util.List;

/**
 * Predictions for equal hollow segments of any size that burn at their cores and at both ends.
 *
 * <pre>
 * K(P)  = m(P) / ( r(P) (rho - P / (Gamma c*)^2) )    surface over throat that holds P steady      [1]
 * K0    = S(0) / At,  Kmax = max S / At               of the grain, by its dimensions              [1]
 * mean  : K(mean) = K0 e^f,   f(core/outer, length/(outer - core), Kmax) of the table
 * start, highest: K = Kmax e^f
 * time  = web / r(mean) e^f                                                                        [s]
 * </pre>
 *
 * <p>The f come from the forward simulation of whole burns at a few shapes and pressures; between these they are read by
 * Lagrange's polynomial along each of the three axes, whose nodes are those of Chebyshev, drawn out to the ends. Neither
 * the count of segments nor the size is an axis: at one K a larger motor burns longer and at the same pressures, but for
 * the first hundredths of a second. The lower and the upper prediction have a K(P) of their own, and the same f.
 *
 * <p><b>Valid</b> within {@link #WITHIN} of the simulation, which is checked at other shapes, sizes and pressures before
 * a table is given; where one law bends or jumps, or its exponent is high, the shapes are fewer, or there is no table.
 *
 * <p><b>Source.</b> Similarity of the lumped chamber; derived.
 *
 * @param ratios   nodes of ln Kmax
 * @param start    f of the pressure at which the ignition is over; core first, then length, then Kmax
 * @param mean     f of the mean pressure
 * @param max      f of the highest pressure of the burn, without the ignition
 * @param time     f of the burn time
 * @param steady   K(P), rising
 * @param smallest outer diameter [m]
 * @param largest  outer diameter [m]
 */
public record GrainTable(
        Shapes shapes,
        List<Double> ratios,
        List<Double> start,
        List<Double> mean,
        List<Double> max,
        List<Double> time,
        List<Steady> steady,
        double smallest,
        double largest) {

    /** Of the simulation, in mean and highest pressure and burn time [1]. */
    public static final double WITHIN = 0.01;

    /** Of the ends of a prediction: a band that widens has another exponent than its middle, and a small throat is less sure [1]. */
    public static final double ENDS_WITHIN = 0.04;

    /** A burn so short is not in it: the time that ignition takes does not shrink with the motor [s]. */
    public static final double SHORTEST = 0.5;

    /** Larger or smaller than the grain fired last by this factor [1]. */
    public static final double SIZES = 3;

    private static final int SHAPES = 5;
    static final int RATIOS = 3;

    /**
     * Grains of the table.
     *
     * @param thinCore  least core over outer diameter [1]
     * @param wideCore  greatest
     * @param shortest  least length of a segment over the difference of the diameters [1]; above 1, so that the wall burns
     *                  through first
     * @param longest   greatest
     */
    public record Shapes(double thinCore, double wideCore, double shortest, double longest) {

        /** {@return nodes of core over outer diameter} */
        public List<Double> cores() {
            return nodes(thinCore, wideCore, SHAPES);
        }

        /** {@return nodes of the logarithm of the length over the difference of the diameters} */
        public List<Double> lengths() {
            return nodes(StrictMath.log(shortest), StrictMath.log(longest), SHAPES);
        }
    }

    /**
     * What holds a pressure.
     *
     * @param pressure [Pa, absolute]
     * @param ratio    burning surface over throat area by the middle of the prediction [1]
     * @param low      by its lower end
     * @param high     by its upper end
     * @param rate     by the middle [m/s]
     */
    public record Steady(double pressure, double ratio, double low, double high, double rate) {}

    public GrainTable {
        ratios = List.copyOf(ratios);
        start = List.copyOf(start);
        mean = List.copyOf(mean);
        max = List.copyOf(max);
        time = List.copyOf(time);
        steady = List.copyOf(steady);
    }

    double at(List<Double> f, double core, double length, double lnRatio) {
        double[] byCore = weights(shapes.cores(), core);
        double[] byLength = weights(shapes.lengths(), StrictMath.log(length));
        double[] byRatio = weights(ratios, lnRatio);
        double sum = 0;
        for (int i = 0; i < f.size(); i++) {
            sum += f.get(i) * byCore[i / RATIOS / SHAPES] * byLength[i / RATIOS % SHAPES] * byRatio[i % RATIOS];
        }
        return sum;
    }

    double pressure(double lnRatio) {
        int above = 1;
        while (above < steady.size() - 1 && StrictMath.log(steady.get(above).ratio()) < lnRatio) {
            above++;
        }
        Steady low = steady.get(above - 1);
        Steady high = steady.get(above);
        double share = (lnRatio - StrictMath.log(low.ratio())) / StrictMath.log(high.ratio() / low.ratio());
        return low.pressure() * StrictMath.pow(high.pressure() / low.pressure(), share);
    }

    double rate(double pressure) {
        int above = 1;
        while (above < steady.size() - 1 && steady.get(above).pressure() < pressure) {
            above++;
        }
        Steady low = steady.get(above - 1);
        Steady high = steady.get(above);
        double share = StrictMath.log(pressure / low.pressure()) / StrictMath.log(high.pressure() / low.pressure());
        return low.rate() * StrictMath.pow(high.rate() / low.rate(), share);
    }

    static List<Double> nodes(double from, double to, int count) {
        double end = StrictMath.cos(Math.PI / 2 / count);
        double[] nodes = new double[count];
        for (int i = 0; i < count; i++) {
            nodes[i] = (from + to) / 2 - (to - from) / 2 * StrictMath.cos(Math.PI * (i + 0.5) / count) / end;
        }
        return Arrays.stream(nodes).boxed().toList();
    }

    private static double[] weights(List<Double> nodes, double at) {
        double[] weights = new double[nodes.size()];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = 1;
            for (int k = 0; k < weights.length; k++) {
                weights[i] *= i == k ? 1 : (at - nodes.get(k)) / (nodes.get(i) - nodes.get(k));
            }
        }
        return weights;
    }
}
