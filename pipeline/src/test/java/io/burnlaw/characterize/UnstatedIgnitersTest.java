package io.burnlaw.characterize;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.finding.FindingCode;
import io.burnlaw.ratelaw.RateLaw;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class UnstatedIgnitersTest {

    private static final String LOGGER = "sample_interval: 2 ms, quiet_before: 1 s, quiet_after: 1 s, noise: 3 kPa";

    @TempDir
    private Path folder;

    private CampaignResult lit(String igniter) throws IOException {
        return MadeStand.characterized(
                folder,
                MadeStand.scenario(
                        "caliper: 0.01 mm, scale: 0.2 g",
                        LOGGER,
                        "throat: 14.4 mm, " + igniter,
                        "throat: 11.2 mm, " + igniter,
                        "throat: 9.1 mm, " + igniter,
                        "throat: 7.8 mm, " + igniter));
    }

    private static long told(CampaignResult result) {
        return result.firings().stream()
                .filter(firing -> firing.reduction().findings().stream()
                        .anyMatch(finding -> finding.code() == FindingCode.IGNITER_UNSTATED))
                .count();
    }

    private static RateLaw law(CampaignResult result) {
        return result.formulations().get(0).fit().fitted().orElseThrow().law();
    }

    /** 12.5 g of charge give about 7.5 g of gas, 2 % of the 374 g of propellant. */
    @Test
    void aSlowIgnitionIsGivenTheGasOfAUsualIgniterInAllFiringsAlike() throws IOException {
        CampaignResult result = lit("igniter_mass: 12.5 g, igniter_time: 0.15 s, flame_spread: 0.2 s");
        assertThat(told(result)).isEqualTo(4);
        assertThat(result.firings().stream()
                        .flatMap(firing -> firing.reduction().findings().stream())
                        .filter(finding -> finding.code() == FindingCode.IGNITER_UNSTATED)
                        .map(finding -> finding.message())
                        .distinct())
                .hasSize(1);
        RateLaw law = law(result);
        // 2 % of gas less the 1.4 % taken off, and a sixth of the gas by which charges differ
        assertThat(law.rate(2e6) / (5e-3 * Math.pow(2, 0.36))).isCloseTo(1, within(0.012));
        // alike in all firings: the law is not tilted (0.2 % over a factor of seven in pressure is 0.001)
        assertThat(law.exponent()).isCloseTo(0.36, within(0.003));
    }

    @Test
    void aFlameThatIsEverywhereAtOnceHidesNoIgniter() throws IOException {
        CampaignResult result = lit("igniter_mass: 1 g, igniter_time: 0.03 s, flame_spread: 0.03 s");
        assertThat(told(result)).isZero();
        assertThat(law(result).rate(2e6) / (5e-3 * Math.pow(2, 0.36))).isCloseTo(1, within(0.004));
    }

    @Test
    void anIgniterInTheLogIsBelieved() throws IOException {
        CampaignResult result =
                lit("igniter_mass: 12.5 g, igniter_time: 0.15 s, flame_spread: 0.2 s, igniter_logged: yes");
        assertThat(told(result)).isZero();
    }
}
