package io.burnlaw.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.burnlaw.Oracle;
import io.burnlaw.batch.BatchResult.BatchLaw;
import io.burnlaw.ratelaw.FitPoint;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

class BatchFitTest {

    @Test
    @Oracle(
            "lm and anova in R on Belenky et al. (2003) with rows left out: F test of equal groups beside a common slope")
    void theTestOfADifferenceIsTheAnalysisOfCovariance() throws IOException {
        BatchLaw law = sleep();
        assertEquals(MixedModelTest.expected("sleepUneven").get("lnPValue"), StrictMath.log(law.pValue()), 1e-6 * 80);
    }

    @Test
    void oneBandForTheMeanAndAWiderOneForTheNextBatch() {
        BatchLaw law =
                (BatchLaw) BatchFit.fit(BatchCoverageStudy.points(new SplittableRandom(3), 4, 5, 0.01, 0.04), 0.95);
        assertTrue(law.differ());
        var mean = law.law().interval(2e6, 0.95).estimated().orElseThrow();
        var next = law.next().predict(2e6, 0.95).estimated().orElseThrow();
        assertTrue(next.low() < mean.low() && mean.high() < next.high());
        assertTrue(law.betweenLow() <= law.betweenStd() && law.betweenStd() <= law.betweenHigh());
        assertTrue(law.moreBatches().getAsInt() > 0);
        assertEquals(4, law.members().size());
    }

    @Test
    void severalPointsOfOneFiringCountAsOne() {
        List<BatchPoint> once = BatchCoverageStudy.points(new SplittableRandom(4), 4, 4, 0.01, 0.02);
        List<BatchPoint> twice = new ArrayList<>(once);
        once.forEach(p -> twice.add(new BatchPoint(p.point(), p.batch())));
        BatchLaw a = (BatchLaw) BatchFit.fit(once, 0.95);
        BatchLaw b = (BatchLaw) BatchFit.fit(twice, 0.95);
        assertEquals(a.law().exponentVariance(), b.law().exponentVariance(), 1e-12);
        assertEquals(a.pValue(), b.pValue(), 1e-9);
    }

    @Test
    void whatAllFiringsShareWidensTheMeanByItsWholeSize() {
        List<BatchPoint> points = BatchCoverageStudy.points(new SplittableRandom(5), 4, 4, 0.01, 0.02).stream()
                .map(p -> new BatchPoint(
                        new FitPoint(
                                p.point().id(),
                                p.point().cluster(),
                                p.point().pressure(),
                                0,
                                p.point().rate(),
                                0.03 * p.point().rate(),
                                0.03),
                        p.batch()))
                .toList();
        BatchLaw law = (BatchLaw) BatchFit.fit(points, 0.95);
        assertEquals(0.03, Math.sqrt(law.law().commonError().rateVariance()), 1e-9);
        assertEquals(0, law.law().commonError().exponent(), 1e-9);
    }

    @Test
    void whatCannotBeToldApartIsSaid() {
        List<BatchPoint> points = BatchCoverageStudy.points(new SplittableRandom(6), 4, 1, 0.01, 0.02);
        List<BatchPoint> singles =
                points.stream().filter(p -> p.point().id().endsWith("-0")).toList();
        assertInstanceOf(BatchResult.NotFitted.class, BatchFit.fit(singles, 0.95));
        List<BatchPoint> one =
                points.stream().filter(p -> p.batch().equals("b1")).toList();
        assertInstanceOf(BatchResult.NotFitted.class, BatchFit.fit(one, 0.95));
    }

    @Test
    void tenThousandPointsInFiftyBatchesGiveTheTruth() {
        List<BatchPoint> points = BatchCoverageStudy.points(new SplittableRandom(7), 50, 200, 0.015, 0.03);
        BatchLaw law = (BatchLaw) BatchFit.fit(points, 0.95);
        assertEquals(0.36, law.law().exponent(), 0.002);
        assertEquals(0.03, law.betweenStd(), 0.01);
    }

    /** Four batches that differ, and one firing of the first that is 22 % too slow and as uncertain as that. */
    private static List<BatchPoint> withAnUncertainOne(double relative) {
        List<BatchPoint> points =
                new ArrayList<>(BatchCoverageStudy.points(new SplittableRandom(11), 4, 4, 0.01, 0.04));
        FitPoint sure = points.get(0).point();
        double rate = 0.78 * sure.rate();
        points.set(
                0,
                new BatchPoint(
                        new FitPoint(sure.id(), sure.cluster(), sure.pressure(), 0, rate, relative * rate, 0),
                        points.get(0).batch()));
        return points;
    }

