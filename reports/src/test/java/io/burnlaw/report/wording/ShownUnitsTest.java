package io.burnlaw.report.wording;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Expected values by hand: 1 MPa is 145.038 psi (NIST SP 811), 1 in is 25.4 mm. */
class ShownUnitsTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "the peak is 6.94 ± 0.11 MPa. | the peak is 1007 ± 16 psi.",
                "5.56 (5.44 to 5.68) mm/s | 0.2189 (0.2142 to 0.2236) in/s",
                "6.94 mm/s (95 %: 6.71 to 7.18) | 0.2732 in/s (95 %: 0.2642 to 0.2827)",
                "measured from 0.95 to 4.3 MPa with 10 points. | measured from 138 to 624 psi with 10 points.",
                "r = 4.173 · P^0.364 (mm/s, MPa absolute) | r = 0.02684 · P^0.364 (in/s, psi absolute)",
                "the case limit of 7 MPa | the case limit of 1015 psi",
                "38 × 12.0 × 62 mm | 1.496 × 0.472 × 2.441 in",
                "540 kPa gauge high | 78.32 psi gauge high",
                "OR-05, 2 mm | OR-05, 0.07874 in",
                "off by −0.25 MPa | off by −36.3 psi",
                "r in mm/s, P absolute in MPa | r in in/s, P absolute in psi",
                "12 mm² and 3 kg and 4 mm/s² stay | 12 mm² and 3 kg and 4 mm/s² stay",
                "95 % at 0.2 % a kelvin | 95 % at 0.2 % a kelvin"
            })
    void aSentenceIsToldInPoundsAndInches(String written, String shown) {
        assertThat(ShownUnits.PSI.text(written)).isEqualTo(shown);
        assertThat(ShownUnits.MPA.text(written)).isEqualTo(written);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "6.94 ± 0.11 MPa | 69.4 ± 1.1 bar",
                "0.0986 MPa | 0.986 bar",
                "7 MPa, 12 mm | 70 bar, 12 mm",
                "r = 2 · P^0.5 (mm/s, MPa) | r = 0.6325 · P^0.5 (mm/s, bar)"
            })
    void aSentenceIsToldInBar(String written, String shown) {
        assertThat(ShownUnits.BAR.text(written)).isEqualTo(shown);
    }

    @Test
    void aCellIsInTheUnitOfItsHeading() {
        assertThat(ShownUnits.PSI.text("mean [MPa] (95 %)")).isEqualTo("mean [psi] (95 %)");
        assertThat(ShownUnits.PSI.cell("mean [MPa] (95 %)", "0.628 (0.531 to 0.733)"))
                .isEqualTo("91.1 (77.0 to 106.3)");
        assertThat(ShownUnits.PSI.cell("Pressure, MPa", "95 %: 0.53 to 0.73")).isEqualTo("95 %: 76.9 to 106");
        assertThat(ShownUnits.PSI.cell("a, mm/s at 1 MPa", "4.17")).isEqualTo("0.1642");
        assertThat(ShownUnits.PSI.cell("Firing", "17")).isEqualTo("17");
        assertThat(ShownUnits.PSI.cell("Pressure, MPa", "1.2 × 10⁻⁷")).isEqualTo("1.2 × 10⁻⁷ MPa");
    }
}
