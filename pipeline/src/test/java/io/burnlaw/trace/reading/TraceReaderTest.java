package io.burnlaw.trace.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Measured;
import io.burnlaw.trace.Spacing;
import io.burnlaw.trace.Trace;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TraceReaderTest {

    private static final double AMBIENT = 98_600;
    private static final int ROWS = 20;

    @TempDir
    Path folder;

    private static TraceSettings gauge() {
        return settings(null, null, null, PressureKind.GAUGE);
    }

    private static TraceSettings settings(String time, String pressure, String thrust, PressureKind kind) {
        return new TraceSettings(
                Optional.ofNullable(time),
                Optional.ofNullable(pressure),
                Optional.ofNullable(thrust),
                Optional.ofNullable(kind),
                List.of(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    /** Twenty rows: time in ms from 0 by 2, pressure in bar from 0 by 0.5. */
    private static String rows(String format) {
        return rows(i -> String.format(Locale.ROOT, format, 2.0 * i, 0.5 * i));
    }

    private static String rows(IntFunction<String> row) {
        return IntStream.range(0, ROWS).mapToObj(row).collect(Collectors.joining("\n", "", "\n"));
    }

    private TraceReading reading(byte[] bytes, TraceSettings settings) throws IOException {
        Files.write(folder.resolve("t.csv"), bytes);
        return TraceReader.read(folder, "7", "t.csv", settings, AMBIENT);
    }

    private TraceReading.Read read(String text, TraceSettings settings) throws IOException {
        return read(text.getBytes(StandardCharsets.UTF_8), settings);
    }

    private TraceReading.Read read(byte[] bytes, TraceSettings settings) throws IOException {
        return reading(bytes, settings).match(read -> read, unreadable -> {
            throw new AssertionError(unreadable.findings());
        });
    }

    private Finding refused(String text, TraceSettings settings) throws IOException {
        return refused(text.getBytes(StandardCharsets.UTF_8), settings);
    }

    private Finding refused(byte[] bytes, TraceSettings settings) throws IOException {
        return reading(bytes, settings)
                .match(
                        read -> {
                            throw new AssertionError("was read: " + read);
                        },
                        unreadable -> unreadable.findings().get(0));
    }

    private static void assertUsual(TraceReading.Read read) {
        Trace trace = read.trace();
        assertThat(trace.size()).isEqualTo(ROWS);
        for (int i = 0; i < ROWS; i++) {
            assertThat(trace.time(i)).isCloseTo(0.002 * i, within(1e-15));
            assertThat(trace.pressure(i)).isCloseTo(AMBIENT + 0.5e5 * i, within(1e-9));
        }
        assertThat(read.findings()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "time [ms],p [bar]|%.1f,%.2f",
                "time [ms];p [bar]|%.1f;%.2f",
                "time [ms]\tp [bar]|%.1f\t%.2f",
                "time [ms]  p [bar]|%.1f   %.2f",
                "time [ms] p [bar]|  %.1f %.2f",
                "Time (ms), Pressure (bar)|%.1f, %.2f",
                "t_ms,p_bar|%.1f,%.2f",
                "t/ms;p/bar|%.1f;%.2f",
                "Time ms\tChamber bar|%.1f\t%.2f",
                "time;p\nms;bar|%.1f;%.2f",
                "time;p\n(ms);[bar]|%.1f;%.2f",
                "# time [ms],p [bar]|%.1f,%.2f",
                "p [barg],x [V],time [ms]|%2$.2f,9.9,%1$.1f",
                "time [ms],p [bar]|%e,%e",
                "time [ms],p [bar],|%.1f,%.2f,",
                "time [ms],p [bar]|%.1f,%.2f,",
                "\"time [ms]\",\"p [bar]\"|\"%.1f\",\"%.2f\"",
                "time [ms],p [bar]|+%.1f,+%.2f",
                "Logger 7, serial 123\nRate: 500 Hz\nDate;2026-03-01\n\ntime [ms],p [bar]|%.1f,%.2f",
                "7,8\n1000,500\nChannels,2\ntime [ms],p [bar]|%.1f,%.2f"
            })
    void layoutsAreFoundWithoutBeingAskedFor(String layout) throws IOException {
        String[] parts = layout.split("\\|");
        assertUsual(read(parts[0] + "\n" + rows(parts[1]), gauge()));
    }

    @Test
    void decimalCommasAreRead() throws IOException {
        assertUsual(read("time [ms];p [bar]\n" + rows("%.1f;%.3f").replace('.', ','), gauge()));
        assertUsual(read("time [ms]\tp [bar]\n" + rows("%.1f\t%.3f").replace('.', ','), gauge()));
        assertUsual(read(
                "time [ms],p [bar]\n"
                        + rows("\"%.1f\"x\"%.3f\"").replace('.', ',').replace('x', ','),
                gauge()));
    }

    @Test
    void lineEndsMarksAndPackingDoNotMatter() throws IOException {
        String text = "time [ms],p [bar]\n" + rows("%.1f,%.2f");
        assertUsual(read(text.replace("\n", "\r\n"), gauge()));
        assertUsual(read(text.replace("\n", "\r"), gauge()));
        assertUsual(read(text.replaceFirst("\n", "\r").replaceFirst("\n", "\r\n"), gauge()));
        assertUsual(read(text.strip(), gauge()));
        assertUsual(read(text.replace("\n", "\n\n# remark\n"), gauge()));
        assertUsual(read("\uFEFF" + text, gauge()));
        assertUsual(read(("\uFEFF" + text).getBytes(StandardCharsets.UTF_16LE), gauge()));
        assertUsual(read(("\uFEFF" + text).getBytes(StandardCharsets.UTF_16BE), gauge()));
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
            out.write(text.getBytes(StandardCharsets.UTF_8));
        }
        assertUsual(read(packed.toByteArray(), gauge()));
        String micro = text.replace("ms", "µs");
        assertThat(read(micro.getBytes(Charset.forName("windows-1252")), gauge())
                        .trace()
                        .time(1))
                .isEqualTo(2e-6);
    }

    @Test
    @Oracle("sha256sum of GNU coreutils over the same 20 rows")
    void theChecksumIsThatOfTheFile() throws IOException {
        TraceReading.Read plain = read("time [ms],p [bar]\n" + rows("%.1f,%.2f"), gauge());
        assertThat(plain.input().sha256())
                .isEqualTo("09aa6b2f682146909871956f0b0ed538afe5590ffd179422dd908de33b572d64");
        TraceReading.Read read = read("time [ms],p [bar]\n" + rows("%.1f,%.2f") + "end of file\n", gauge());
        assertThat(read.input().sha256()).isNotEqualTo(plain.input().sha256());
        assertThat(read.input().bytes()).isEqualTo(Files.size(folder.resolve("t.csv")));
        assertThat(read.notes()).anyMatch(note -> note.contains("was ignored"));
    }

    @Test
    void absoluteReadingsAreLeftAlone() throws IOException {
        assertThat(read("time [s],p [kPa abs]\n" + rows("%.1f,%.2f"), TraceSettings.unstated())
                        .trace()
                        .pressure(2))
                .isEqualTo(1000);
        assertThat(read("time [s],p [kPa]\n" + rows("%.1f,%.2f"), settings(null, null, null, PressureKind.ABSOLUTE))
                        .trace()
                        .pressure(2))
                .isEqualTo(1000);
    }

    @Test
    void nobodyGuessesWhatAPressureCountsFrom() throws IOException {
        assertThat(refused("time [s],p [kPa]\n" + rows("%.1f,%.2f"), TraceSettings.unstated())
                        .message())
                .contains("gauge or absolute", "pressure_kind");
    }

    @ParameterizedTest
    @CsvSource({
        "12:00:00.%03d, 0.002",
        "2026-03-01T23:59:59.%03dZ, 0.002",
        "2026-03-01 12:00:00.%03d, 0.002",
        "01.03.2026 1:02:03.%03d PM, 0.002",
        "03:04.%03d, 0.002"
    })
    void clocksAreRead(String stamp, double interval) throws IOException {
        TraceReading.Read read =
                read("Stamp;p [bar]\n" + rows(i -> String.format(Locale.ROOT, stamp, 2 * i) + ";" + 0.5 * i), gauge());
        assertThat(read.trace().time(5) - read.trace().time(4)).isCloseTo(interval, within(1e-10));
        assertThat(read.findings()).isEmpty();
    }

    @Test
    void aClockMayPassMidnight() throws IOException {
        TraceReading.Read read = read(
                "Time,p [bar]\n"
                        + rows(i -> (i < 10 ? "23:59:59." + (90 + i) : "00:00:00.0" + (i - 10)) + "," + 0.5 * i),
                gauge());
        assertThat(read.trace().time(10) - read.trace().time(9)).isCloseTo(0.01, within(1e-9));
    }

    @Test
    void theCampaignNamesColumnsAndUnits() throws IOException {
        String bare = "a,b,c\n" + rows("%.1f,7,%.2f");
        assertUsual(read(bare, settings("a [ms]", "c [bar]", null, PressureKind.GAUGE)));
        assertUsual(read(rows("%.1f,7,%.2f"), settings("column 1 [ms]", "column 3 [bar]", null, PressureKind.GAUGE)));
        Finding refused = refused(bare, settings("a [ms]", "d [bar]", null, PressureKind.GAUGE));
        assertThat(refused.message()).contains("t.csv:1", "d [bar]", "there is no such column", "a | b | c");
        assertThat(refused(bare, settings("a", "c [bar]", null, PressureKind.GAUGE))
                        .message())
                .contains("the column has no unit", "time: \"a [ms]\"");
        assertThat(refused(bare, settings("a [kg]", "c [bar]", null, PressureKind.GAUGE))
                        .message())
                .contains("kg is the unit of a mass, not of a time");
    }

    @Test
    void thrustIsReadBesideOrInsteadOfPressure() throws IOException {
        String both = "time [ms],p [bar],thrust [lbf]\n" + rows("%.1f,%.2f,10");
        TraceReading.Read read = read(both, gauge());
        assertThat(read.trace().thrust(3)).isCloseTo(44.482216152605, within(1e-12));
        assertThat(read.trace().hasPressure()).isTrue();
        TraceReading.Read only =
                read("time [ms],load [kg]\n" + rows("%.1f,%.2f"), settings(null, null, "load [kg]", null));
        assertThat(only.trace().hasPressure()).isFalse();
        assertThat(only.trace().thrust(2)).isCloseTo(9.80665, within(1e-12));
        assertThat(only.notes()).anyMatch(note -> note.contains("force in kgf"));
    }

    private static TraceSettings sampled(double interval, String pressure) {
        return new TraceSettings(
                Optional.empty(),
                OptionalDouble.of(interval),
                Optional.ofNullable(pressure),
                Optional.empty(),
                Optional.of(PressureKind.GAUGE),
                List.of(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    @Test
    void readingsWithoutATimeAreCountedAtTheStatedRate() throws IOException {
        assertUsual(read(rows(i -> "%.2f".formatted(0.5 * i)), sampled(0.002, "column 1 [bar]")));
        assertUsual(read("p [bar]\n" + rows(i -> "%.2f".formatted(0.5 * i)), sampled(0.002, null)));
        assertUsual(read("n,p [bar]\n" + rows(i -> i + ",%.2f".formatted(0.5 * i)), sampled(0.002, null)));
    }

    @Test
    void oneColumnOfNumbersWithDecimalCommasIsNoPairOfColumns() throws IOException {
        Trace trace = read(rows(i -> i % 2 + "," + i % 7), sampled(0.002, "column 1 [bar]"))
                .trace();
        assertThat(trace.size()).isEqualTo(ROWS);
        assertThat(trace.pressure(5)).isCloseTo(AMBIENT + 1.5e5, within(1e-6));
    }

    @Test
    void numbersOfSamplesKeepTheirGapsAndMissingReadingsTheirTime() throws IOException {
        Trace trace = read("sample,p [bar]\n" + rows(i -> i < 9 ? i + ",1" : i + 1 + ",2"), sampled(0.002, null))
                .trace();
        assertThat(trace.time(9)).isCloseTo(0.02, within(1e-15));
        Trace bare = read(rows(i -> i == 9 ? "---" : "1.5"), sampled(0.002, "column 1 [bar]"))
                .trace();
        assertThat(bare.size()).isEqualTo(ROWS - 1);
        assertThat(bare.time(9)).isCloseTo(0.02, within(1e-15));
    }

    @Test
    void whatIsMissingIsAskedForInLinesToCopy() throws IOException {
        assertThat(refused(rows(i -> "0.5"), gauge()).message())
                .contains("each row has one reading and no time")
                .contains("0.5, 0.5, 0.5")
                .contains("sampling: 2 kHz")
                .contains("pressure: \"column 1 [bar]\"");
        assertThat(refused(rows(i -> 250 * i + "," + (102 + i)), gauge()).message())
                .contains("time: \"column 1 [ms]\"")
                .contains("pressure: \"column 2 [counts]\"")
                .contains("calibration: {102 counts: 0 bar, 921 counts: 100 bar}");
        assertThat(refused("t [s],Sensor [V]\n" + rows(i -> i + ",0.5"), gauge())
                        .message())
                .contains("calibration: {0.50 V: 0 bar, 4.50 V: 100 bar}")
                .doesNotContain("pressure: ");
    }

    @Test
    void aTableOfNumbersInThePreambleIsNoRecord() throws IOException {
        String preamble = "Logger\n0;0.5\n10;0.9\n20;1.3\n30;1.7\n\n";
        assertUsual(read(preamble + "time [ms];p [bar]\n" + rows("%.1f;%.2f"), gauge()));
    }

    @Test
    void aCounterThatWrapsIsContinued() throws IOException {
        TraceReading.Read micros = read(
                "t [us],p [bar]\n" + rows(i -> (4_294_960_000L + 2000L * i) % (1L << 32) + ",%.2f".formatted(0.5 * i)),
                gauge());
        assertThat(micros.trace().time(ROWS - 1) - micros.trace().time(0)).isCloseTo(0.038, within(1e-9));
        assertThat(micros.notes()).anyMatch(note -> note.contains("started again at zero once, first at sample 5"));
        TraceReading.Read shown = read(
                "t [s],p [bar]\n" + rows(i -> "%.3f,%.2f".formatted((65_520 + 2 * i) % 65_536 / 1000.0, 0.5 * i)),
                gauge());
        assertThat(shown.trace().time(ROWS - 1) - shown.trace().time(0)).isCloseTo(0.038, within(1e-9));
    }

    @Test
    void aSingleBadCellIsAGap() throws IOException {
        for (String bad : List.of("OVL", "---", "", "*****", "12.3 bar", "Err 7", "1.2.3")) {
            TraceReading.Read read = read(
                    "time [ms];p [bar]\n" + rows(i -> 2 * i + ";" + (i == 9 ? bad : "%.2f".formatted(0.5 * i))),
                    gauge());
            assertThat(read.trace().size()).as(bad).isEqualTo(ROWS - 1);
            assertThat(read.trace().pressure(9)).as(bad).isCloseTo(AMBIENT + 5e5, within(1e-6));
            assertThat(read.findings())
                    .singleElement()
                    .satisfies(finding ->
                            assertThat(finding.message()).contains("1 rows of t.csv have no reading", "line 11"));
        }
    }

    @Test
    void thousandsApartAreReadWhereBothSignsLeaveNoDoubt() throws IOException {
        assertThat(read(
                                "time [ms],p [kPa]\n"
                                        + rows(i -> 2 * i + ",\"" + (i == 9 ? "1,234.5" : i + ".5") + "\""),
                                gauge())
                        .trace()
                        .pressure(9))
                .isCloseTo(AMBIENT + 1_234_500, within(1e-6));
        assertThat(read("time [ms];p [kPa]\n" + rows(i -> 2 * i + ";" + (i == 9 ? "1.234,5" : i + ",5")), gauge())
                        .trace()
                        .pressure(9))
                .isCloseTo(AMBIENT + 1_234_500, within(1e-6));
        assertThat(refused("time [ms];p [kPa]\n" + rows(i -> 2 * i + ";" + (i == 9 ? "1234,5" : i + ".5")), gauge())
                        .message())
                .contains(":11", "1234,5");
    }

    @Test
    void separatorsAtTheEndOfTheLinesMatterNot() throws IOException {
        assertUsual(read("time [ms],p [bar]\n" + rows("%.1f,%.2f,,"), gauge()));
        assertUsual(read("time [ms],p [bar],,\n" + rows("%.1f,%.2f"), gauge()));
    }

    @ParameterizedTest
    @CsvSource({
        "p [kg/cm2], 98066.5",
        "p [lb/in2], 6894.757293168361",
        "Pressure (bar(g)), 1e5",
        "P [MPA], 1e6",
        "P (KPA), 1e3",
        "Press [PSIG], 6894.757293168361",
        "P (bar gauge), 1e5",
        "'p, lb/in2', 6894.757293168361",
        "p_kgf/cm2, 98066.5"
    })
    void unitsAreReadAsPeopleWriteThem(String heading, double pascal) throws IOException {
        Trace trace = read("TIME (Sec);" + heading + "\n" + rows(i -> i + ";1.0"), gauge())
                .trace();
        assertThat(trace.pressure(3)).isCloseTo(AMBIENT + pascal, within(1e-6));
        assertThat(trace.time(3)).isEqualTo(3);
    }

    private static TraceSettings calibrated() {
        return new TraceSettings(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(PressureKind.GAUGE),
                List.of(
                        new TraceSettings.CalibrationPoint(Measured.of(0.5), "V", 0),
                        new TraceSettings.CalibrationPoint(Measured.of(2.5), "V", 2e6),
                        new TraceSettings.CalibrationPoint(Measured.of(4.5), "V", 5e6)),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    @Test
    void aCalibrationIsPiecewiseLinear() throws IOException {
        String text = "time [ms],sensor [mV]\n" + rows(i -> 2 * i + "," + (500 + 200 * i));
        Trace trace = read(text, calibrated()).trace();
        assertThat(trace.pressure(0)).isCloseTo(AMBIENT, within(1e-6));
        assertThat(trace.pressure(5)).isCloseTo(AMBIENT + 1e6, within(1e-6));
        assertThat(trace.pressure(10)).isCloseTo(AMBIENT + 2e6, within(1e-6));
        assertThat(trace.pressure(15)).isCloseTo(AMBIENT + 3.5e6, within(1e-6));
    }

    @Test
    void leavingTheCalibratedRangeIsTold() throws IOException {
        String text = "time [ms],sensor [V]\n" + rows(i -> 2 * i + "," + (0.5 + 0.25 * i));
        assertThat(read(text, calibrated()).findings()).singleElement().satisfies(finding -> {
            assertThat(finding.code()).isEqualTo(FindingCode.BEYOND_RANGE);
            assertThat(finding.message()).contains("3 samples", "0 to 5 MPa", "furthest reads 6.125 MPa at 0.038 s");
            assertThat(finding.message()).doesNotContain("unit");
        });
    }

    @Test
    void farBeyondTheCalibratedRangeTheUnitIsAskedFor() throws IOException {
        String text = "time [ms],sensor [V]\n" + rows(i -> 2 * i + "," + (0.5 + 2.5 * i));
        assertThat(read(text, calibrated()).findings())
                .filteredOn(finding -> finding.code() == FindingCode.BEYOND_RANGE)
                .singleElement()
                .satisfies(finding -> assertThat(finding.message()).contains("check the unit of the column"));
    }

    @Test
    void repeatedStampsAreAveraged() throws IOException {
        TraceReading.Read read = read("time [ms],p [bar]\n" + rows(i -> 2 * (i / 2) + "," + 0.5 * i), gauge());
        assertThat(read.trace().size()).isEqualTo(ROWS / 2);
        assertThat(read.trace().pressure(1)).isCloseTo(AMBIENT + 1.25e5, within(1e-9));
        assertThat(read.findings()).extracting(Finding::code).containsExactly(FindingCode.REPEATED_TIMESTAMP);
    }

    @Test
    void timeThatRunsBackwardIsRefusedWithItsLine() throws IOException {
        Finding finding = refused("time [ms],p [bar]\n" + rows(i -> (i < 15 ? i : i - 5) + ",1"), gauge());
        assertThat(finding.code()).isEqualTo(FindingCode.BACKWARD_TIME);
        assertThat(finding.message()).contains("t.csv:17", "0.014 s to 0.01 s");
    }

    @Test
    void gapsAndCellsWithoutReadingAreTold() throws IOException {
        TraceReading.Read gap = read("time [ms],p [bar]\n" + rows(i -> (i < 10 ? i : i + 7) + ",1"), gauge());
        assertThat(Spacing.judge(gap.trace().times())).singleElement().satisfies(finding -> {
            assertThat(finding.code()).isEqualTo(FindingCode.DROPPED_SAMPLES);
            assertThat(finding.message()).contains("7 samples are missing in 1 gaps", "0.008 s, at 0.009 s");
        });
        for (String cell : List.of("", "NaN", "inf", "-", "1e999", "#N/A")) {
            TraceReading.Read read =
                    read("time [ms],p [bar]\n" + rows(i -> 2 * i + "," + (i == 7 ? cell : "1")), gauge());
            assertThat(read.trace().size()).isEqualTo(ROWS - 1);
            assertThat(read.findings())
                    .anySatisfy(finding -> assertThat(finding.message()).contains("1 rows of t.csv", "line 9"));
        }
    }

    @Test
    void unevenSpacingIsANote() throws IOException {
        double[] jitter = {0, 0.4, -0.4, 0.3, -0.3};
        TraceReading.Read read = read("time [ms],p [bar]\n" + rows(i -> i + jitter[i % 5] + ",1"), gauge());
        assertThat(Spacing.judge(read.trace().times()))
                .extracting(Finding::code)
                .containsExactly(FindingCode.UNEVEN_SAMPLING);
    }

    @Test
    void aSlowerRateIsUnevenAndNotDropped() throws IOException {
        String text = "time [ms],p [bar]\n"
                + IntStream.range(0, 60)
                        .mapToObj(i -> (i < 40 ? i : 40 + 10 * (i - 40)) + ",1")
                        .collect(Collectors.joining("\n"));
        assertThat(Spacing.judge(read(text, gauge()).trace().times()))
                .extracting(Finding::code)
                .containsExactly(FindingCode.UNEVEN_SAMPLING);
    }

    @Test
    void theMissingEndOfTheLastLineDoesNotMatter() throws IOException {
        TraceReading.Read read = read("time [ms],p [bar]\n" + rows("%.1f,%.2f") + "40.0,", gauge());
        assertThat(read.trace().size()).isEqualTo(ROWS);
        assertThat(read.findings()).isEmpty();
        assertThat(read.notes()).anyMatch(note -> note.contains("incomplete"));
    }

    @Test
    void aRecordLongerThanTheBufferIsReadWhole() throws IOException {
        StringBuilder text = new StringBuilder("time [ms],p [bar],note\r\n");
        int rows = 100_000;
        for (int i = 0; i < rows; i++) {
            text.append(i).append(',').append(i * 1e-3).append(",abc\r\n");
        }
        Trace trace = read(text.toString(), gauge()).trace();
        assertThat(trace.size()).isEqualTo(rows);
        for (int i = 0; i < rows; i++) {
            assertThat(trace.time(i)).isEqualTo(i / 1000.0);
            assertThat(trace.pressure(i)).isEqualTo(i * 1e-3 * 1e5 + AMBIENT);
        }
    }
}
