package io.burnlaw.reduction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.burnlaw.campaign.Campaign.ReductionSettings;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.grain.Grain;
import io.burnlaw.reduction.point.RatePoint;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class RecordAgainstGrainTest {

    private static Optional<Finding> told(String words, FindingCode code) {
        return GrainMistakesStudy.reduced(70_003, words).findings().stream()
                .filter(finding -> finding.code() == code)
                .findFirst();
    }

    @Test
    void theGrainOfTheLogFits() {
        assertThat(told("nothing is wrong", FindingCode.RECORD_AGAINST_GRAIN)).isEmpty();
    }

    @Test
    void endsThatDidNotBurnAreNamed() {
        Finding finding =
                told("no end burned", FindingCode.RECORD_AGAINST_GRAIN).orElseThrow();

        assertThat(finding.severity()).isEqualTo(Severity.CAUTION);
        assertThat(finding.message()).contains("if no end burned");
    }

    @Test
    void aGrossContradictionRejects() {
        Finding finding =
                told("radii for diameters", FindingCode.RECORD_AGAINST_GRAIN).orElseThrow();

        assertThat(finding.severity()).isEqualTo(Severity.REJECTION);
        assertThat(finding.message()).contains("if the diameters are radii");
    }

    @Test
    void aMassThatNoPropellantOfThisVolumeHasRejects() {
        Finding finding = told("all lengths in cm", FindingCode.GRAIN_MASS).orElseThrow();

        assertThat(finding.severity()).isEqualTo(Severity.REJECTION);
        assertThat(finding.message()).startsWith("Most likely the lengths are in cm");
    }

    @Test
    void aChamberInAnotherUnitIsToldAndNotUsed() {
        CleanFiring clean = CleanFiring.random(70_003);
        double right = clean.firing().chamberVolume().orElseThrow().value();
        for (double wrong : new double[] {1000 * right, right / 1000}) {
            Reduction.Reduced reduced = (Reduction.Reduced) FiringReducer.reduce(
                    FaultyRow.of(clean.firing()).chamber(wrong).row(),
                    clean.formulation(),
                    new ReductionSettings(
                            ReductionSettings.Method.MASS_BALANCE, ReductionSettings.BurnoutEvent.MEAN_WEB, 0.1, 0.1),
                    CleanFiring.NO_LIMIT,
                    clean.grain(),
                    clean.pressureTrace(),
                    List.of());
            RatePoint point = reduced.points().get(0);

            assertThat(reduced.findings()).extracting(Finding::code).contains(FindingCode.CHAMBER_VOLUME);
            // A volume that is off by a tenth moves the rate by much less than a per cent.
            assertThat(point.rate())
                    .isCloseTo(clean.rateAt(point.pressures().powerMean(clean.exponent())), withinPercentage(0.5));
        }
    }

    @Test
    void theSideOfARodIsItsMantle() {
        Grain lit = LogMistake.litSide(0.01, 0.05);

        // A cylinder of radius 10 mm and length 50 mm: one end and the mantle, 1.1e-3 pi m2; half way 5 mm by 45 mm.
        assertThat(lit.surface(0)).isCloseTo(1.1e-3 * Math.PI, within(1e-12));
        assertThat(lit.surface(0.005)).isCloseTo(Math.PI * (25e-6 + 2 * 0.005 * 0.045), within(1e-9));
        // Straight lines between 65 rows of a parabola: an error of 1e-4 of the volume.
        assertThat(lit.volume(0)).isCloseTo(Math.PI * 1e-4 * 0.05, within(1e-4 * Math.PI * 1e-4 * 0.05));
    }
}
