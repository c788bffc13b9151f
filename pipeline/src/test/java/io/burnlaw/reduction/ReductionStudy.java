package io.burnlaw.reduction;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.burnlaw.ballistics.Fault;
import io.burnlaw.ballistics.RecordFaults;
import io.burnlaw.campaign.Campaign.ReductionSettings;
import io.burnlaw.campaign.Campaign.ReductionSettings.BurnoutEvent;
import io.burnlaw.campaign.Campaign.ReductionSettings.Method;
import io.burnlaw.grain.Bates;
import io.burnlaw.grain.Grain;
import io.burnlaw.grain.Tube;
import io.burnlaw.quantity.Measured;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.validation.StudyReport;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** How near the reduced rates of simulated firings come to the law that they were simulated with. */
class ReductionStudy {

    private static final int FIRINGS = 400;

    /** Of each diameter read with the calipers [m]; gives a web of 0.02 mm, of the size that is assumed. */
    private static final double CALIPER_STD = 0.028e-3;

    private record Errors(String name, double[] error, int covered, int refused, double unevenTold) {

        double quantile(double share) {
            double[] sorted = Arrays.stream(error).map(Math::abs).sorted().toArray();
            return sorted[(int) Math.min(sorted.length - 1.0, share * sorted.length)];
        }

        double bias() {
            double[] sorted = Arrays.stream(error).sorted().toArray();
            return sorted[sorted.length / 2];
        }

        double coverage() {
            return covered / (double) error.length;
        }

        String row() {
            return String.format(
                    Locale.ROOT,
                    "| %s | %d | %d | %+.3f %% | %.3f %% | %.2f %% | %.2f %% | %.1f %% | %.1f %% |%n",
                    name,
                    error.length,
                    refused,
                    100 * bias(),
                    100 * quantile(0.5),
                    100 * quantile(0.95),
                    100 * quantile(0.9999),
                    100 * coverage(),
                    100 * unevenTold);
        }
    }

    private static Errors run(
            String name,
            Method method,
            BurnoutEvent event,
            double offset,
            boolean calipers,
            boolean faults,
            long seed) {
        List<Double> errors = new ArrayList<>();
        int covered = 0;
        int refused = 0;
        int uneven = 0;
        for (int i = 0; i < FIRINGS; i++) {
            SplittableRandom random = new SplittableRandom(seed + i);
            double exponent = 0.1 + 0.5 * random.nextDouble();
            DoubleUnaryOperator law =
                    FiringBench.law((4 + 5 * random.nextDouble()) * Math.pow(3, 0.35 - exponent), exponent);
            FiringBench.Case that = motor(random, offset, calipers, faults);
            var fired = FiringBench.fire(that, law, seed * 31 + i);
            if (faults) {
                double top = fired.truth().maximumPressure();
                Fault fault = RecordFaults.drift(0.01 * top * (2 * random.nextDouble() - 1))
                        .then(RecordFaults.hum(0.01 * top * random.nextDouble(), random.nextBoolean() ? 50 : 60))
                        .then(RecordFaults.spikes(random.nextInt(6), 0.3 * top));
                fired = new FiringBench.Fired(
                        fired.firing(), fault.apply(fired.trace(), random), fired.measured(), fired.truth());
            }
            Reduction reduction = fired.reduce(new ReductionSettings(method, event, 0.10, 0.10));
            if (reduction instanceof Reduction.Reduced reduced) {
                RatePoint point = reduced.points().get(0);
                double error = FiringBench.error(reduced, law, exponent);
                errors.add(error);
                covered += Math.abs(error) <= 1.96 * point.rateStd() / point.rate() ? 1 : 0;
                uneven += reduced.findings().stream()
                                .anyMatch(f -> f.code().code().equals("uneven-web"))
                        ? 1
                        : 0;
            } else {
                refused++;
            }
        }
        double[] all = errors.stream().mapToDouble(x -> x).toArray();
        return new Errors(name, all, covered, refused, uneven / (double) Math.max(1, all.length));
    }

