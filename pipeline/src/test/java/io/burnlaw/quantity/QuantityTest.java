package io.burnlaw.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.quantity.Quantity.QuantityReading;
import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityTest {

    private static Quantity read(String text, Dimension dimension) {
        return Quantity.read(text, dimension).match(QuantityReading.Read::quantity, misread -> {
            throw new AssertionError(text + ": " + misread);
        });
    }

    private static QuantityReading.Misread misread(QuantityReading reading) {
        return reading.match(
                read -> {
                    throw new AssertionError("was read as " + read);
                },
                misread -> misread);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            12.7 mm                  | LENGTH      | 0.0127
            12,7 mm                  | LENGTH      | 0.0127
            12.7mm                   | LENGTH      | 0.0127
            1.27e1 mm                | LENGTH      | 0.0127
            0,125 in                 | LENGTH      | 0.003175
            \u22123 mm               | LENGTH      | -0.003
            0.85 inch                | LENGTH      | 0.02159
            1.80 g/cm3               | DENSITY     | 1800
            21 degC                  | TEMPERATURE | 294.15
            70 °F                    | TEMPERATURE | 294.2611111111111
            98.6 kPa                 | PRESSURE    | 98600
            5.5 MPa                  | PRESSURE    | 5500000
            1 %                      | FRACTION    | 0.01
            """)
    void aNumberWithItsUnitBecomesSi(String text, Dimension dimension, double si) {
        // 1e-15 relative: the conversions are one sum, one product and one quotient
        assertThat(read(text, dimension).si().value())
                .isCloseTo(si, org.assertj.core.data.Offset.offset(4e-16 * Math.abs(si)));
        assertThat(read(text, dimension).std()).isEqualTo(OptionalDouble.empty());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            1.80 ± 0.01 g/cm3        | DENSITY     | 1800   | 10
            1.80 g/cm3 ± 0.01 g/cm3  | DENSITY     | 1800   | 10
            1.80 g/cm3 +/- 10 kg/m3  | DENSITY     | 1800   | 10
            (1.80 ± 0.01) g/cm3      | DENSITY     | 1800   | 10
            1.80 g/cm3 ± 0.5 %       | DENSITY     | 1800   | 9
            21 ± 1 degC              | TEMPERATURE | 294.15 | 1
            70 ± 1.8 degF            | TEMPERATURE | 294.26111111111106 | 1
            2 ± 0.1 %                | FRACTION    | 0.02   | 0.001
            """)
    void anUncertaintyIsReadWithTheValue(String text, Dimension dimension, double si, double std) {
        Measured measured = read(text, dimension).si();
        assertThat(measured.value()).isCloseTo(si, org.assertj.core.data.Offset.offset(1e-12 * si));
        assertThat(measured.std().orElseThrow()).isCloseTo(std, org.assertj.core.data.Offset.offset(1e-12 * std));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            12.7                | LENGTH   | no unit                | write 12.7 mm
            12.7 g              | LENGTH   | g is the unit of a mass, not of a length | mm
            5.5 Mpa             | PRESSURE | the unit Mpa is not known | write 5.5 MPa
            400 psi gauge       | PRESSURE | the unit psi gauge is not known | write a number and its unit, such as 12.7 MPa
            1:17.5              | TIME     | this is the time of a clock, in minutes and seconds | write 77.5 s
            7.Mai               | LENGTH   | this is a date: a spreadsheet may have changed a number into it | give the cell the format of a number or of text, and write a number and its unit, such as 12.7 mm
            2026-05-07          | LENGTH   | this is a date: a spreadsheet may have changed a number into it | give the cell the format of a number or of text, and write a number and its unit, such as 12.7 mm
            5.5 mPa             | PRESSURE | the unit mPa is not known | write 5.5 MPa
            12 milimetre        | LENGTH   | the unit milimetre is not known | write 12 mm
            1,250 psi           | PRESSURE | read in two ways       | write 1.250 or 1250
            1.234,5 mm          | LENGTH   | cannot be read         | thousands
            1 250 psi           | PRESSURE | space inside the number | thousands
            twelve mm           | LENGTH   | not a number           | such as 12.7 mm
            NaN mm              | LENGTH   | not a number           | 12.7 mm
            1e999 mm            | LENGTH   | cannot be read         | 12.7 mm
            1e308 MPa           | PRESSURE | too large              | MPa
            1.8 ± x g/cm3       | DENSITY  | uncertainty is not a number | g/cm³
            1.8 ± -0.1 g/cm3    | DENSITY  | uncertainty is negative | sign
            1.8 g/cm3 ± 1 mm    | DENSITY  | another unit           | g/cm³
            1 ± 2 ± 3 mm        | LENGTH   | two uncertainties      | one
            ''                  | LENGTH   | no value               | 12.7 mm
            """)
    void aTextThatIsNoQuantitySaysWhatToWrite(String text, Dimension dimension, String what, String mend) {
        QuantityReading.Misread misread = misread(Quantity.read(text, dimension));
        assertThat(misread.what()).contains(what);
        assertThat(misread.mend()).contains(mend);
    }

    @ParameterizedTest
    @CsvSource({"12.7, 0.0127, ", "0.5 in, 0.0127, ", "12.7 ± 0.1, 0.0127, 0.0001", "12.7 ± 1 %, 0.0127, 0.000127"})
    void aCellHasTheUnitOfItsHeadingOrItsOwn(String text, double si, Double std) {
        Measured measured = Quantity.read(text, Unit.MILLIMETRE)
                .match(read -> read.quantity().si(), misread -> {
                    throw new AssertionError(misread);
                });
        assertThat(measured.value()).isCloseTo(si, org.assertj.core.data.Offset.offset(1e-17));
        assertThat(measured.std().isPresent()).isEqualTo(std != null);
        if (std != null) {
            assertThat(measured.std().getAsDouble()).isCloseTo(std, org.assertj.core.data.Offset.offset(1e-18));
        }
    }
}
