package io.burnlaw.planning;

import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.grain.Bates;
import io.burnlaw.planning.GrainTable.Shapes;
import io.burnlaw.planning.GrainTable.Steady;
import io.burnlaw.prediction.Prediction;
import io.burnlaw.quantity.Measured;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;

/** Makes the table of what other grains would do, by simulated burns, and checks it at other grains. */
final class GrainTables {

    /** What the check may find: it tries some grains, not all [1]. */
    private static final double FOUND = 0.006;

    private static final int CHECKED = 40;

    private static final int STEPS = 14;

    /** From the widest on: those that are not well predicted give way to the next. */
    private static final List<Shapes> TRIED = List.of(new Shapes(0.25, 0.6, 1.5, 4), new Shapes(0.3, 0.55, 1.6, 3));

    private GrainTables() {}

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
        List<Double> ratios = GrainTable.nodes(
                StrictMath.log(fired.ratio(band.middle(), lowest)),
                StrictMath.log(fired.ratio(band.middle(), limit)),
                GrainTable.RATIOS);
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
                fired.outer() / GrainTable.SIZES,
                GrainTable.SIZES * fired.outer());
        return Optional.of(table).filter(made -> holds(made, fired));
    }

    /** Tries grains that are no nodes of the table. */
    private static boolean holds(GrainTable table, Fired fired) {
        SplittableRandom random = new SplittableRandom(20261130);
        for (int i = 0; i < CHECKED; i++) {
            double core =
                    random.nextDouble(table.shapes().thinCore(), table.shapes().wideCore());
            double length = StrictMath.exp(random.nextDouble(
                    StrictMath.log(table.shapes().shortest()),
                    StrictMath.log(table.shapes().longest())));
            double ratio = StrictMath.exp(
                    random.nextDouble(table.ratios().get(0), table.ratios().get(GrainTable.RATIOS - 1)));
            double size = fired.outer() * StrictMath.pow(GrainTable.SIZES, random.nextDouble(-1, 1));
            Optional<Figures> found = fired.at(core, length, ratio, size, random.nextInt(1, 7));
            if (found.isEmpty()) {
                return false;
            }
            Figures figures = found.orElseThrow();
            if (figures.time() < GrainTable.SHORTEST) {
                continue;
            }
            double lnRatio = StrictMath.log(ratio);
            double read = table.pressure(
                    lnRatio + StrictMath.log(figures.newSurface()) + table.at(table.mean(), core, length, lnRatio));
            double time =
                    figures.web() / table.rate(read) * StrictMath.exp(table.at(table.time(), core, length, lnRatio));
            if (off(read, figures.mean())
                    || off(table.pressure(lnRatio + table.at(table.max(), core, length, lnRatio)), figures.max())
                    || off(time, figures.time())) {
                return false;
            }
        }
        return true;
    }

    private static boolean off(double read, double found) {
        return !(Math.abs(read / found - 1) <= FOUND);
    }
}