    private static FiringBench.Case motor(SplittableRandom random, double offset, boolean calipers, boolean faults) {
        double core = (12 + 6 * random.nextDouble()) * 1e-3;
        double outer = core + 24e-3;
        double outerRead = outer + (calipers ? CALIPER_STD * random.nextGaussian() : 0);
        double coreRead = core + (calipers ? CALIPER_STD * random.nextGaussian() : 0);
        Grain burns;
        Grain read;
        if (random.nextInt(4) > 0) {
            int segments = 1 + random.nextInt(4);
            double length = (50 + 20 * random.nextDouble()) * 1e-3;
            burns = new Bates(segments, Measured.of(outer), Measured.of(core), Measured.of(length))
                    .withCoreOffset(offset);
            read = new Bates(segments, Measured.of(outerRead), Measured.of(coreRead), Measured.of(length));
        } else {
            double length = (60 + 120 * random.nextDouble()) * 1e-3;
            burns = new Tube(Measured.of(outer), Measured.of(core), Measured.of(length), 0).withCoreOffset(offset);
            read = new Tube(Measured.of(outerRead), Measured.of(coreRead), Measured.of(length), 0);
        }
        double kn = 120 + 200 * random.nextDouble();
        double throat = Math.sqrt(burns.surface(0.4 * burns.web().value()) / kn * 4 / Math.PI);
        FiringBench.Case that =
                FiringBench.Case.of(burns, read, throat).noise(faults ? 0.02 * random.nextDouble() : 0.002);
        // The case is not as large as the usual one around the grain.
        that = that.freeVolume(that.freeVolume() * (0.9 + 0.3 * random.nextDouble()));
        return faults ? that.eroding(throat * (1 + 0.05 * random.nextDouble())) : that;
    }

    @Test
    void ratesComeBackWithinTheirTargets() {
        List<Errors> clean = new ArrayList<>();
        for (double offset : new double[] {0, 0.1e-3, 0.3e-3, 0.5e-3}) {
            String of = String.format(Locale.ROOT, "%.1f mm", offset * 1e3);
            clean.add(run(
                    "mass balance, core off by " + of,
                    Method.MASS_BALANCE,
                    BurnoutEvent.MEAN_WEB,
                    offset,
                    false,
                    false,
                    1000));
            clean.add(run(
                    "thickness/time, mean web, " + of,
                    Method.THICKNESS_TIME,
                    BurnoutEvent.MEAN_WEB,
                    offset,
                    false,
                    false,
                    1000));
            clean.add(run(
                    "thickness/time, plain bisector, " + of,
                    Method.THICKNESS_TIME,
                    BurnoutEvent.TANGENT_BISECTOR,
                    offset,
                    false,
                    false,
                    1000));
        }
        Errors measured = run(
                "mass balance, 0.3 mm, calipers",
                Method.MASS_BALANCE,
                BurnoutEvent.MEAN_WEB,
                0.3e-3,
                true,
                false,
                2000);
        Errors faulty = run(
                "mass balance, 0.3 mm, calipers and faults",
                Method.MASS_BALANCE,
                BurnoutEvent.MEAN_WEB,
                0.3e-3,
                true,
                true,
                3000);
        StringBuilder text = new StringBuilder("## Rates of simulated firings\n\n");
        text.append(FIRINGS)
                .append(
                        " motors a row, drawn at random: one to four segments or a tube, web 12 mm, n 0.1 to 0.6, K_n 120 to"
                                + " 320, a chamber 10 % smaller to 20 % larger in free volume than is assumed; noise 0.2 % of the"
                                + " highest pressure. The rate is compared with the law at the point's own rate-averaged pressure."
                                + " *Calipers*: each diameter read with a standard deviation of 0.028 mm. *Faults*: noise up to 2 %,"
                                + " hum up to 1 %, drift up to 1 %, up to 5 spikes, a throat that grew by up to 5 % and was"
                                + " measured after. Covered: truth within 1.96 of the point's own standard uncertainty.\n\n");
        text.append(
                "| case | reduced | refused | median of the error | median size | 95 % | worst | covered | uneven web told |\n");
        text.append("| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n");
        clean.forEach(row -> text.append(row.row()));
        text.append(measured.row()).append(faulty.row());
        StudyReport.section(20, "rates-of-simulated-firings", text.toString());
        assertAll(
                () -> clean.stream()
                        .filter(row -> row.name().startsWith("mass balance"))
                        .forEach(row -> {
                            assertTrue(Math.abs(row.bias()) < 0.003, row.row());
                            assertTrue(row.quantile(0.5) < 0.005, row.row());
                            assertTrue(row.quantile(0.9999) < 0.015, row.row());
                        }),
                () -> assertTrue(faulty.quantile(0.5) < 0.005, faulty.row()),
                () -> assertTrue(faulty.quantile(0.9999) < 0.03, faulty.row()),
                () -> assertTrue(faulty.coverage() > 0.93, faulty.row()),
                () -> assertTrue(measured.coverage() > 0.93, measured.row()));
    }
}
