package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Excerpt;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.campaign.WrittenUnit;
import io.burnlaw.quantity.Spelling;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;

/** What the rows of all tables share: the campaign's head, the folder, and what other rows already took. */
final class RowContext {

    private static final int LONGEST_ID = 80;

    /** So many notes of a kind are read. */
    private static final int FEW = 3;

    private final CampaignHead head;
    private final boolean formulationsKnown;
    private final CampaignFolder folder;
    private final Map<String, String> ids = new HashMap<>();
    private final Map<String, String> traces = new HashMap<>();
    private final Map<String, String> batches = new HashMap<>();

    private final Set<String> named = new HashSet<>();
    private final List<String> free = new ArrayList<>();
    private boolean looked;
    private final List<String> notes = new ArrayList<>();

    RowContext(CampaignHead head, boolean formulationsKnown, CampaignFolder folder) {
        this.head = head;
        this.formulationsKnown = formulationsKnown;
        this.folder = folder;
    }

    CampaignHead head() {
        return head;
    }

    CampaignFolder folder() {
        return folder;
    }

    /** The id of the row; what is wrong with it is told. */
    String id(TableRow row, String column) {
        String id = row.required(column);
        String first = ids.putIfAbsent(id, "line " + row.line());
        if (id.isEmpty()) {
            return "line " + row.line();
        }
        boolean printable = Excerpt.of(id).equals(id) && id.length() <= LONGEST_ID;
        if (!printable || id.contains("/") || id.contains("\\")) {
            row.wrong(
                    column,
                    "this cannot be an id",
                    id,
                    "80 printable characters at most, without / and \\",
                    "rename it");
            id = Excerpt.of(id);
        }
        if (first != null) {
            row.wrong(
                    column,
                    "two rows have this id",
                    id + ", also on " + first,
                    "each id once",
                    "rename one of the two");
            return id + " (line " + row.line() + ")";
        }
        return id;
    }

    /** Keeps the casting that the row's propellant came from, where the row says. */
    void batch(TableRow row, String id) {
        row.text("batch").ifPresent(batch -> {
            if (!Excerpt.of(batch).equals(batch) || batch.length() > LONGEST_ID) {
                row.wrong(
                        "batch",
                        "this cannot be the name of a batch",
                        batch,
                        "80 printable characters at most",
                        "rename it");
            }
            batches.put(id, batch);
        });
    }

    Map<String, String> batches() {
        return batches;
    }

    String formulation(TableRow row) {
        String id = row.required("formulation");
        List<String> known = head.formulations().stream().map(Formulation::id).toList();
        if (formulationsKnown && !id.isEmpty() && !known.contains(id)) {
            row.wrong(
                    "formulation",
                    "campaign.yaml has no such formulation",
                    id,
                    "one of " + String.join(", ", known),
                    Spelling.mend(id, known, "describe it in campaign.yaml"));
        }
        return id;
    }

    /** The path of the record; it belongs to no other row, and is there unless the row is set aside. */
    Optional<String> trace(TableRow row, String id, Optional<String> setAside) {
        Optional<String> cell = row.text("trace");
        if (cell.isEmpty()) {
            return Optional.empty();
        }
        String written = cell.get();
        String path = written.replace('\\', '/');
        if (folder.locate(written) instanceof CampaignFolder.Location.NotFound missing) {
            Optional<String> meant = folder.meant(written);
            if (meant.isPresent()) {
                path = meant.get();
                notes.add("%s: the record %s was found as %s.".formatted(id, Excerpt.of(written), path));
            } else if (setAside.isEmpty()) {
                String mend = unused(written, id)
                        .map(near -> "write   " + Excerpt.of(near) + "   if that is the record: no other row names it")
                        .orElse(missing.mend());
                row.wrong("trace", missing.what(), written, missing.expected(), mend);
            }
        }
        String other = traces.putIfAbsent(path, id);
        if (other != null) {
            row.wrong(
                    "trace",
                    "this is already the record of " + Excerpt.of(other),
                    written,
                    "a record of its own",
                    "correct the path");
        }
        return Optional.of(path);
    }

