package io.burnlaw.trace.reading;

import io.burnlaw.campaign.Campaign.InputFile;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.campaign.reading.CampaignFolder;
import io.burnlaw.campaign.reading.Workbook;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.quantity.Unit;
import io.burnlaw.trace.Trace;
import io.burnlaw.trace.reading.TimeStamps.CounterWrap;
import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.zip.ZipException;

/** Reads the record of one firing: text (plain or gzip), the first sheet of a workbook, or a Matlab file of level 5. */
public final class TraceReader {

    /** Fewer samples than these time no burn. */
    private static final int FEWEST_SAMPLES = 10;

    /** A larger share of rows without a reading makes a record useless [1]. */
    private static final double MOST_WITHOUT = 0.2;

    /** No pressure [Pa], thrust [N] or time [s] is as large; squares of what is read stay far from overflow. */
    private static final double IMPOSSIBLE = 1e12;

    private TraceReader() {}

    /**
     * Reads a record.
     *
     * @param campaignFolder  below which it lies; nothing outside is opened
     * @param tracePath       of the record below the folder
     * @param settings        how it is to be read
     * @param ambientPressure on the day [Pa, absolute]
     * @return the record with absolute pressures and rising times, or why there is none; never an exception for what a
     *         file can contain
     */
    public static TraceReading read(
            Path campaignFolder, String id, String tracePath, TraceSettings settings, double ambientPressure) {
        CampaignFolder.Location location = new CampaignFolder(campaignFolder).locate(tracePath);
        if (location instanceof CampaignFolder.Location.NotFound missing) {
            return unreadable(new Problem(tracePath, 0, "", missing.what(), "", missing.expected(), missing.mend()));
        }
        return read((CampaignFolder.Location.Found) location, id, tracePath, settings, ambientPressure);
    }

    /** The same of a file that was found before, with the size that it had then. */
    static TraceReading read(
            CampaignFolder.Location.Found found,
            String id,
            String tracePath,
            TraceSettings settings,
            double ambientPressure) {
        try (RecordFile file = RecordFile.open(tracePath, found)) {
            Decoded decoded = decode(tracePath, file, settings);
            InputFile input = file.finish();
            if (input.bytes() != found.bytes() || Files.size(found.file()) != found.bytes()) {
                throw Refusal.of(
                        tracePath,
                        0,
                        "the file changed while it was read",
                        "a finished record",
                        "wait until the logger has closed it, and run again");
            }
            return assembled(id, tracePath, settings, ambientPressure, decoded, input);
        } catch (Refusal refusal) {
            return unreadable(refusal.problem());
        } catch (ZipException | EOFException e) {
            return unreadable(new Problem(
                    tracePath,
                    0,
                    "",
                    "the packed file is damaged",
                    "",
                    "a file that can be unpacked",
                    "pack it again, or leave it unpacked"));
        } catch (IOException e) {
            return unreadable(new Problem(
                    tracePath,
                    0,
                    "",
                    "the file cannot be read",
                    "",
                    "a readable file",
                    "check that it is still there and may be read"));
        }
    }

    /** The columns in the units of the file. */
    record Decoded(RawRecord record, ColumnChoice columns, List<String> notes) {}

    private static Decoded decode(String path, RecordFile file, TraceSettings settings) throws IOException, Refusal {
        if (file.isTdms() || file.isHdf5()) {
            throw Refusal.of(
                    path,
                    0,
                    file.isTdms() ? "TDMS is not supported" : "HDF5 (Matlab's -v7.3) is not supported",
                    "text, .xlsx, or a Matlab file saved with -v6 or -v7",
                    "export the record as text");
        }
        if (file.isMatlab()) {
            return MatRecord.read(path, file.whole(), settings);
        }
        TextRecord.Outcome outcome = TextRecord.read(
                path,
                file.isPackage() ? SheetRecord.text(path, file.whole()) : file.text(),
                layout -> ColumnChoice.of(
                        path, Math.max(1, layout.firstLine() - 1), layout.headings(), layout.rows(), settings));
        List<String> notes = new ArrayList<>(outcome.layout().notes());
        notes.addAll(outcome.columns().notes());
        notes.addAll(outcome.record().notes());
        return new Decoded(outcome.record(), outcome.columns(), notes);
    }

