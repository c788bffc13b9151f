package io.burnlaw.characterize;

import static org.junit.jupiter.api.Assertions.assertTrue;

import io.burnlaw.batch.BatchResult.BatchLaw;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.regime.RegimeOptions;
import io.burnlaw.regime.RegimeSearch;
import io.burnlaw.regime.Regimes;
import io.burnlaw.validation.StudyReport;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Batches and regimes at once: whether a batch passes for a regime, and whether a regime is still found among batches. */
class BatchRegimesStudy {

    private static final int ROUNDS = Integer.getInteger("burnlaw.study.rounds", 200);
    private static final double WITHIN = 0.01;

    /** How batches lie along the pressures. */
    private enum Layout {
        MIXED("each batch at all pressures"),
        APART("two batches below 2 MPa, two above");

        private final String words;

        Layout(String words) {
            this.words = words;
        }
    }

    @Test
    void aBatchAloneNeverMakesARegime() {
        StringBuilder table = new StringBuilder(String.format(Locale.ROOT, """
                        ## Regimes among batches

                        %d campaigns a row: four batches of four firings, 0.8 to 5 MPa, 1 %% within a batch. Several laws claimed, in \
                        per cent, when batches are levels and when they are not known; how often the report says that the effects of batch and pressure cannot be separated; and how \
                        often a difference between batches was reported.

                        | law | batches | between | several laws, batches known | not known | doubt told | difference told |
                        | --- | --- | --- | --- | --- | --- | --- |
                        """, ROUNDS));
        List<String> outside = new ArrayList<>();
        for (double jump : new double[] {1, 1.5, 4}) {
            for (Layout layout : Layout.values()) {
                for (double between : new double[] {0, 0.03, 0.06}) {
                    double[] share = shares(jump, layout, between);
                    String row = String.format(
                            Locale.ROOT,
                            "| %s | %s | %.0f %% | %.1f | %.1f | %.1f | %.1f |",
                            jump == 1 ? "one law" : String.format(Locale.ROOT, "%.1f times faster above 2 MPa", jump),
                            layout.words,
                            100 * between,
                            share[0],
                            share[1],
                            share[3],
                            share[2]);
                    table.append(row).append('\n');
                    // 5 % by design, and two standard errors of a share at 200 rounds
                    boolean alone = jump == 1 && share[0] > 8;
                    // where no batch was fired on both sides nobody can tell a jump from a batch
                    boolean lost = jump > 1 && (layout == Layout.MIXED ? share[0] < 90 : share[0] + share[3] < 75);
                    if (alone || lost) {
                        outside.add(row);
                    }
                }
            }
        }
        StudyReport.section(65, "regimes-among-batches", table.toString());
        assertTrue(outside.isEmpty(), "outside: " + outside);
    }

    private static double[] shares(double jump, Layout layout, double between) {
        double[] count = new double[4];
        for (int round = 0; round < ROUNDS; round++) {
            SplittableRandom random = new SplittableRandom(77_003L * round + (long) (1e4 * between));
            Map<String, String> batches = new HashMap<>();
            List<FitPoint> points = new ArrayList<>();
            for (int b = 0; b < 4; b++) {
                double effect = between * random.nextGaussian();
                for (int i = 0; i < 4; i++) {
                    double share = (i + random.nextDouble()) / 4;
                    double low = layout == Layout.MIXED || b < 2 ? 0.8e6 : 2.1e6;
                    double high = layout == Layout.MIXED || b > 1 ? 5e6 : 1.9e6;
                    double pressure = low * StrictMath.pow(high / low, share);
                    double ln = StrictMath.log(5e-3 * (pressure > 2e6 ? jump : 1))
                            + 0.35 * StrictMath.log(pressure / 2e6)
                            + effect
                            + WITHIN * random.nextGaussian();
                    String id = "b" + b + "-" + i;
                    batches.put(id, "b" + b);
                    points.add(new FitPoint(
                            id, id, pressure, 0.005 * pressure, StrictMath.exp(ln), 0.01 * StrictMath.exp(ln), 0.005));
                }
            }
            BatchWork.Found found = new BatchWork(batches, 0.95).find(points, BatchRegimesStudy::search);
            count[0] += several(found.regimes());
            count[1] += several(search(points));
            count[3] += found.doubt().isPresent() ? 1 : 0;
            count[2] += found.law().orElseThrow() instanceof BatchLaw law && law.differ() ? 1 : 0;
        }
        for (int i = 0; i < count.length; i++) {
            count[i] *= 100.0 / ROUNDS;
        }
        return count;
    }

    private static Optional<Regimes> search(List<FitPoint> points) {
        return Optional.of(RegimeSearch.search(
                points, RegimeOptions.defaults(1), new RegimeSearch.Circumstances(java.util.Set.of(), Map.of())));
    }

    private static int several(Optional<Regimes> regimes) {
        return regimes.orElseThrow().selected() > 1 ? 1 : 0;
    }
}
