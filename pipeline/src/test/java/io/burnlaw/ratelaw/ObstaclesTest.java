package io.burnlaw.ratelaw;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.PressureLimit;
import io.burnlaw.campaign.Weighting;
import java.util.List;
import org.junit.jupiter.api.Test;

class ObstaclesTest {

    @Test
    void withoutAPointThereIsNoLaw() {
        assertThat(obstacle(List.of()).mend()).contains("three pressures");
    }

    @Test
    void oneFiringGivesNoExponent() {
        assertThat(obstacle(List.of(point("a", 3e6))).reason())
                .contains("one firing only")
                .contains("3.00 MPa");
    }

    @Test
    void twoFiringsLeaveNothingToJudgeTheScatterBy() {
        FitResult.NotFitted found = obstacle(List.of(point("a", 2e6), point("b", 8e6)));
        assertThat(found.reason()).contains("2 independent firings").contains("2.00 MPa to 8.00 MPa");
        assertThat(found.mend()).contains("Fire a third at about 4.00 MPa");
    }

    @Test
    void threePointsOfTwoFiringsAreTwo() {
        FitPoint dwell = new FitPoint("a-dwell", "a", 0.5e6, 0, 2e-3, 0, 0);
        assertThat(obstacle(List.of(point("a", 2e6), dwell, point("b", 8e6))).reason())
                .contains("2 independent firings");
    }

    @Test
    void firingsAtOnePressureGiveARateAndNoExponent() {
        FitResult.NotFitted found = obstacle(List.of(point("a", 3e6), point("b", 3.02e6), point("c", 3.01e6)));
        assertThat(found.reason()).contains("All 3 points lie at one pressure").contains("no exponent");
        assertThat(found.mend())
                .contains("1.00 MPa")
                .doesNotContain("9.06")
                .contains("find out what pressure the case can stand")
                .contains("case_pressure_limit");
    }

    @Test
    void noMotorIsSentBelowThePressureOfTheAir() {
        FitResult.NotFitted found = obstacle(List.of(point("a", 0.12e6), point("b", 0.121e6)));
        assertThat(found.mend())
                .contains("at a lower pressure")
                .doesNotContain("MPa")
                .doesNotContain("inside");
        List<FitPoint> vague = List.of(
                new FitPoint("a", "a", 0.104e6, 0.02e6, 6e-3, 0, 0),
                new FitPoint("b", "b", 0.110e6, 0.02e6, 6e-3, 0, 0),
                new FitPoint("c", "c", 0.128e6, 0.02e6, 6e-3, 0, 0));
        assertThat(obstacle(vague).mend()).contains("unit of the records").doesNotContain(" or at ");
    }

    @Test
    void aPressureIsNamedOnlyWhereItsPeakStaysBelowTheStatedLimit() {
        List<FitPoint> points = List.of(point("a", 3e6), point("b", 3.02e6), point("c", 3.01e6));
        String wide = mend(points, 12e6);
        assertThat(wide).contains("1.00 MPa").contains("9.06 MPa").contains("Stay below 12.0 MPa");
        // 9.06 MPa in the mean has a peak of some 11.3 MPa
        String narrow = mend(points, 11e6);
        assertThat(narrow).contains("1.00 MPa").doesNotContain("9.06").contains("would pass 11.0 MPa");
        // Fired far above what is stated now: even the lower pressure is too much
        assertThat(mend(points, 1.1e6)).contains("at a lower pressure").doesNotContain("1.00 MPa");
    }

    private static String mend(List<FitPoint> points, double allowed) {
        PressureLimit limit = new PressureLimit(java.util.OptionalDouble.of(allowed));
        return Obstacles.of(points, FitOptions.defaults().withLimit(limit))
                .orElseThrow()
                .mend();
    }

    @Test
    void pressuresThatDifferByLessThanTheyAreKnownGiveNoExponent() {
        List<FitPoint> points = List.of(
                new FitPoint("a", "a", 2.9e6, 0.2e6, 6e-3, 0, 0),
                new FitPoint("b", "b", 3.0e6, 0.2e6, 6e-3, 0, 0),
                new FitPoint("c", "c", 3.1e6, 0.2e6, 6e-3, 0, 0));
        assertThat(obstacle(points).reason()).contains("known only to");
    }

    @Test
    void weightingByMeasurementNamesThePointsWithoutAnUncertainty() {
        FitResult.NotFitted found = (FitResult.NotFitted) RateLawFit.fit(
                List.of(
                        new FitPoint("a", "a", 1e6, 0, 5e-3, 1e-4, 0),
                        point("silent", 3e6),
                        new FitPoint("c", "c", 9e6, 0, 9e-3, 1e-4, 0)),
                FitOptions.defaults().with(Weighting.MEASURED));
        assertThat(found.reason()).contains("silent").doesNotContain("a,");
        assertThat(found.mend()).contains("proportionally");
    }

    private static FitResult.NotFitted obstacle(List<FitPoint> points) {
        return (FitResult.NotFitted) RateLawFit.fit(points, FitOptions.defaults());
    }

    private static FitPoint point(String id, double pressure) {
        return new FitPoint(id, id, pressure, 0, Campaigns.truth(pressure), 0, 0);
    }
}
