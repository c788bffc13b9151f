package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.WrittenUnit;
import io.burnlaw.campaign.reading.TableColumns.Column;
import io.burnlaw.quantity.Dimension;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What people write in place of a column's name: {@code Throat dia (mm)}, {@code Dt [mm]}, {@code OD}, {@code No. of
 * segments}. Whatever is read so is said. A name that could be two columns is none of them.
 */
final class OtherHeadings {

    private static final Map<String, String> NAMES = names(
            "firing: id, test, test_id, shot, run, motor, motor_id, firing_id, fire",
            "formulation: propellant_id, mix, recipe_id, fuel",
            "batch: batch_id, cast, casting, pour, lot",
            "trace: file, filename, trace_file, data_file, record, log_file",
            "grain: grain_type, type, geometry, grain_shape, shape, kind",
            "segments: of_segments, segment, segs, grains, of_grains, n_segments, segment_count, grain_count",
            "outer_diameter: diameter_outer, od, outside_diameter, outer, outside, grain_od, grain_diameter, d_outer, do",
            "core_diameter: diameter_core, core, bore, bore_diameter, port, port_diameter, core_id, inner_diameter, d_core, dc",
            "rod_diameter: rod, d_rod",
            "segment_length: length_per_segment, length_of_segment, segment_l, l_segment, seg_length",
            "throat_diameter: diameter_throat, throat, nozzle_throat, nozzle_throat_diameter, d_throat, dt, d_t, throat_d",
            "throat_diameter_after: throat_after, throat_diameter_post, throat_post, dt_after, throat_diameter_end",
            "exit_diameter: diameter_exit, exit, nozzle_exit, nozzle_exit_diameter, d_exit, de, d_e, exit_d, exit_cone_diameter",
            "propellant_mass: propellant, propellant_weight, prop_mass, prop_weight, grain_mass, grain_weight, mass,"
                    + " weight, mp, m_p",
            "igniter_mass: igniter, igniter_weight, starter_mass, starter",
            "burn_time: burntime, tb, t_b, duration, time_of_burn",
            "grain_temperature: temperature, temp, grain_temp, propellant_temperature",
            "ambient_pressure: ambient, air_pressure, atmospheric_pressure, barometer",
            "chamber_volume: case_volume, empty_volume",
            "use: used",
            "note: notes, comment, comments, remark, remarks");

    /** Written as a column with a unit, these words mean a quantity; without one they name something. */
    private static final Set<String> NEED_A_UNIT = Set.of("propellant", "mass", "weight", "length", "igniter", "exit");

    private static final Pattern DIAMETER = Pattern.compile("[øØ⌀∅]|\\bdiam?\\b\\.?");
    private static final Pattern NUMBER = Pattern.compile("\\b(no|number|num|nr|qty)\\b\\.?|#");

    private OtherHeadings() {}

    private static Map<String, String> names(String... lines) {
        Map<String, String> names = new HashMap<>();
        for (String line : lines) {
            String[] parts = line.split(":");
            for (String other : parts[1].split(",")) {
                names.put(other.strip(), parts[0]);
            }
        }
        return Map.copyOf(names);
    }

    /**
     * The column that is meant.
     *
     * @param name    of the heading without its unit
     * @param unit    of the heading, where it has one that is known
     * @param columns that the table may have
     * @return empty where the words mean none of them, or where the unit is that of something else
     */
    static Optional<Column> meant(String name, Optional<WrittenUnit> unit, Map<String, Column> columns) {
        String plain = plain(name);
        Optional<Column> column = Optional.ofNullable(columns.get(plain))
                .or(() -> Optional.ofNullable(NAMES.get(plain)).map(columns::get));
        return column.filter(found -> fits(found, plain, unit));
    }

    private static boolean fits(Column column, String plain, Optional<WrittenUnit> unit) {
        Optional<Dimension> of = unit.map(written -> written.unit().dimension());
        if (NEED_A_UNIT.contains(plain) || of.isPresent()) {
            return of.isPresent() && of.equals(column.dimension());
        }
        return true;
    }

    /** Lower case, with {@code Ø} and {@code dia.} written out, without {@code No. of}, words joined by underscores. */
    private static String plain(String name) {
        String lower = Normalizer.normalize(name, Normalizer.Form.NFKC).toLowerCase(Locale.ROOT);
        String words =
                NUMBER.matcher(DIAMETER.matcher(lower).replaceAll(" diameter ")).replaceAll(" ");
        return words.replaceAll("[^a-z0-9]+", " ").strip().replace(' ', '_');
    }

    /**
     * A table whose first row holds units, with these in its headings.
     *
     * @return the table without that row; the same where the first row holds anything else
     */
    static TableText withUnitRow(TableText table) {
        if (table.lines().isEmpty()) {
            return table;
        }
        List<String> cells = table.lines().get(0).cells();
        List<String> headings = new ArrayList<>(table.headings());
        int units = 0;
        for (int i = 0; i < cells.size(); i++) {
            String cell = cells.get(i).replaceAll("^[\\[(]|[\\])]$", "").strip();
            if (cell.isEmpty() || cell.equals("-") || cell.equals("–")) {
                continue;
            }
            if (i >= headings.size() || WrittenUnit.of(cell).isEmpty()) {
                return table;
            }
            headings.set(i, headings.get(i) + " [" + cell + "]");
            units++;
        }
        if (units == 0) {
            return table;
        }
        List<String> notes = new ArrayList<>(table.notes());
        notes.add("%s: line %d contains the units of the columns."
                .formatted(table.file(), table.lines().get(0).line()));
        return new TableText(
                table.file(),
                table.headingLine(),
                headings,
                table.lines().subList(1, table.lines().size()),
                notes);
    }
}
