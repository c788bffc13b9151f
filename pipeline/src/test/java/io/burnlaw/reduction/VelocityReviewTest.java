package io.burnlaw.reduction;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.Campaign.ReductionSettings;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Measured;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A c* that is off by a known factor, and what it is told to be. */
class VelocityReviewTest {

    private static final FiringBench.Fired FIRED =
            FiringBench.fire(FiringBench.Case.bates(4, 38e-3, 14e-3, 60e-3, 9e-3), FiringBench.law(6.5, 0.35), 31);

    /** With a stated c* that the record's is so many times of. */
    private static Reduction reduced(double ratio) {
        Formulation stated = new Formulation(
                "p",
                "Invented",
                Optional.of(Measured.of(FiringBench.DENSITY, 10)),
                true,
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.of(Measured.of(FiringBench.CSTAR / ratio, 1)));
        return FiringReducer.reduce(
                FIRED.firing(),
                stated,
                ReductionSettings.defaults(),
                new Hardware(OptionalDouble.empty(), 1.5),
                FIRED.measured(),
                FIRED.trace(),
                List.of());
    }

    private static Optional<Finding> told(Reduction reduction) {
        return reduction.findings().stream()
                .filter(each -> each.code() == FindingCode.IMPLAUSIBLE_CSTAR)
                .findFirst();
    }

    // 6 % are believed either way, and 6 % more of loss downwards; three standard uncertainties are less here
    @ParameterizedTest
    @CsvSource({"0.85, true", "0.90, false", "1.00, false", "1.05, false", "1.08, true"})
    void whatIsBelievedOfAStatedVelocity(double ratio, boolean doubted) {
        assertThat(told(reduced(ratio)).isPresent()).isEqualTo(doubted);
    }

    @Test
    void theSentenceGivesTheNumbersByHand() {
        String message = told(reduced(1.25)).orElseThrow().message();
        // 880 against 704 m/s; throat 9/sqrt(1.25) = 8.05 mm; pressure 1/1.25
        assertThat(message)
                .contains("1.25 times the 704.0 m/s")
                .contains("a throat of 8.049 mm instead of 9.000 mm")
                .contains("a pressure 0.800 times what was read")
                .contains("The mass is not the cause");
        double mass = FIRED.firing().propellantMass().orElseThrow().value();
        assertThat(message).contains(String.format(java.util.Locale.ROOT, "instead of %.4g g", 1e3 * mass));
        assertThat(message).doesNotContain("The factor is that of");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "6.895;a pressure column in kPa that was read as psi",
                "0.145;a pressure column in psi that was read as kPa",
                "14.5;a pressure column in psi that was read as bar",
                "100;a throat in mm that was read as cm",
                "0.01;a throat in cm that was read as mm"
            })
    void aFactorOfTwoUnitsNamesThem(double ratio, String units) {
        Reduction reduction = reduced(ratio);
        assertThat(told(reduction).orElseThrow().message()).contains(units);
        // beyond a factor of two the pressures cannot be believed
        assertThat(reduction).isInstanceOf(Reduction.Rejected.class);
    }

    @Test
    void withinAFactorOfTwoThePointStays() {
        assertThat(reduced(1.9)).isInstanceOf(Reduction.Reduced.class);
        assertThat(reduced(2.1)).isInstanceOf(Reduction.Rejected.class);
        assertThat(reduced(0.55)).isInstanceOf(Reduction.Reduced.class);
        assertThat(reduced(0.45)).isInstanceOf(Reduction.Rejected.class);
    }
}
