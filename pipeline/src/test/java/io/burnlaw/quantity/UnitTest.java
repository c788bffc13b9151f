package io.burnlaw.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class UnitTest {

    /** Printed to seven digits; exact ones in full. */
    @ParameterizedTest
    @Oracle(
            value = "NIST SP 811 (2008), appendix B.8, factors as printed (recalled, not looked up)",
            agreement = "to the seven digits printed",
            fromMemory = true)
    @CsvSource({
        "INCH, 0.0254",
        "FOOT, 0.3048",
        "THOUSANDTH_OF_AN_INCH, 2.54e-5",
        "SQUARE_INCH, 6.4516e-4",
        "CUBIC_INCH, 1.638706e-5",
        "POUND, 0.4535924",
        "OUNCE, 0.02834952",
        "BAR, 1e5",
        "STANDARD_ATMOSPHERE, 1.01325e5",
        "TECHNICAL_ATMOSPHERE, 9.80665e4",
        "POUND_PER_SQUARE_INCH, 6894.757",
        "KILOPOUND_PER_SQUARE_INCH, 6894757",
        "MILLIMETRE_OF_MERCURY, 133.3224",
        "INCH_OF_MERCURY, 3386.389",
        "POUND_FORCE, 4.448222",
        "OUNCE_FORCE, 0.2780139",
        "KILOGRAM_FORCE, 9.80665",
        "POUND_PER_CUBIC_INCH, 27679.90",
        "POUND_PER_CUBIC_FOOT, 16.01846",
        "INCH_PER_MINUTE, 4.233333e-4"
    })
    void factorsAgreeWithTheHandbook(Unit unit, double printed) {
        // half a unit of the seventh digit
        assertThat(unit.toSi(1)).isCloseTo(printed, within(5e-7 * printed));
    }

    @ParameterizedTest
    @EnumSource(Unit.class)
    void thereAndBackIsTheSame(Unit unit) {
        // 1e-15 of the value and of the offset: two roundings each way
        assertThat(unit.fromSi(unit.toSi(12.7))).isCloseTo(12.7, within(1e-12));
        assertThat(unit.differenceFromSi(unit.differenceToSi(12.7))).isCloseTo(12.7, within(1e-14));
        assertThat(unit.toSi(3) - unit.toSi(1))
                .isCloseTo(unit.differenceToSi(2), within(1e-12 * Math.abs(unit.toSi(3))));
    }

    @ParameterizedTest
    @EnumSource(Unit.class)
    void everyUnitIsFoundByItsCodeAndItsSymbol(Unit unit) {
        assertThat(Unit.spelled(unit.ucum())).contains(unit);
        assertThat(Unit.spelled(unit.symbol())).contains(unit);
    }

    @Test
    void capitalsAreNotGuessed() {
        assertThat(Unit.spelled("mPa")).isEmpty();
        assertThat(Unit.nearest("mPa", Dimension.PRESSURE)).contains(Unit.MEGAPASCAL);
        assertThat(Unit.nearest("Mpa", Dimension.PRESSURE)).contains(Unit.MEGAPASCAL);
        assertThat(Unit.nearest("furlong", Dimension.LENGTH)).isEmpty();
    }

    @Test
    void noSpellingStandsForTwoUnits() {
        for (Unit unit : Unit.values()) {
            assertThat(unit.spellings())
                    .allSatisfy(spelling -> assertThat(Unit.spelled(spelling)).contains(unit));
        }
    }
}
