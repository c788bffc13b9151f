package io.burnlaw.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.report.document.Firing.FiredMotor;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** Against the geometry of a hollow cylinder that burns from its port and both ends, by hand. */
class FiredMotorDocumentTest {

    @Test
    void theRatiosAreThoseOfAHollowCylinder() {
        Campaign campaign = CampaignReader.read(Path.of("..", "sample-runs", "new-sugar-source"))
                .orElseThrow();
        Firing row = campaign.firings().get(0);
        FiredMotor motor = FiredMotorDocument.of(row);
        double outer = mm(row, "outer_diameter");
        double core = mm(row, "core_diameter");
        double length = mm(row, "segment_length");
        double throat = 1000 * row.throatDiameter().value();
        // throat and port are circles: pi/4 falls out of the ratios
        assertThat(motor.portToThroat()).isCloseTo(core * core / throat / throat, within(1e-4));
        assertThat(motor.areaRatioStart()).isCloseTo(ratio(outer, core, length, throat), within(1e-3));
        double web = (outer - core) / 2 * 399 / 400;
        assertThat(motor.areaRatioEnd()).isCloseTo(ratio(outer, core + 2 * web, length - 2 * web, throat), within(0.2));
        assertThat(motor.areaRatioMost()).isGreaterThanOrEqualTo(motor.areaRatioStart());
        assertThat(motor.grain()).startsWith("bates, 2 segments, core diameter");
        assertThat(motor.ambientPressure().value()).isCloseTo(row.ambientPressure() / 1e6, within(1e-9));
    }

    /** Two segments: port and end faces over the throat, all over pi/4. */
    private static double ratio(double outer, double core, double length, double throat) {
        return 2 * (4 * core * length + 2 * (outer * outer - core * core)) / (throat * throat);
    }

    private static double mm(Firing row, String name) {
        return 1000 * row.grain().dimensions().get(name).value();
    }
}
