package io.burnlaw.characterize;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.ratelaw.Pooling;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class PoolingAcrossRegimesTest {

    /** The invented campaign has a slow law with n = 0.45 and a fast one with n = 0.30, and a jump between them. */
    @Test
    void exponentsAlongTheBurnsAreAskedOfOneLawOnly() {
        Campaign read =
                CampaignReader.read(Path.of("..", "sample-runs", "slow-regime")).orElseThrow();
        FormulationResult result = Characterizer.characterize(read, 1, Progress.silent())
                .formulations()
                .get(0);
        assertThat(result.regimes().orElseThrow().selected()).isEqualTo(2);
        Pooling.Pooled pooled = result.pooling().flatMap(Pooling::pooled).orElseThrow();
        double law = result.regimes()
                .orElseThrow()
                .at(pooled.law().referencePressure())
                .law()
                .exponent();
        // both ways give the exponent of one of the two laws, which lie 0.15 apart; a burn across the jump would not
        assertThat(pooled.within().value()).isCloseTo(law, within(0.03));
        assertThat(pooled.between().value()).isCloseTo(law, within(0.03));
        assertThat(pooled.findings()).isEmpty();
    }
}
