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

/** Every number of a pooling and of a plane, against the same formulas spelled out with general statistics libraries. */
class BurnsAndPlaneOracleTest {

    /** The numbers are printed with twelve digits. */
    private static final double PRINTED = 2e-11;

    /** Where the optimizer stops, and weights that depend on the law are no longer repeated. */
    private static final double SETTLED = 1e-7;

    private static final String SCRIPT = "statsmodels 0.15.0, SciPy 1.17.1 and NumPy: general_statistics_checks.py ";

    private static List<BurnCurve> burns() {
        PublishedData data = PublishedData.read("invented_burns.csv");
        double[] pressure = data.column("pressure");
        double[] rate = data.column("rate");
        Map<String, List<InstantaneousRate>> burns = new LinkedHashMap<>();
        for (int i = 0; i < pressure.length; i++) {
            burns.computeIfAbsent(data.text("burn", i), name -> new ArrayList<>())
                    .add(new InstantaneousRate(i, 0, 1e6 * pressure[i], 1e-3 * rate[i]));
        }
        return burns.entrySet().stream()
                .map(burn -> new BurnCurve(burn.getKey(), burn.getValue()))
                .toList();
    }

    private static void assertExponent(
            Pooling.Exponent found, double value, double std, double freedom, double low, double high) {
        assertRelative(found.value(), value, 1e-10);
        assertRelative(found.std(), std, 1e-10);
        assertRelative(found.degreesOfFreedom(), freedom, PRINTED);
        Interval.Estimated interval = estimated(found.interval());
        assertThat(interval.level()).isEqualTo(0.9);
        // the quantiles of two libraries agree to about 1e-9
        assertRelative(interval.low(), low, SETTLED);
        assertRelative(interval.high(), high, SETTLED);
    }

    @Test
    @Oracle(
            value = SCRIPT + "(jackknife over burns, line through their means, Welch's test) on invented burns",
            agreement =
                    "exponents, standard errors, degrees of freedom, intervals, p, law and its errors 1e-8, relative")
    void poolingOfBurnsAgrees() {
        Pooling.Pooled pooled = PooledExponent.of(burns(), 0.9).pooled().orElseThrow();
        // one burn of the seven has too few samples; one keeps its pressure and speaks between the firings only
        assertThat(pooled.firings()).isEqualTo(6);
        assertExponent(pooled.within(), 0.33091502537, 0.0190756868631, 4, 0.290248583634, 0.371581467106);
        assertExponent(pooled.between(), 0.346646232819, 0.0121843113065, 4, 0.320671147916, 0.372621317721);
        assertExponent(
                pooled.difference(),
                -0.0157312074484,
                0.0236613927062,
                8.11772666438,
                -0.0596481235784,
                0.0281857086817);
        assertRelative(pooled.pValue(), 0.524582373326, 1e-8);
        assertRelative(pooled.firingScatter(), 0.0175996752933, 1e-10);
        RateLaw law = pooled.law();
        assertRelative(law.exponent(), 0.342394014966, 1e-10);
        assertRelative(law.exponentStd(), 0.010508429859, 1e-10);
        assertRelative(law.rate(1.2e6), 5.37807631079e-3, 1e-10);
        assertRelative(law.lnStd(1.2e6), 0.0127550331748, 1e-10);
        assertRelative(law.rate(4.5e6), 8.45613349991e-3, 1e-10);
        assertRelative(law.lnStd(4.5e6), 0.00792795943558, 1e-10);
        assertRelative(law.pressureLow(), 1.0e6, 1e-12);
        assertRelative(law.pressureHigh(), 9.6e6, 1e-12);
        assertThat(law.degreesOfFreedom()).isEqualTo(4);
        assertThat(law.points()).isEqualTo(6);
        assertThat(pooled.sentence()).contains("0.331", "0.347", "agree", "0.1 %");
    }

    private static List<PointAtTemperature> firings(boolean pressuresUncertain) {
        PublishedData data = PublishedData.read("invented_temperatures.csv");
        double[] pressure = data.column("pressure");
        double[] pressureStd = data.column("pressure_std");
        double[] rate = data.column("rate");
        double[] rateStd = data.column("rate_std");
        double[] shared = data.column("shared");
        double[] temperature = data.column("temperature");
        List<PointAtTemperature> points = new ArrayList<>();
        for (int i = 0; i < pressure.length; i++) {
            FitPoint point = new FitPoint(
                    "p" + i,
                    data.text("firing", i),
                    1e6 * pressure[i],
                    pressuresUncertain ? 1e6 * pressureStd[i] : 0,
                    1e-3 * rate[i],
                    1e-3 * rateStd[i],
                    shared[i]);
            points.add(new PointAtTemperature(point, temperature[i]));
        }
        return points;
    }

    private static TemperatureResult.Estimated plane(boolean pressuresUncertain, Weighting weighting) {
        return TemperatureFit.fit(firings(pressuresUncertain), 293, weighting, 0.9)
                .estimated()
                .orElseThrow();
    }

