package io.burnlaw.campaign;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LikelyCauseTest {

    /** A grain of 203 g by its dimensions, two segments; each mass as it would stand in the log, in grams. */
    @ParameterizedTest
    @CsvSource({
        "2188, slipped decimal point",
        "20.4, slipped decimal point",
        "812, radii",
        "7.15, oz",
        "0.448, lb",
        "0.2, kg",
        "101, all 2 segments",
        "305, there were 3 segments",
        "3331000, inches",
        "204000, cm"
    })
    void theOneSlipThatExplainsAMassIsNamed(double mass, String words) {
        String cause = LikelyCause.ofMass(mass / 203, 2).orElseThrow();
        assertThat(cause).startsWith("most likely").contains(words);
        assertThat("    mend it    " + cause).hasSizeLessThanOrEqualTo(80);
    }

    @ParameterizedTest
    @CsvSource({"203", "220", "520", "1100"})
    void whatNoSlipExplainsIsLeftOpen(double mass) {
        assertThat(LikelyCause.ofMass(mass / 203, 1)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0.086, 0.038, point: 8.60", "0.2032, 0.038, inches: 8.00"})
    void aThroatWiderThanTheGrainIsMended(double throat, double outer, String words) {
        assertThat(LikelyCause.ofThroat(throat, outer).orElseThrow()).contains(words);
    }
}
