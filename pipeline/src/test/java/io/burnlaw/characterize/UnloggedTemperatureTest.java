package io.burnlaw.characterize;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class UnloggedTemperatureTest {

    private static final String LOGGER = "sample_interval: 2 ms, quiet_before: 1 s, quiet_after: 1 s, noise: 3 kPa";

    /** Cold days at low pressures, warm ones at high ones. */
    private static final String[] SEASON = {
        "throat: 14.4 mm, temperature: 5 degC",
        "throat: 12.2 mm, temperature: 13 degC",
        "throat: 10.4 mm, temperature: 20 degC",
        "throat: 9.1 mm, temperature: 28 degC",
        "throat: 7.8 mm, temperature: 35 degC"
    };

    @TempDir
    private Path folder;

    private FormulationResult law(String unlogged, String... firings) throws IOException {
        return MadeStand.characterized(
                        folder, MadeStand.scenario("caliper: 0.01 mm, scale: 0.2 g" + unlogged, LOGGER, firings))
                .formulations()
                .get(0);
    }

    private static Optional<Finding> told(FormulationResult result) {
        return result.findings().stream()
                .filter(finding -> finding.code() == FindingCode.TEMPERATURE_NOT_LOGGED)
                .findFirst();
    }

    @Test
    void temperaturesThatGoWithThePressureTiltTheLawByWhatIsTold() throws IOException {
        FormulationResult result = law(", not_logged: grain_temperature", SEASON);
        // 2 % in 10 K over 30 K: 0.06 over ln of the ratio of pressures, about 7
        double off = result.fit().fitted().orElseThrow().law().exponent() - 0.36;
        assertThat(off).isCloseTo(0.031, within(0.004));
        assertThat(told(result).orElseThrow().message())
                .contains("5 of 5 firings", "change a by 3 %", "n is wrong by 0.030", "order of the log");
    }

    @Test
    void mixedDaysScatterButDoNotTilt() throws IOException {
        FormulationResult result =
                law(", not_logged: grain_temperature", SEASON[3], SEASON[0], SEASON[4], SEASON[1], SEASON[2]);
        assertThat(told(result).orElseThrow().message()).contains("do not follow the order of the log");
    }

    @Test
    void nothingIsSaidWhereTemperaturesAreLogged() throws IOException {
        assertThat(told(law("", SEASON))).isEmpty();
    }
}
