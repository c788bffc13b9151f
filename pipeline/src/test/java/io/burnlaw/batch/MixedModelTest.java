package io.burnlaw.batch;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.burnlaw.Oracle;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MixedModelTest {

    @ParameterizedTest
    @ValueSource(strings = {"dyestuff", "dyestuff2", "dyestuffUneven", "sleep", "sleepUneven", "sleepSlopes"})
    @Oracle("lme4 and pbkrtest in R on Davies and Goldsmith (1972), Box and Tiao (1973), Belenky et al. (2003): "
            + "variances, fixed effects, Kenward-Roger covariance and degrees of freedom")
    void variancesEffectsAndDegreesOfFreedomAgreeWithLme4(String set) throws IOException {
        boolean line = set.startsWith("sleep");
        MixedModel.Fit fit = MixedModel.fit(groups(set, line, set.endsWith("Slopes")), start(set));
        Map<String, Double> expected = expected(set);
        assertTrue(fit.settled());
        // 1e-5: lme4's search ends where its criterion is flat in doubles, and variances are good to that only
        near(expected.get("within"), fit.theta()[0], 1e-5);
        assertEquals(expected.get("between"), fit.theta()[1], 1e-5 * Math.max(1, expected.get("between")));
        if (expected.containsKey("slopes")) {
            near(expected.get("slopes"), fit.theta()[2], 1e-4);
        }
        near(expected.get("criterion"), fit.criterion(), 1e-9);
        for (int k = 0; k < (line ? 2 : 1); k++) {
            double[] contrast = new double[line ? 2 : 1];
            contrast[k] = 1;
            double freedom = fit.freedom(new ArrayRealVector(contrast), new double[fit.theta().length]);
            int at = k;
            assertAll(
                    () -> near(expected.get("beta" + at), fit.beta().getEntry(at), 1e-6),
                    () -> near(
                            expected.get("std" + at), Math.sqrt(fit.covariance().getEntry(at, at)), 1e-5),
                    () -> near(
                            expected.get("adjusted" + at),
                            Math.sqrt(fit.adjusted().getEntry(at, at)),
                            1e-5),
                    () -> near(expected.get("freedom" + at), freedom, 1e-4));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"dyestuff", "dyestuffUneven", "sleep", "sleepUneven"})
    @Oracle("MixedLM of statsmodels in Python on the same data: variances and fixed effects by REML")
    void variancesAndEffectsAgreeWithStatsmodels(String set) throws IOException {
        MixedModel.Fit fit = MixedModel.fit(groups(set, set.startsWith("sleep"), false), start(set));
        Map<String, Double> expected = expected("mixed_models_statsmodels.csv", set);
        // 1e-6: the search of statsmodels ends where its criterion is flat in doubles
        near(expected.get("within"), fit.theta()[0], 1e-6);
        near(expected.get("between"), fit.theta()[1], 1e-6);
        near(expected.get("criterion"), fit.criterion(), 1e-9);
        for (int k = 0; k < fit.beta().getDimension(); k++) {
            near(expected.get("beta" + k), fit.beta().getEntry(k), 1e-6);
        }
    }

    @Test
    @Oracle("Searle, Casella and McCulloch (1992), balanced one-way random model: REML is the analysis of variance, "
            + "between = (MSB - MSW)/n, or the pooled mean square with between = 0 where MSB < MSW")
    void aBalancedLayoutGivesTheAnalysisOfVariance() {
        SplittableRandom random = new SplittableRandom(5);
        int zeros = 0;
        for (int round = 0; round < 40; round++) {
            List<MixedModel.Group> groups = new ArrayList<>();
            int m = 3 + round % 5;
            int n = 2 + round % 4;
            double[] means = new double[m];
            double within = 0;
            for (int g = 0; g < m; g++) {
                double effect = round % 3 * random.nextGaussian();
                double[] y = new double[n];
                for (int i = 0; i < n; i++) {
                    y[i] = effect + random.nextGaussian();
                }
                means[g] = Arrays.stream(y).average().orElseThrow();
                for (double each : y) {
                    within += (each - means[g]) * (each - means[g]);
                }
                groups.add(group(new double[n], y, false, false));
            }
            double mean = Arrays.stream(means).average().orElseThrow();
            double between =
                    n * Arrays.stream(means).map(a -> (a - mean) * (a - mean)).sum();
            double msb = between / (m - 1);
            double msw = within / (m * (n - 1));
            boolean zero = msb < msw;
            zeros += zero ? 1 : 0;
            MixedModel.Fit fit = MixedModel.fit(groups, new double[] {1, 1});
            // 1e-6: the criterion is flat to doubles over the square root of their spacing
            assertEquals(zero ? (within + between) / (m * n - 1) : msw, fit.theta()[0], 1e-6);
            assertEquals(zero ? 0 : (msb - msw) / n, fit.theta()[1], 1e-6);
        }
        assertTrue(zeros > 3 && zeros < 37, "both cases occur: " + zeros);
    }

    private static void near(double expected, double actual, double relative) {
        assertEquals(expected, actual, relative * Math.abs(expected));
    }

    private static double[] start(String set) {
        return set.endsWith("Slopes") ? new double[] {500, 500, 10} : new double[] {500, 500};
    }

    private static List<MixedModel.Group> groups(String set, boolean line, boolean slopes) throws IOException {
        Map<String, List<double[]>> rows = new LinkedHashMap<>();
        for (String[] cells : rows("mixed_models.csv", set)) {
            rows.computeIfAbsent(cells[1], id -> new ArrayList<>())
                    .add(new double[] {Double.parseDouble(cells[2]), Double.parseDouble(cells[3])});
        }
        return rows.values().stream()
                .map(g -> group(
                        g.stream().mapToDouble(r -> r[0]).toArray(),
                        g.stream().mapToDouble(r -> r[1]).toArray(),
                        line,
                        slopes))
                .toList();
    }

    private static MixedModel.Group group(double[] x, double[] y, boolean line, boolean slopes) {
        double[] ones = new double[y.length];
        Arrays.fill(ones, 1);
        RealMatrix fixed = new Array2DRowRealMatrix(y.length, line ? 2 : 1);
        fixed.setColumn(0, ones);
        if (line) {
            fixed.setColumn(1, x);
        }
        double[][] z = slopes ? new double[][] {ones, x} : new double[][] {ones};
        return new MixedModel.Group(fixed, z, y, ones, new double[y.length]);
    }

    static Map<String, Double> expected(String set) throws IOException {
        return expected("mixed_models_expected.csv", set);
    }

    private static Map<String, Double> expected(String file, String set) throws IOException {
        Map<String, Double> expected = new LinkedHashMap<>();
        for (String[] cells : rows(file, set)) {
            expected.put(cells[1], Double.parseDouble(cells[2]));
        }
        return expected;
    }

    static List<String[]> rows(String file, String set) throws IOException {
        try (InputStream in = MixedModelTest.class.getResourceAsStream(file)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .map(line -> line.split(","))
                    .filter(cells -> cells[0].equals(set))
                    .toList();
        }
    }
}
