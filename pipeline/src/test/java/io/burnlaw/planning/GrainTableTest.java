package io.burnlaw.planning;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.grain.Bates;
import io.burnlaw.quantity.Measured;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is read from the table of grains is what the planner gives for each of them. */
class GrainTableTest {

    static Stream<PlanBasis> motors() {
        var points = PlannedMotors.points(8, 1e6, 3e6, 0.4, 0.03, new SplittableRandom(5));
        return Stream.of(
                PlannedMotors.basis(points, PlannedMotors.hardware(7.5e6)),
                PlannedMotors.basis(points, new Hardware(OptionalDouble.empty(), 1)),
                PlannedMotors.slowRegime(new SplittableRandom(9)).basis(),
                PlannedMotors.basis(
                        PlannedMotors.points(8, 1e6, 3e6, 0.1, 0.03, new SplittableRandom(6)),
                        PlannedMotors.hardware(7.5e6)),
                PlannedMotors.basis(
                        PlannedMotors.points(20, 1e6, 3e6, 0.55, 0.01, new SplittableRandom(7)),
                        PlannedMotors.hardware(7.5e6)));
    }

    @ParameterizedTest
    @MethodSource("motors")
    void twoThousandGrainsAreThoseOfThePlanner(PlanBasis basis) {
        PlanOptions options = PlanOptions.defaults();
        GrainTable table = Planner.anyGrain(basis, options).orElseThrow();
        SplittableRandom random = new SplittableRandom(20261201);
        List<Double> figures = new ArrayList<>();
        List<Double> ends = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            GrainTable.Shapes shapes = table.shapes();
            double core = random.nextDouble(shapes.thinCore(), shapes.wideCore());
            double length = random.nextDouble(shapes.shortest(), shapes.longest());
            double outer = table.smallest() * Math.pow(table.largest() / table.smallest(), random.nextDouble());
            Bates grain = new Bates(
                    1 + random.nextInt(6),
                    Measured.of(outer),
                    Measured.of(core * outer),
                    Measured.of(length * (1 - core) * outer));
            double most = most(grain);
            double ln = random.nextDouble(table.ratios().get(0), table.ratios().get(2));
            double throat = 2 * Math.sqrt(most / Math.exp(ln) / Math.PI);
            Motor motor = new Motor(
                    grain,
                    basis.motor().density(),
                    basis.motor().gas(),
                    new Nozzle(throat),
                    Motor.freeVolume(grain, Double.NaN),
                    basis.motor().ambientPressure());
            PlannedThroat planned = Planner.throat(basis.withMotor(motor, "typed"), options, throat)
                    .match(found -> found.throat(), none -> null);
            assertThat(planned).as("%s, throat %s m", grain, throat).isNotNull();
            double time = planned.burnTime().orElseThrow();
            if (time < GrainTable.SHORTEST) {
                continue;
            }
            double area = Math.PI / 4 * throat * throat;
            double before = ln + Math.log(grain.surface(0) / most);
            double start = f(table, table.start(), core, length, ln);
            double mean = f(table, table.mean(), core, length, ln);
            double max = f(table, table.max(), core, length, ln);
            double middle = pressure(table, GrainTable.Steady::ratio, before + mean);
            figures.add(middle / planned.meanPressure().value() - 1);
            ends.add(pressure(table, GrainTable.Steady::low, before + mean)
                            / planned.meanPressure().low()
                    - 1);
            ends.add(pressure(table, GrainTable.Steady::high, before + mean)
                            / planned.meanPressure().high()
                    - 1);
            figures.add(Math.max(
                                    pressure(table, GrainTable.Steady::ratio, ln + max),
                                    pressure(table, GrainTable.Steady::ratio, ln + start)
                                            + basis.ignition().mean() / area)
                            / planned.maxPressure().value()
                    - 1);
            ends.add(Math.max(
                                    pressure(table, GrainTable.Steady::high, ln + max),
                                    pressure(table, GrainTable.Steady::high, ln + start)
                                            + basis.ignition().high(options.level()) / area)
                            / planned.maxPressure().high()
                    - 1);
            double rate = rate(table, middle);
            figures.add(grain.burnout() / rate * Math.exp(f(table, table.time(), core, length, ln)) / time - 1);
        }
        assertThat(figures).hasSizeGreaterThan(1000).allMatch(each -> Math.abs(each) < GrainTable.WITHIN);
        assertThat(ends).allMatch(each -> Math.abs(each) < GrainTable.ENDS_WITHIN);
    }

    @Test
    void aLawTooSteepForOneTableHasNone() {
        var points = PlannedMotors.points(30, 1e6, 3e6, 0.85, 0.005, new SplittableRandom(5));
        PlanBasis basis = PlannedMotors.basis(points, PlannedMotors.hardware(7.5e6));
        assertThat(Planner.anyGrain(basis, PlanOptions.defaults())).isEmpty();
    }

    private static double most(Bates grain) {
        double most = 0;
        for (int i = 0; i <= 1000; i++) {
            most = Math.max(most, grain.surface(grain.burnout() * (1 - 1e-12) * i / 1000));
        }
        return most;
    }

    private static double f(GrainTable table, List<Double> values, double core, double length, double lnRatio) {
        List<Double> cores = table.shapes().cores();
        List<Double> lengths = table.shapes().lengths();
        double sum = 0;
        int place = 0;
        for (int i = 0; i < cores.size(); i++) {
            for (int j = 0; j < lengths.size(); j++) {
                for (int k = 0; k < table.ratios().size(); k++) {
                    sum += values.get(place++)
                            * weight(cores, i, core)
                            * weight(lengths, j, Math.log(length))
                            * weight(table.ratios(), k, lnRatio);
                }
            }
        }
        return sum;
    }

    private static double weight(List<Double> nodes, int own, double at) {
        double weight = 1;
        for (int i = 0; i < nodes.size(); i++) {
            weight *= i == own ? 1 : (at - nodes.get(i)) / (nodes.get(own) - nodes.get(i));
        }
        return weight;
    }

    private static double rate(GrainTable table, double pressure) {
        List<GrainTable.Steady> rows = table.steady();
        int above = 1;
        while (above < rows.size() - 1 && rows.get(above).pressure() < pressure) {
            above++;
        }
        GrainTable.Steady low = rows.get(above - 1);
        GrainTable.Steady high = rows.get(above);
        return low.rate()
                * Math.pow(
                        high.rate() / low.rate(),
                        Math.log(pressure / low.pressure()) / Math.log(high.pressure() / low.pressure()));
    }

    private static double pressure(GrainTable table, ToDoubleFunction<GrainTable.Steady> ratio, double lnRatio) {
        List<GrainTable.Steady> rows = table.steady();
        int above = 1;
        while (above < rows.size() - 1 && Math.log(ratio.applyAsDouble(rows.get(above))) < lnRatio) {
            above++;
        }
        double low = Math.log(ratio.applyAsDouble(rows.get(above - 1)));
        double high = Math.log(ratio.applyAsDouble(rows.get(above)));
        double share = (lnRatio - low) / (high - low);
        return rows.get(above - 1).pressure()
                * Math.pow(rows.get(above).pressure() / rows.get(above - 1).pressure(), share);
    }
}
