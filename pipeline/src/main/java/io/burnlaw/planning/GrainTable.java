package io.burnlaw.planning;

import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.grain.Bates;
import io.burnlaw.prediction.Prediction;
import io.burnlaw.quantity.Measured;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;

/**
 * What equal hollow segments of any size would do that burn at their cores and at both of their ends.
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

    /** What the check may find: it tries some grains, not all [1]. */
    private static final double FOUND = 0.006;

    private static final int CHECKED = 40;

    private static final int SHAPES = 5;
    private static final int RATIOS = 3;
    private static final int STEPS = 14;

    /** From the widest on: those that are not well predicted give way to the next. */
    private static final List<Shapes> TRIED = List.of(new Shapes(0.25, 0.6, 1.5, 4), new Shapes(0.3, 0.55, 1.6, 3));

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

    /** Grains and rates of one plan. */
    private record Fired(PlanBasis basis, RateBand band, double outer) {

        double ratio(DoubleUnaryOperator rate, double pressure) {
            Motor motor = basis.motor();
            return Nozzle.massFlow(pressure, motor.ambientPressure(), 1, motor.gas())
                    / (rate.applyAsDouble(pressure)
                            * (motor.density() - motor.gas().density(pressure)));
        }

        Optional<Figures> at(double core, double length, double ratio, double size, int segments) {
            Bates grain = new Bates(
                    segments, Measured.of(size), Measured.of(core * size), Measured.of(length * (1 - core) * size));
            Gas gas = basis.motor().gas();
            Motor motor = new Motor(
                    grain,
                    basis.motor().density(),
                    gas,
                    new Nozzle(2 * Math.sqrt(most(grain) / ratio / Math.PI)),
                    Motor.freeVolume(grain, Double.NaN),
                    basis.motor().ambientPressure());
            return Prediction.of(motor, band.middle())
                    .map(fired -> new Figures(
                            fired.settledPressure(motor),
                            fired.meanPressure(),
                            fired.maxPressure(),
                            fired.burnTime(),
                            grain.surface(0) / most(grain),
                            grain.burnout()));
        }

        /** The surface is a parabola over the web. */
        private static double most(Bates grain) {
            double outer = grain.segment().outerDiameter().value();
            double core = grain.segment().coreDiameter().value();
            double at = (grain.segment().length().value() - 2 * core) / 6;
            return grain.surface(Math.max(0, Math.min((outer - core) / 2 * (1 - 1e-12), at)));
        }
    }

    private record Figures(double start, double mean, double max, double time, double newSurface, double web) {}

    /**
     * Makes the table.
     *
     * @param basis  what the plan rests on
     * @param lowest mean pressure that may be planned [Pa, absolute]
     * @param limit  of the peak [Pa, absolute]
     * @return the table; empty where it would not be within its tolerance
     */
    static Optional<GrainTable> of(PlanBasis basis, RateBand band, double lowest, double limit) {
        // half of the outer diameter is wall, about as in the grain that was fired
        Fired fired = new Fired(basis, band, 4 * basis.motor().grain().burnout());
        List<Steady> steady = new ArrayList<>();
        double from = Math.max(lowest / 3, 1.3 * basis.motor().ambientPressure());
        for (int i = 0; i <= STEPS; i++) {
            double pressure = from * StrictMath.pow(2 * limit / from, (double) i / STEPS);
            steady.add(new Steady(
                    pressure,
                    fired.ratio(band.middle(), pressure),
                    fired.ratio(band.low(), pressure),
                    fired.ratio(band.high(), pressure),
                    band.middle().applyAsDouble(pressure)));
        }
        for (int i = 1; i <= STEPS; i++) {
            Steady below = steady.get(i - 1);
            Steady above = steady.get(i);
            if (!(above.ratio() > below.ratio() && above.low() > below.low() && above.high() > below.high())) {
                return Optional.empty();
            }
        }
        List<Double> ratios = nodes(
                StrictMath.log(fired.ratio(band.middle(), lowest)),
                StrictMath.log(fired.ratio(band.middle(), limit)),
                RATIOS);
        return TRIED.stream()
                .flatMap(shapes -> of(fired, shapes, ratios, steady).stream())
                .findFirst();
    }

    private static Optional<GrainTable> of(Fired fired, Shapes shapes, List<Double> ratios, List<Steady> steady) {
        List<List<Double>> f = List.of(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        DoubleUnaryOperator rate = fired.band().middle();
        for (double core : shapes.cores()) {
            for (double length : shapes.lengths()) {
                for (double ln : ratios) {
                    double ratio = StrictMath.exp(ln);
                    Optional<Figures> found = fired.at(core, StrictMath.exp(length), ratio, fired.outer(), 2);
                    if (found.isEmpty()) {
                        return Optional.empty();
                    }
                    Figures figures = found.orElseThrow();
                    f.get(0).add(StrictMath.log(fired.ratio(rate, figures.start()) / ratio));
                    f.get(1).add(StrictMath.log(fired.ratio(rate, figures.mean()) / (ratio * figures.newSurface())));
                    f.get(2).add(StrictMath.log(fired.ratio(rate, figures.max()) / ratio));
                    f.get(3).add(StrictMath.log(figures.time() * rate.applyAsDouble(figures.mean()) / figures.web()));
                }
            }
        }
        GrainTable table = new GrainTable(
                shapes,
                ratios,
                f.get(0),
                f.get(1),
                f.get(2),
                f.get(3),
                steady,
                fired.outer() / SIZES,
                SIZES * fired.outer());
        return Optional.of(table).filter(made -> made.holds(fired));
    }

    /** Tries grains that are no nodes of the table. */
    private boolean holds(Fired fired) {
        SplittableRandom random = new SplittableRandom(20261130);
        for (int i = 0; i < CHECKED; i++) {
            double core = random.nextDouble(shapes.thinCore(), shapes.wideCore());
            double length = StrictMath.exp(
                    random.nextDouble(StrictMath.log(shapes.shortest()), StrictMath.log(shapes.longest())));
            double ratio = StrictMath.exp(random.nextDouble(ratios.get(0), ratios.get(RATIOS - 1)));
            double size = fired.outer() * StrictMath.pow(SIZES, random.nextDouble(-1, 1));
            Optional<Figures> found = fired.at(core, length, ratio, size, random.nextInt(1, 7));
            if (found.isEmpty()) {
                return false;
            }
            Figures figures = found.orElseThrow();
            if (figures.time() < SHORTEST) {
                continue;
            }
            double lnRatio = StrictMath.log(ratio);
            double read = pressure(lnRatio + StrictMath.log(figures.newSurface()) + at(mean, core, length, lnRatio));
            double time = figures.web() / rate(read) * StrictMath.exp(at(this.time, core, length, lnRatio));
            if (off(read, figures.mean())
                    || off(pressure(lnRatio + at(max, core, length, lnRatio)), figures.max())
                    || off(time, figures.time())) {
                return false;
            }
        }
        return true;
    }

    private static boolean off(double read, double found) {
        return !(Math.abs(read / found - 1) <= FOUND);
    }

    private double at(List<Double> f, double core, double length, double lnRatio) {
        double[] byCore = weights(shapes.cores(), core);
        double[] byLength = weights(shapes.lengths(), StrictMath.log(length));
        double[] byRatio = weights(ratios, lnRatio);
        double sum = 0;
        for (int i = 0; i < f.size(); i++) {
            sum += f.get(i) * byCore[i / RATIOS / SHAPES] * byLength[i / RATIOS % SHAPES] * byRatio[i % RATIOS];
        }
        return sum;
    }

    private double pressure(double lnRatio) {
        int above = 1;
        while (above < STEPS && StrictMath.log(steady.get(above).ratio()) < lnRatio) {
            above++;
        }
        Steady low = steady.get(above - 1);
        Steady high = steady.get(above);
        double share = (lnRatio - StrictMath.log(low.ratio())) / StrictMath.log(high.ratio() / low.ratio());
        return low.pressure() * StrictMath.pow(high.pressure() / low.pressure(), share);
    }

    private double rate(double pressure) {
        int above = 1;
        while (above < STEPS && steady.get(above).pressure() < pressure) {
            above++;
        }
        Steady low = steady.get(above - 1);
        Steady high = steady.get(above);
        double share = StrictMath.log(pressure / low.pressure()) / StrictMath.log(high.pressure() / low.pressure());
        return low.rate() * StrictMath.pow(high.rate() / low.rate(), share);
    }

    private static List<Double> nodes(double from, double to, int count) {
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
