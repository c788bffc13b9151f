package io.burnlaw.trace.reading;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.burnlaw.Oracle;
import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.trace.Trace;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Workbooks and Matlab files as general libraries write them; see make_records.py beside them. */
@Oracle("openpyxl 3.1.5 and SciPy 1.17.1 wrote the files, and the same numbers as text")
class BinaryRecordTest {

    @TempDir
    Path folder;

    private static byte[] resource(String name) throws IOException {
        try (InputStream in = BinaryRecordTest.class.getResourceAsStream(name)) {
            return in.readAllBytes();
        }
    }

    private TraceReading reading(String name, byte[] bytes, TraceSettings settings) throws IOException {
        Files.write(folder.resolve(name), bytes);
        return TraceReader.read(folder, "7", name, settings, 101_325);
    }

    private TraceReading.Read read(String name, TraceSettings settings) throws IOException {
        return reading(name, resource(name), settings).match(read -> read, unreadable -> {
            throw new AssertionError(unreadable.findings());
        });
    }

    private static TraceSettings settings(String time, String pressure, String thrust) {
        return new TraceSettings(
                Optional.ofNullable(time),
                Optional.ofNullable(pressure),
                Optional.ofNullable(thrust),
                Optional.of(PressureKind.GAUGE),
                List.of(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    private Trace expected() throws IOException {
        return read("record.csv", settings(null, null, null)).trace();
    }

    @Test
    void aWorkbookGivesTheNumbersOfTheText() throws IOException {
        Trace text = expected();
        Trace sheet = read("record.xlsx", settings(null, null, null)).trace();
        // 4e-16: openpyxl writes 16 digits, one less than some doubles have
        assertClose(text.times(), sheet.times(), 4e-16);
        assertClose(text.pressures(), sheet.pressures(), 4e-16);
        assertClose(text.thrusts(), sheet.thrusts(), 4e-16);
    }

    @ParameterizedTest
    @CsvSource({
        "record-v7.mat, t_ms [ms], p_bar [bar], load_N [N]",
        "record-v6.mat, rec.t_ms [ms], rec.p_bar [bar], rec.load_N [N]"
    })
    void aMatlabFileGivesTheNumbersOfTheText(String name, String time, String pressure, String thrust)
            throws IOException {
        Trace text = expected();
        Trace mat = read(name, settings(time, pressure, thrust)).trace();
        assertEquals(64, mat.size());
        // 1e-12: units are applied to the nearest double of the same number, in another order
        assertArrayEquals(text.times(), mat.times(), 1e-15);
        assertClose(text.pressures(), mat.pressures(), 1e-12);
        assertClose(text.thrusts(), mat.thrusts(), 1e-12);
    }

    @Test
    void theColumnsOfAMatrixOfSinglesAreChannels() throws IOException {
        Trace text = expected();
        Trace mat = read("record-matrix.mat", settings("data column 1 [ms]", "data column 2 [bar]", null))
                .trace();
        // 1e-7: single precision has 24 bits
        assertClose(text.pressures(), mat.pressures(), 1e-7);
        assertArrayEquals(text.times(), mat.times(), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(strings = {"record.xlsx", "record-v7.mat", "record-v6.mat", "record-matrix.mat"})
    void aFileThatWasCutOffOrDamagedIsRefusedWithItsName(String name) throws IOException {
        byte[] whole = resource(name);
        for (int part = 1; part < 10; part++) {
            byte[] cut = Arrays.copyOf(whole, whole.length * part / 10);
            String told = reading(name, cut, settings("t_ms [ms]", "p_bar [bar]", null))
                    .match(read -> "read", unreadable -> unreadable.findings().toString());
            assertTrue(told.contains(name), part + " tenths: " + told);
        }
        for (int place = 0; place < whole.length; place += 97) {
            byte[] damaged = whole.clone();
            damaged[place] ^= 0x55;
            // It may still be a record: what must not happen is an exception.
            reading(name, damaged, settings(null, null, null));
        }
    }

    private static void assertClose(double[] expected, double[] actual, double relative) {
        assertEquals(expected.length, actual.length);
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], actual[i], relative * Math.abs(expected[i]));
        }
    }
}
