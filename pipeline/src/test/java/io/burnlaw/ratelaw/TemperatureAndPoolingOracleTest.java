package io.burnlaw.ratelaw;

import static io.burnlaw.ratelaw.PowerLawOracleTest.assertRelative;
import static io.burnlaw.ratelaw.PowerLawOracleTest.estimated;
import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.Oracle;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.PooledExponent.BurnCurve;
import io.burnlaw.ratelaw.TemperatureFit.PointAtTemperature;
import io.burnlaw.ratelaw.TemperatureFit.TemperatureResult;
import io.burnlaw.reduction.point.InstantaneousRate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class TemperatureAndPoolingOracleTest {

    @Test
    @Oracle(
            value = "statsmodels 0.15.0, OLS of ln volume on ln girth and height of 31 cherry trees (Ryan et al. 1976, "
                    + "data from memory)",
            agreement = "exponent, sensitivity, standard errors, scatter and limits 1e-8, relative")
    void planeThroughTreesAgrees() {
        PublishedData data = PublishedData.read("trees.csv");
        double[] girth = data.column("girth");
        double[] height = data.column("height");
        double[] volume = data.column("volume");
        List<PointAtTemperature> points = new ArrayList<>();
        for (int i = 0; i < girth.length; i++) {
            points.add(new PointAtTemperature(new FitPoint("t" + i, "t" + i, girth[i], 0, volume[i], 0, 0), height[i]));
        }
        TemperatureResult.Estimated found = TemperatureFit.fit(points, 76, Weighting.PROPORTIONAL, 0.95)
                .estimated()
                .orElseThrow();
        // Printed with twelve digits.
        assertRelative(found.law().exponent(), 1.98322744515, 1e-9);
        assertRelative(found.sigmaP(), 0.0149900850074, 1e-9);
        assertRelative(found.law().exponentStd(), 0.0752148502524, 1e-9);
        assertRelative(found.sigmaPStd(), 0.00275787803823, 1e-9);
        assertRelative(found.law().residualScatter(), 0.0816094353792, 1e-9);
        assertRelative(estimated(found.sigmaPInterval()).low(), 0.00934082793772, 1e-8);
        assertRelative(estimated(found.sigmaPInterval()).high(), 0.0206393420771, 1e-8);
        assertRelative(Math.log(found.law().rate(1)), -2.93828859241 + 76 * 0.0149900850074, 1e-8);
    }

    @Test
    @Oracle(
            value = "statsmodels 0.15.0, OLS with a dummy for each firm and OLS of the firms' means, Grunfeld (1958)",
            agreement = "exponents within and between, standard error and scatter between 1e-9, relative")
    void exponentsWithinAndBetweenAgreeOnGrunfeld() {
        Map<String, List<InstantaneousRate>> firms = new LinkedHashMap<>();
        PublishedData data = PublishedData.read("grunfeld.csv");
        double[] value = data.column("value");
        double[] invest = data.column("invest");
        for (int i = 0; i < value.length; i++) {
            firms.computeIfAbsent(data.text("firm", i), name -> new ArrayList<>())
                    .add(new InstantaneousRate(i, 0, value[i], invest[i]));
        }
        Pooling.Pooled pooled = PooledExponent.of(
                        firms.entrySet().stream()
                                .map(firm -> new BurnCurve(firm.getKey(), firm.getValue()))
                                .toList(),
                        0.95)
                .pooled()
                .orElseThrow();
        assertRelative(pooled.within().value(), 0.910487830128, 1e-9);
        assertRelative(pooled.between().value(), 0.999385713568, 1e-9);
        assertRelative(pooled.between().std(), 0.159525399148, 1e-9);
        assertRelative(pooled.firingScatter(), 0.70048948287, 1e-9);
        assertThat(pooled.firings()).isEqualTo(11);
    }
}
