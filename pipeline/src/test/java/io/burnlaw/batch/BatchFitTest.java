package io.burnlaw.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.burnlaw.Oracle;
import io.burnlaw.ratelaw.FitPoint;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
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
        assertEquals(0.03, law.law().commonError().rate(), 1e-9);
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
