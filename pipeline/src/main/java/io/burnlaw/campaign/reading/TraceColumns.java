package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.campaign.reading.TableColumns.Column;
import java.util.List;

/** The columns that say how a row's record is read. */
final class TraceColumns {

    /** Named as the keys of the block {@code trace} in campaign.yaml. */
    static final List<Column> ALL =
            CampaignKeys.TRACE.stream().map(Column::text).toList();

    private TraceColumns() {}

    /** Nobody may guess whether a pressure is gauge or absolute: at low pressure it changes the exponent. */
    static void requireKind(String table, int line, TraceSettings settings, List<Problem> problems) {
        boolean known = settings.pressureKind().isPresent()
                || RowContext.kindByHeading(settings).isPresent()
                || RowContext.thrustOnly(settings);
        if (!known && problems.stream().noneMatch(problem -> problem.place().equals("trace.pressure_kind"))) {
            problems.add(new Problem(
                    "campaign.yaml",
                    0,
                    "trace.pressure_kind",
                    "it is not stated whether the pressures are gauge or absolute",
                    "for %s:%d and perhaps other records".formatted(table, line),
                    "gauge (reads 0 in open air) or absolute (reads about 100 kPa there)",
                    "write   pressure_kind: gauge   below trace:"));
        }
    }
}
