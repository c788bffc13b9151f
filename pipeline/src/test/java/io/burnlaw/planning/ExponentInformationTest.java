package io.burnlaw.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;
import static org.assertj.core.data.Percentage.withPercentage;

import io.burnlaw.Oracle;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.ratelaw.SystematicError;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ExponentInformationTest {

    /** A law of which nothing is known but the scatter of the firings to come. */
    private static RateLaw unknown(double scatter) {
        double vague = 1e6;
        return new RateLaw(
                Math.log(5e-3),
                0.4,
                1e6,
                vague,
                0,
                vague,
                1,
                scatter,
                1e6,
                1e6,
                0,
                Weighting.MEASURED,
                SystematicError.NONE);
    }

    @Test
    @Oracle(
            value =
                    "exponent_uncertainty_two_point.csv: u(n) = sqrt(2) u_r / ln(P2/P1), worked out by hand from JCGM 100:2008",
            agreement = "1e-6, all rows")
    void twoFiringsGiveTheExponentAsFarAsTheirPressuresAreApart() throws IOException {
        List<String> rows;
        try (InputStream table =
                ExponentInformationTest.class.getResourceAsStream("exponent_uncertainty_two_point.csv")) {
            rows = new String(table.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .toList();
        }
        assertThat(rows).hasSizeGreaterThan(9).allSatisfy(row -> {
            String[] cells = row.split(",");
            double ratio = Double.parseDouble(cells[1]);
            double std = ExponentInformation.of(unknown(Double.parseDouble(cells[0])))
                    .with(1e6)
                    .with(ratio * 1e6)
                    .exponentStd();
            // 1e-6: the table's eight digits, and what is left of the vague prior
            assertThat(std / Double.parseDouble(cells[2])).as(row).isCloseTo(1, offset(1e-6));
        });
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void theForetoldUncertaintyIsThatOfTheRefit(long seed) {
        List<FitPoint> points = PlannedMotors.points(8, 1e6, 3e6, 0.4, 0.03, new SplittableRandom(seed));
        RateLaw law = PlannedMotors.fit(points);
        double foretold = ExponentInformation.of(law).with(5e6).exponentStd();
        List<FitPoint> more = new ArrayList<>(points);
        // a firing whose residual is that of the others keeps their scatter: s^2 (n - 2) grows by s^2
        double scatter = law.residualScatter();
        more.add(new FitPoint("new", "new", 5e6, 0, law.rate(5e6) * Math.exp(scatter), 0, 0));
        // 15 %: the new residual moves the scatter
        assertThat(PlannedMotors.fit(more).exponentStd()).isCloseTo(foretold, withPercentage(15));
    }
}
