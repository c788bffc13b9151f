package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.campaign.reading.TableColumns.Column;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Quantity;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** A single record without a campaign: its options are read like a row of the firing log. */
public final class OneRecord {

    private static final String FORMULATION = "propellant";
    private static final String DENSITY = "density";

    private OneRecord() {}

    /**
     * What is known of a record.
     *
     * @param campaign with the record as its only firing, where a grain was described
     * @param settings how the record is read
     * @param ambient  pressure on the day [Pa, absolute]
     * @param problems what is wrong with what was said; nothing else counts where there is one
     */
    public record Reading(Optional<Campaign> campaign, TraceSettings settings, double ambient, List<Problem> problems) {
        public Reading {
            problems = List.copyOf(problems);
        }
    }

    /**
     * Reads what is said of a record; the record itself is not opened.
     *
     * @param folder where the record is
     * @param said   by column of the firing log, each value with its unit; {@code density} beside them
     */
    public static Reading read(Path folder, String name, Map<String, String> said) {
        List<Problem> problems = new ArrayList<>();
        List<String> headings = new ArrayList<>(List.of("firing", "formulation", "trace"));
        List<String> cells = new ArrayList<>(List.of(name, FORMULATION, name));
        said.forEach((column, value) -> {
            if (!column.equals(DENSITY)) {
                headings.add(column);
                cells.add(value);
            }
        });
        TableText table = new TableText("the options", 0, headings, List.of(new TableText.Line(0, cells)), List.of());
        CampaignHead head = head(name, said.get(DENSITY), problems);
        RowContext context = new RowContext(head, true, new CampaignFolder(folder));
        if (said.containsKey("grain")) {
            Rows<Firing> rows = FiringLog.read(table, context, new ArrayList<>(), problems);
            rows.unusable().forEach(row -> problems.addAll(row.problems()));
            // the file may say it itself, and is asked later
            problems.removeIf(problem -> problem.place().equals("trace.pressure_kind"));
            if (!rows.usable().isEmpty() && problems.isEmpty()) {
                Firing firing = rows.usable().get(0);
                return new Reading(
                        Optional.of(campaign(folder, head, firing)),
                        firing.settings(),
                        firing.ambientPressure(),
                        problems);
            }
            return new Reading(Optional.empty(), head.trace(), head.ambient(), problems);
        }
        List<Column> columns = new ArrayList<>(TraceColumns.ALL);
        columns.addAll(List.of(Column.text("firing"), Column.text("formulation"), Column.text("trace")));
        columns.add(Column.of("ambient_pressure", Dimension.PRESSURE));
        TableColumns known = TableColumns.of(table, columns, problems);
        TableRow row = new TableRow(known, known.lines().get(0));
        TraceSettings settings = context.settings(row);
        double ambient = context.ambientPressure(row);
        problems.addAll(row.problems());
        return new Reading(Optional.empty(), settings, ambient, problems);
    }

    private static CampaignHead head(String title, String density, List<Problem> problems) {
        Optional<Measured> stated = Optional.ofNullable(density)
                .flatMap(text -> Quantity.read(text, Dimension.DENSITY)
                        .match(read -> Optional.of(read.quantity().si()), misread -> {
                            problems.add(new Problem(
                                    "the options",
                                    0,
                                    DENSITY,
                                    misread.what(),
                                    text,
                                    misread.expected(),
                                    misread.mend()));
                            return Optional.<Measured>empty();
                        }));
        return CampaignHead.bare(
                title,
                List.of(new Formulation(
                        FORMULATION,
                        FORMULATION,
                        stated,
                        false,
                        Optional.empty(),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Optional.empty())),
                TraceSettings.unstated());
    }

    private static Campaign campaign(Path folder, CampaignHead head, Firing firing) {
        return new Campaign(
                folder,
                head.title(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                head.ambient(),
                true,
                OptionalDouble.empty(),
                head.formulations(),
                head.hardware(),
                head.reduction(),
                head.fit(),
                List.of(firing),
                List.of(),
                List.of(),
                Map.of(),
                List.of(),
                List.of(),
                List.of());
    }
}
