package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Campaign.InputFile;
import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.reading.TableColumns.Column;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A table of burning surface by web burned, computed or measured by the user.
 *
 * @param points   in rising order of the web
 * @param problems what is wrong with the table
 * @param notFound why it is not there, if it is not
 */
public record SurfaceFile(
        List<GrainDescription.SurfacePoint> points,
        List<Problem> problems,
        Optional<CampaignFolder.Location.NotFound> notFound) {

    private static final long MOST_BYTES = 16L << 20;

    public SurfaceFile {
        points = List.copyOf(points);
        problems = List.copyOf(problems);
    }

    /**
     * Reads a table of {@code web [mm], area [mm2]}.
     *
     * @param path   below the folder
     * @param inputs gets the file with its checksum
     * @return the table, or what is wrong with it
     */
    public static SurfaceFile read(String path, CampaignFolder folder, List<InputFile> inputs) {
        CampaignFolder.Location location = folder.locate(path);
        if (location instanceof CampaignFolder.Location.NotFound missing) {
            return new SurfaceFile(List.of(), List.of(), Optional.of(missing));
        }
        List<Problem> problems = new ArrayList<>();
        List<GrainDescription.SurfacePoint> points = new ArrayList<>();
        FileBytes.read(path, (CampaignFolder.Location.Found) location, MOST_BYTES, problems)
                .ifPresent(bytes -> {
                    inputs.add(FileBytes.input(path, bytes));
                    CsvTable.read(path, bytes, problems).ifPresent(table -> points.addAll(points(table, problems)));
                });
        return new SurfaceFile(points, problems, Optional.empty());
    }

    private static List<GrainDescription.SurfacePoint> points(TableText table, List<Problem> problems) {
        TableColumns columns = TableColumns.of(
                table,
                List.of(
                        Column.of("web", Dimension.LENGTH).needed(),
                        Column.of("area", Dimension.AREA).needed()),
                problems);
        List<GrainDescription.SurfacePoint> points = new ArrayList<>();
        double last = Double.NEGATIVE_INFINITY;
        for (TableText.Line line : table.lines()) {
            TableRow row = new TableRow(columns, line);
            Optional<Measured> web = row.measured("web");
            Optional<Measured> area = row.measured("area");
            if (web.isPresent() && !(web.get().value() >= 0 && web.get().value() > last)) {
                row.wrong("web", "the web does not rise", "0, then rising values", "sort the rows");
            }
            if (area.isPresent() && !(area.get().value() >= 0)) {
                row.wrong("area", "the area is negative", "zero or more", "correct it");
            }
            if (row.problems().isEmpty() && (web.isEmpty() || area.isEmpty())) {
                row.wrong("", "a cell is empty", "", "a web and an area", "fill it in or delete the row");
            }
            problems.addAll(row.problems());
            if (web.isPresent() && area.isPresent()) {
                last = web.get().value();
                points.add(new GrainDescription.SurfacePoint(
                        web.get().value(), area.get().value()));
            }
        }
        if (problems.isEmpty() && (points.size() < 2 || points.get(0).web() != 0)) {
            problems.add(new Problem(
                    table.file(),
                    table.headingLine(),
                    "",
                    "the table does not span the web",
                    points.size() + " rows",
                    "two rows at least, the first one at web 0",
                    "add the missing rows"));
        }
        return points;
    }
}