    /** A record that no row names and that looks like the one meant, or like the row's own. */
    private Optional<String> unused(String written, String id) {
        if (!looked) {
            looked = true;
            Set<String> used = new HashSet<>(named);
            named.forEach(name -> folder.meant(name).ifPresent(used::add));
            folder.records().stream().filter(file -> !used.contains(file)).forEach(free::add);
        }
        String name = written.substring(written.replace('\\', '/').lastIndexOf('/') + 1);
        List<String> names = free.stream()
                .map(file -> file.substring(file.lastIndexOf('/') + 1))
                .toList();
        return Spelling.nearest(name, names)
                .or(() -> names.stream().filter(file -> file.contains(id)).findFirst())
                .map(near -> free.get(names.indexOf(near)));
    }

    /** Hears of all records that a table names, before its rows are read. */
    void names(TableColumns columns) {
        columns.lines()
                .forEach(line -> new TableRow(columns, line).text("trace").ifPresent(named::add));
    }

    /** {@return what was taken for something else than written, as sentences} */
    List<String> notes() {
        int more = notes.size() - FEW;
        return more < 2
                ? notes
                : Stream.concat(
                                notes.stream().limit(FEW),
                                Stream.of("%d more records were found in the same way.".formatted(more)))
                        .toList();
    }

    double ambientPressure(TableRow row) {
        return row.ambientPressure("ambient_pressure").orElse(head.ambient());
    }

    /** How the row's record is read: the campaign's block, with the row's own cells before it. */
    TraceSettings settings(TableRow row) {
        TraceSettings campaign = head.trace();
        Optional<SensorClass> sensor = row.sensor();
        List<TraceSettings.CalibrationPoint> calibration = calibration(row);
        return new TraceSettings(
                row.text("time").or(campaign::time),
                sampling(row, campaign),
                row.text("pressure").or(campaign::pressure),
                row.text("thrust").or(campaign::thrust),
                row.choice("pressure_kind", PressureKind.class).or(campaign::pressureKind),
                calibration.isEmpty() ? campaign.calibration() : calibration,
                sensor.map(s -> OptionalDouble.of(s.std())).orElseGet(campaign::pressureUncertainty),
                sensor.map(SensorClass::fullScale).orElseGet(campaign::fullScale));
    }

    private static OptionalDouble sampling(TableRow row, TraceSettings campaign) {
        Optional<String> cell = row.text("sampling");
        if (cell.isEmpty()) {
            return campaign.interval();
        }
        SamplingInterval.Reading reading = SamplingInterval.read(cell.get());
        reading.fault()
                .ifPresent(what ->
                        row.wrong("sampling", what, cell.get(), SamplingInterval.Reading.EXPECTED, "write   2 kHz"));
        return reading.interval();
    }

    private static List<TraceSettings.CalibrationPoint> calibration(TableRow row) {
        Optional<String> cell = row.text("calibration");
        if (cell.isEmpty()) {
            return new ArrayList<>();
        }
        Calibration.Reading reading = Calibration.read(Calibration.pairs(cell.get()));
        reading.fault()
                .ifPresent(
                        fault -> row.wrong("calibration", fault.what(), fault.found(), fault.expected(), fault.mend()));
        return reading.points();
    }

    /** The heading of the pressure column may say what it counts from, as in {@code p [psig]}. */
    static Optional<PressureKind> kindByHeading(TraceSettings settings) {
        return settings.pressure().flatMap(heading -> {
            int open = heading.lastIndexOf('[');
            int close = heading.lastIndexOf(']');
            return open >= 0 && close > open
                    ? WrittenUnit.of(heading.substring(open + 1, close)).flatMap(WrittenUnit::kind)
                    : Optional.empty();
        });
    }

    static boolean thrustOnly(TraceSettings settings) {
        return settings.thrust().isPresent()
                && settings.pressure().isEmpty()
                && settings.calibration().isEmpty();
    }
}
