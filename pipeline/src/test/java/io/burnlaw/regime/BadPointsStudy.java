package io.burnlaw.regime;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.finding.FindingCode;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.regime.Thresholds.Threshold;
import io.burnlaw.validation.StudyReport;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Campaigns in which up to a quarter of the points is wrong: regimes that are none, and slow regimes that are missed. */
class BadPointsStudy {

    private static final int CAMPAIGNS = Integer.getInteger("burnlaw.badPoints.campaigns", 200);
    private static final double SCATTER = 0.01;

    /**
     * Points of a campaign at pressures drawn evenly in ln P.
     *
     * @param count  of points
     * @param bad    how many of them are off by 20 to 100 %, up or down by the same factor
     * @param slow   how many lie in a regime that burns at a quarter of the rate, below 1 MPa
     * @param seed   of everything
     */
    static List<FitPoint> points(int count, int bad, int slow, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<FitPoint> points = new ArrayList<>();
        double[] off = new double[count];
        for (int left = bad; left > 0; ) {
            int i = random.nextInt(count);
            if (off[i] == 0) {
                off[i] = Math.log1p(0.2 + 0.8 * random.nextDouble()) * (random.nextBoolean() ? 1 : -1);
                left--;
            }
        }
        for (int i = 0; i < count; i++) {
            boolean low = i < slow;
            double share = low ? (i + random.nextDouble()) / slow : (i - slow + random.nextDouble()) / (count - slow);
            double pressure = low ? 0.2e6 * Math.pow(4.5, share) : 1.15e6 * Math.pow(6, share);
            double rate = 5e-3 * (low ? 0.25 : 1) * Math.pow(pressure / 1e6, 0.36);
            points.add(Simulated.point("p" + i, pressure, rate * Math.exp(SCATTER * random.nextGaussian() + off[i])));
        }
        return points;
    }

    /** What is counted over campaigns of one kind. */
    private record Tally(int campaigns, int changed, int missed, int moreThanTwo, int thresholds, int covered) {

        static Tally of(int count, int bad, int slow) {
            int[] sums = new int[5];
            for (int seed = 1; seed <= CAMPAIGNS; seed++) {
                Regimes found = RegimeSearch.search(
                        points(count, bad, slow, 1000L * count + 31L * bad + seed),
                        Simulated.withReplicates(RegimeOptions.defaults(seed), 399));
                boolean told = found.findings().stream().anyMatch(each -> each.code() == FindingCode.SLOW_REGIME);
                sums[0] += told || found.selected() > 1 ? 1 : 0;
                sums[1] += told ? 0 : 1;
                sums[2] += found.selected() > 2 ? 1 : 0;
                Optional<Threshold> threshold = Thresholds.find(found, OptionalDouble.empty(), OptionalDouble.empty());
                sums[3] += threshold.isPresent() ? 1 : 0;
                sums[4] += threshold.map(Tally::holds).orElse(false) ? 1 : 0;
            }
            return new Tally(CAMPAIGNS, sums[0], sums[1], sums[2], sums[3], sums[4]);
        }

        private static boolean holds(Threshold threshold) {
            // the change lies between the highest slow pressure and the lowest fast one
            Interval.Estimated interval = threshold
                    .interval()
                    .estimated()
                    .orElse(new Interval.Estimated(
                            threshold.gapLow(), threshold.gapHigh(), 0.95, Interval.Method.PROFILE));
            return interval.low() <= 1e6 && 1e6 <= interval.high();
        }

        double share(int of) {
            return (double) of / campaigns;
        }
    }

    @Test
    void badPointsMakeNoRegimeAndHideNone() {
        StringBuilder text = new StringBuilder("""
                ## Changes of regime among bad points

                Points scatter by 1 % about one law, or about two with the lower one four times slower below 1 MPa. Some of \
                them are off by a factor of 1.2 to 2, up or down. A regime is *made* where there is one law and a second one or a slow regime is reported; a slow \
                regime is *missed* where none is reported.

                | laws | points | bad | campaigns | regimes made | slow regime missed | more than two laws | threshold held by its interval or gap |
                | --- | --- | --- | --- | --- | --- | --- | --- |
                """);
        for (int count : new int[] {6, 8, 12, 16, 20}) {
            for (int bad : IntStream.of(0, Math.max(1, count / 8), count / 4)
                    .distinct()
                    .toArray()) {
                Tally one = Tally.of(count, bad, 0);
                Tally two = Tally.of(count, bad, Math.max(3, 2 * count / 5));
                text.append(String.format(
                        Locale.ROOT,
                        "| one | %d | %d | %d | **%.1f %%** | | %.1f %% | |%n| two | %d | %d | %d | | **%.1f %%** | %.1f %% | %.1f %% |%n",
                        count,
                        bad,
                        one.campaigns,
                        100 * one.share(one.changed),
                        100 * one.share(one.moreThanTwo),
                        count,
                        bad,
                        two.campaigns,
                        100 * two.share(two.missed),
                        100 * two.share(two.moreThanTwo),
                        100.0 * two.covered / Math.max(1, two.thresholds)));
                assertThat(one.share(one.changed))
                        .as("regimes made of %d points, %d bad", count, bad)
                        .isLessThanOrEqualTo(0.055);
                // Of six points with a bad one, three hold against two: one in ten stays undecided. Of twelve with
                // three bad, 3 of
                // 100 were missed.
                assertThat(two.share(two.missed))
                        .as("slow regimes missed with %d points, %d bad", count, bad)
                        .isLessThanOrEqualTo(count < 12 ? 0.15 : 0.05);
            }
        }
        text.append("\nTargets: at most 5.5 % made; at most 5 % missed from twelve points on, 15 % below.\n");
        StudyReport.section(51, "regimes-bad-points", text.toString());
    }
}
