package io.burnlaw.ratelaw;

import io.burnlaw.campaign.PressureErrors;
import io.burnlaw.campaign.Weighting;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * How long fits take, on one thread: warmed up, then the median and the range of rounds. Not a test; times do not decide
 * whether a build passes.
 */
public final class RefitBenchmark {

    private static final int WARM_UP = 15;
    private static final int ROUNDS = 25;
    private static final int REPLICATES = 10_000;

    private RefitBenchmark() {}

    /**
     * Prints the figures.
     *
     * @param arguments none
     */
    public static void main(String[] arguments) {
        List<FitPoint> points = Campaigns.spread(20, 0.03, new SplittableRandom(1));
        for (Weighting weighting : List.of(Weighting.PROPORTIONAL, Weighting.CONSTANT)) {
            WeightedSolution solution = (WeightedSolution) WeightedFit.fit(points, weighting, PressureErrors.NONE);
            Resampling resampling = new Resampling(solution, points);
            time(
                    REPLICATES + " bootstrap refits of 20 points, " + weighting,
                    () -> resampling.replicates(REPLICATES, 1).length);
            FitOptions options = FitOptions.defaults().with(weighting);
            time(
                    "one law with " + REPLICATES + " replicates, " + weighting,
                    () -> RateLawFit.fit(points, options.withBootstrap(REPLICATES, 1))
                            .hashCode());
            time(
                    "1000 laws without bootstrap, " + weighting,
                    () -> repeat(() ->
                            RateLawFit.fit(points, options.withBootstrap(0, 1)).hashCode()));
            time(
                    "1000 plain weighted fits, " + weighting,
                    () -> repeat(() -> WeightedFit.fit(points, weighting, PressureErrors.NONE)
                            .hashCode()));
        }
        List<FitPoint> uncertain = points.stream()
                .map(p -> new FitPoint(p.id(), p.cluster(), p.pressure(), 3e4, p.rate(), 0, 0))
                .toList();
        for (PressureErrors errors : PressureErrors.values()) {
            time(
                    "1000 fits, " + errors,
                    () -> repeat(() -> WeightedFit.fit(uncertain, Weighting.PROPORTIONAL, errors)
                            .hashCode()));
        }
    }

    private interface Work {
        int run();
    }

    private static int repeat(Work work) {
        int sum = 0;
        for (int i = 0; i < 1000; i++) {
            sum += work.run();
        }
        return sum;
    }

    private static void time(String what, Work work) {
        double[] milliseconds = new double[ROUNDS];
        int kept = 0;
        for (int round = -WARM_UP; round < ROUNDS; round++) {
            long start = System.nanoTime();
            kept += work.run();
            if (round >= 0) {
                milliseconds[round] = (System.nanoTime() - start) / 1e6;
            }
        }
        Arrays.sort(milliseconds);
        System.out.println(String.format(
                Locale.ROOT,
                "%-60s median %9.2f ms, %.2f to %.2f (%08x)",
                what,
                milliseconds[ROUNDS / 2],
                milliseconds[0],
                milliseconds[ROUNDS - 1],
                kept));
    }
}