    @Test
    void anUncertainFiringDoesNotHideADifferenceBetweenBatches() {
        double all = ((BatchLaw) BatchFit.fit(withAnUncertainOne(0), 0.95)).pValue();
        double weighed = ((BatchLaw) BatchFit.fit(withAnUncertainOne(0.25), 0.95)).pValue();
        List<BatchPoint> others = withAnUncertainOne(0.25).subList(1, 16);
        double without = ((BatchLaw) BatchFit.fit(others, 0.95)).pValue();
        assertTrue(all > 0.1, "counted fully: " + all);
        assertTrue(weighed < 0.01, "counted as uncertain: " + weighed);
        // a factor of ten: with it there is one degree of freedom more
        assertEquals(StrictMath.log(without), StrictMath.log(weighed), 2.3, "as if it had not been fired");
    }

    @Test
    @Oracle(
            "Patterson and Thompson (1971): restricted likelihood with V = between² ZZ' + diag(within² + u²), full matrices, its"
                    + " maximum searched on a grid by this test")
    void variancesBesideAKnownOneAreThoseOfTheRestrictedLikelihood() {
        List<BatchPoint> points = withAnUncertainOne(0.25);
        BatchLaw law = (BatchLaw) BatchFit.fit(points, 0.95);
        double[] best = {0.01, 0.03};
        double step = 1.3;
        double least = restricted(points, best);
        while (step > 1 + 1e-6) {
            boolean better = false;
            for (double[] by : new double[][] {{step, 1}, {1 / step, 1}, {1, step}, {1, 1 / step}}) {
                double[] tried = {best[0] * by[0], best[1] * by[1]};
                double at = restricted(points, tried);
                if (at < least) {
                    least = at;
                    best = tried;
                    better = true;
                }
            }
            step = better ? step : Math.sqrt(step);
        }
        // 1e-3: a likelihood flat to 1e-12 leaves its maximum uncertain by the root of that, and by the grid's last
        // step
        assertEquals(best[0], law.withinStd(), 1e-3 * best[0]);
        assertEquals(best[1], law.betweenStd(), 1e-3 * best[1]);
    }

    /** Minus twice its logarithm, but for a constant. */
    private static double restricted(List<BatchPoint> points, double[] stds) {
        int n = points.size();
        RealMatrix v = new Array2DRowRealMatrix(n, n);
        RealMatrix x = new Array2DRowRealMatrix(n, 2);
        RealMatrix y = new Array2DRowRealMatrix(n, 1);
        for (int i = 0; i < n; i++) {
            FitPoint p = points.get(i).point();
            double own = p.rateStd() / p.rate();
            x.setRow(i, new double[] {1, StrictMath.log(p.pressure() / 1e6)});
            y.setEntry(i, 0, StrictMath.log(p.rate()));
            for (int j = 0; j < n; j++) {
                boolean same = points.get(i).batch().equals(points.get(j).batch());
                v.setEntry(i, j, (same ? stds[1] * stds[1] : 0) + (i == j ? stds[0] * stds[0] + own * own : 0));
            }
        }
        LUDecomposition lu = new LUDecomposition(v, 0);
        RealMatrix inverse = lu.getSolver().getInverse();
        LUDecomposition information =
                new LUDecomposition(x.transpose().multiply(inverse).multiply(x), 0);
        RealMatrix beta =
                information.getSolver().solve(x.transpose().multiply(inverse).multiply(y));
        RealMatrix left = y.subtract(x.multiply(beta));
        return StrictMath.log(lu.getDeterminant())
                + StrictMath.log(information.getDeterminant())
                + left.transpose().multiply(inverse).multiply(left).getEntry(0, 0);
    }

    private static BatchLaw sleep() throws IOException {
        List<BatchPoint> points = new ArrayList<>();
        for (String[] cells : MixedModelTest.rows("mixed_models.csv", "sleepUneven")) {
            String id = "p" + points.size();
            double x = Double.parseDouble(cells[2]);
            double y = Double.parseDouble(cells[3]) / 1000;
            points.add(new BatchPoint(
                    new FitPoint(id, id, 1e6 * StrictMath.exp(x), 0, StrictMath.exp(y), 0, 0), cells[1]));
        }
        return (BatchLaw) BatchFit.fit(points, 0.95);
    }
}