    private static void assertSensitivities(
            TemperatureResult.Estimated found,
            double sigma,
            double std,
            double low,
            double high,
            double piK,
            double piLow,
            double piHigh) {
        assertRelative(found.sigmaP(), sigma, SETTLED);
        assertRelative(found.sigmaPStd(), std, SETTLED);
        assertRelative(estimated(found.sigmaPInterval()).low(), low, SETTLED);
        assertRelative(estimated(found.sigmaPInterval()).high(), high, SETTLED);
        assertRelative(found.piK(), piK, SETTLED);
        assertRelative(estimated(found.piKInterval()).low(), piLow, SETTLED);
        assertRelative(estimated(found.piKInterval()).high(), piHigh, SETTLED);
    }

    private static void assertLaw(RateLaw law, double n, double nScatter, double nShared) {
        assertRelative(law.exponent(), n, SETTLED);
        assertRelative(law.exponentStd(), Math.hypot(nScatter, nShared), SETTLED);
        assertThat(law.points()).isEqualTo(11);
        assertThat(law.degreesOfFreedom()).isEqualTo(5);
        assertThat(law.pressureLow()).isEqualTo(1.1e6);
        assertThat(law.pressureHigh()).isEqualTo(7.9e6);
    }

    private static void assertAt(RateLaw law, double pressure, double rate, double scatter, double shared) {
        assertRelative(law.rate(pressure), rate, SETTLED);
        assertRelative(law.lnStd(pressure), Math.hypot(scatter, shared), SETTLED);
    }

    @Test
    @Oracle(
            value = SCRIPT + "(WLS; Fieller's limits as roots) on invented firings, some with several points",
            agreement = "sensitivities, intervals, law, its errors by scatter and shared 1e-7, relative")
    void planeOfOneScatterAgrees() {
        TemperatureResult.Estimated found = plane(false, Weighting.PROPORTIONAL);
        assertSensitivities(
                found,
                0.00290555872507,
                0.000402425969004,
                0.00209465093084,
                0.0037164665193,
                0.00467447572307,
                0.00337861345036,
                0.00596677771781);
        RateLaw law = found.law();
        assertLaw(law, 0.378420405367, 0.00709751948039, -0.00160956695402);
        assertAt(law, 1.5e6, 7.14995737328e-3, 0.00679758633151, 0.00753215784803);
        assertAt(law, 6.0e6, 12.0819000495e-3, 0.00635459241394, 0.00530082425582);
        assertRelative(law.residualScatter(), 0.0123267892516, SETTLED);
        assertRelative(found.referred().get(0).rate(), 6.3067046883e-3, SETTLED);
        assertRelative(found.referred().get(10).rate(), 13.3022474936e-3, SETTLED);
        FitPoint last = firings(false).get(10).point();
        // the rate's own uncertainty stays the same share of it
        assertRelative(found.referred().get(10).ownRelativeStd(), last.ownRelativeStd(), 1e-12);
        assertThat(found.temperatureLow()).isEqualTo(279);
        assertThat(found.temperatureHigh()).isEqualTo(309);
        assertThat(found.sentence()).contains("0.29 %", "(0.21 to 0.37 %)", "279 and 309 K");
    }

    @Test
    @Oracle(
            value = SCRIPT + "(WLS with known weights that follow the slope) on invented firings",
            agreement = "sensitivities, intervals, law, its errors by scatter and shared 1e-7, relative")
    void planeOfMeasuredWeightsAgrees() {
        TemperatureResult.Estimated found = plane(true, Weighting.MEASURED);
        assertSensitivities(
                found,
                0.00304444205324,
                0.000405782419223,
                0.00237698936923,
                0.00371189473726,
                0.00488925986727,
                0.00382040727653,
                0.00595831256248);
        RateLaw law = found.law();
        assertLaw(law, 0.377320466514, 0.00677777848035, -0.00137837227608);
        assertAt(law, 1.5e6, 7.15737217824e-3, 0.00734433364723, 0.00717451504806);
        assertAt(law, 6.0e6, 12.0760014807e-3, 0.00569283827235, 0.00526368533421);
        assertRelative(found.referred().get(0).rate(), 6.31722420542e-3, SETTLED);
    }

    @Test
    @Oracle(
            value = SCRIPT + "(scatter of Paule and Mandel beside uncertain pressures) on invented firings",
            agreement = "sensitivities, intervals, law, its errors by scatter and shared 1e-7, relative")
    void planeOfOneScatterBesideUncertainPressuresAgrees() {
        TemperatureResult.Estimated found = plane(true, Weighting.PROPORTIONAL);
        assertSensitivities(
                found,
                0.00297836715992,
                0.000387250091173,
                0.00219803949363,
                0.00375869482621,
                0.00478074011019,
                0.00354461817804,
                0.0060082665823);
        RateLaw law = found.law();
        assertLaw(law, 0.377007096961, 0.00683474748464, -0.00140313016607);
        assertAt(law, 1.5e6, 7.15121064481e-3, 0.00690026439441, 0.00734095380184);
        assertAt(law, 6.0e6, 12.0603652384e-3, 0.00583396337874, 0.0053958023647);
        assertRelative(law.residualScatter(), 0.0125427254733, SETTLED);
    }
}