    private static TraceReading assembled(
            String id, String path, TraceSettings settings, double ambient, Decoded decoded, InputFile input)
            throws Refusal {
        RawRecord raw = decoded.record();
        ColumnChoice columns = decoded.columns();
        int rows = raw.time().length;
        if (rows < FEWEST_SAMPLES) {
            throw Refusal.of(
                    path,
                    0,
                    "there are " + rows + " rows with readings",
                    "at least " + FEWEST_SAMPLES,
                    "export the whole record");
        }
        if (raw.withoutValue() > MOST_WITHOUT * (rows + raw.withoutValue())) {
            throw Refusal.of(
                    path,
                    raw.firstWithout(),
                    "%d of %d rows have no reading".formatted(raw.withoutValue(), rows + raw.withoutValue()),
                    "a number in each row",
                    "check the sensor's connection, or name another column");
        }
        double[] time = raw.time();
        List<String> notes = new ArrayList<>(decoded.notes());
        if (columns.timeUnit().isPresent()) {
            CounterWrap.continued(time).ifPresent(said -> notes.add(path + ": " + said));
            toSi(time, columns.timeUnit().get());
        }
        columns.interval().ifPresent(interval -> Arrays.setAll(time, i -> time[i] * interval));
        List<Finding> findings = new ArrayList<>();
        TimeStamps.withoutReading(raw, path).ifPresent(findings::add);
        Optional<double[]> pressure = raw.pressure();
        if (pressure.isPresent()) {
            PressureScale scale = new PressureScale(
                    columns.pressure().orElseThrow().unit(),
                    settings,
                    columns.kind().orElseThrow(),
                    ambient);
            scale.apply(pressure.get());
            scale.beyond(time, pressure.get()).ifPresent(findings::add);
        }
        raw.thrust()
                .ifPresent(values -> toSi(values, columns.thrust().orElseThrow().unit()));
        possible(path, "time", time, "s");
        if (pressure.isPresent()) {
            possible(path, "pressure", pressure.get(), "Pa");
        }
        if (raw.thrust().isPresent()) {
            possible(path, "thrust", raw.thrust().get(), "N");
        }
        TimeStamps.Ordered ordered = TimeStamps.order(Trace.owning(id, time, pressure, raw.thrust()));
        findings.addAll(ordered.findings());
        if (ordered.trace().isEmpty()) {
            return new TraceReading.Unreadable(
                    List.of(located(path, raw, ordered.findings().get(0), whyBackward(time, pressure))),
                    Optional.empty());
        }
        return new TraceReading.Read(ordered.trace().get(), input, findings, notes);
    }

    private static void possible(String path, String name, double[] values, String unit) throws Refusal {
        for (int i = 0; i < values.length; i++) {
            if (!(Math.abs(values[i]) < IMPOSSIBLE)) {
                throw Refusal.of(
                        path,
                        0,
                        Double.isFinite(values[i])
                                ? Sentence.of("sample %d has a %s of %.2e %s", i + 1, name, values[i], unit)
                                : Sentence.of("sample %d has a %s that is too large to be a number", i + 1, name),
                        Sentence.of("numbers below %.0e %s", IMPOSSIBLE, unit),
                        "check the format of the numbers, and the units");
            }
        }
    }

    /** What explains times that run backward without a clock that was set; a sentence with a blank before it, or nothing. */
    private static String whyBackward(double[] time, Optional<double[]> pressure) {
        if (IntStream.range(1, time.length).allMatch(i -> time[i] < time[i - 1])) {
            return " The times fall throughout: the record is in reverse order.";
        }
        boolean exchanged = pressure.filter(
                        values -> IntStream.range(1, values.length).allMatch(i -> values[i] > values[i - 1]))
                .isPresent();
        return exchanged
                ? " The pressure column rises with every sample: check whether the headings of time and pressure"
                        + " were exchanged."
                : "";
    }

    private static Finding located(String path, RawRecord raw, Finding backward, String why) {
        String line = raw.backwardLine().isPresent() ? ":" + raw.backwardLine().getAsInt() : "";
        return new Finding(
                backward.code(), backward.severity(), path + line + ": " + backward.message() + why, backward.at());
    }

    private static void toSi(double[] values, Unit unit) {
        if (unit.toSi(1) == 1 && unit.toSi(0) == 0) {
            return;
        }
        for (int i = 0; i < values.length; i++) {
            values[i] = unit.toSi(values[i]);
        }
    }

    private static TraceReading unreadable(Problem problem) {
        return new TraceReading.Unreadable(
                List.of(Finding.of(FindingCode.UNREADABLE_TRACE, problem.sentence())), Optional.of(problem));
    }

    /** A record on the first sheet of a workbook: its cells become text with tabs between them. */
    private static final class SheetRecord {

        /** A sheet has no more rows. */
        private static final int MOST_ROWS = 1 << 20;

        private SheetRecord() {}

        static InputStream text(String file, byte[] bytes) throws Refusal {
            Optional<List<Workbook.SheetRow>> rows = Workbook.firstSheet(bytes, MOST_ROWS);
            if (rows.isEmpty()) {
                throw Refusal.of(
                        file,
                        0,
                        "this is not a workbook, or it is too large",
                        "a workbook with the record on its first sheet",
                        "export the record as text");
            }
            // A remark in one row only leaves the others shorter: a table has one width.
            int width = rows.get().stream()
                    .mapToInt(row -> row.cells().size())
                    .max()
                    .orElse(0);
            StringBuilder text = new StringBuilder();
            int line = 1;
            for (Workbook.SheetRow row : rows.get()) {
                for (; line < row.number(); line++) {
                    text.append('\n');
                }
                text.append(row.cells().stream()
                        .map(cell -> cell.replaceAll("[\\t\\r\\n]", " "))
                        .collect(Collectors.joining("\t")));
                if (row.cells().size() > 1) {
                    text.append("\t".repeat(width - row.cells().size()));
                }
            }
            return new ByteArrayInputStream(text.append('\n').toString().getBytes(StandardCharsets.UTF_8));
        }
    }
}
