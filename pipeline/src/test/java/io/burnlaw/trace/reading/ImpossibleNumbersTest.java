package io.burnlaw.trace.reading;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.TraceSettings;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Numbers whose squares overflow, as a damaged binary file has them: found by fuzzing. */
class ImpossibleNumbersTest {

    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource({
        "'time [s],pressure [MPa]', 0.030, 1e200, 'sample 31 has a pressure of 1.00e+206 Pa'",
        "'time [s],pressure [MPa]', 0.030, -1e200, 'sample 31 has a pressure of −1.00e+206 Pa'",
        "'time [s],thrust [N]', 0.030, 7.9e51, 'sample 31 has a thrust of 7.90e+51 N'",
        "'time [s],thrust [N]', 1e100, 5, 'sample 31 has a time of 1.00e+100 s'"
    })
    void aNumberThatNothingCanHaveIsRefusedWithItsPlace(String head, String time, String value, String message)
            throws IOException {
        StringBuilder text = new StringBuilder(head).append('\n');
        for (int i = 0; i < 100; i++) {
            text.append(i == 30 ? time : i / 1000.0)
                    .append(',')
                    .append(i == 30 ? value : i % 7)
                    .append('\n');
        }
        Files.writeString(folder.resolve("t.csv"), text);
        TraceSettings gauge = new TraceSettings(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(PressureKind.GAUGE),
                List.of(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
        TraceReading reading = TraceReader.read(folder, "F", "t.csv", gauge, 101_325);
        assertThat(reading).isInstanceOf(TraceReading.Unreadable.class);
        assertThat(((TraceReading.Unreadable) reading).findings().get(0).message())
                .contains("t.csv", message, "1e+12");
    }
}
