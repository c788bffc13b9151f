package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Campaign.DirectPoint;
import io.burnlaw.campaign.Campaign.InputFile;
import io.burnlaw.campaign.Campaign.UnusableRow;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.Strand;
import io.burnlaw.campaign.reading.YamlDocument.YamlNode;
import io.burnlaw.finding.Outcome;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads a campaign folder: campaign.yaml and its tables. Records are only looked for; they are read one by one later. */
public final class CampaignReader {

    static final String CAMPAIGN = "campaign.yaml";

    private static final long MOST_YAML = 1L << 20;
    private static final long MOST_TABLE = 64L << 20;

    private final CampaignFolder folder;
    private final Path path;
    private final List<Problem> problems = new ArrayList<>();
    private final List<InputFile> inputs = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();

    private CampaignReader(Path path) {
        this.path = path;
        this.folder = new CampaignFolder(path);
    }

    /**
     * Reads a campaign.
     *
     * @param folder where it lies, or its campaign.yaml
     * @return the campaign, with the rows that cannot be used beside those that can; or every problem of all its files
     */
    public static Outcome<Campaign, Problem> read(Path folder) {
        boolean isFile = Files.isRegularFile(folder) && folder.endsWith(CAMPAIGN);
        Path path = isFile ? folder.toAbsolutePath().getParent() : folder;
        return new CampaignReader(path).read();
    }

    private Outcome<Campaign, Problem> read() {
        if (!Files.isDirectory(path)) {
            Path parent = path.toAbsolutePath().getParent();
            boolean inCampaign = parent != null && Files.exists(path) && Files.exists(parent.resolve(CAMPAIGN));
            problems.add(new Problem(
                    path.toString(),
                    0,
                    "",
                    Files.exists(path) ? "this is a file, not a folder" : "there is no such folder",
                    "",
                    "a folder with a campaign.yaml",
                    inCampaign ? "name the folder that contains it" : "check the path"));
            return new Outcome.Refused<>(problems);
        }
        Optional<YamlNode.Mapping> yaml = yaml();
        CampaignHead head =
                yaml.map(root -> CampaignHead.read(CAMPAIGN, root, problems)).orElseGet(CampaignHead::unstated);
        boolean formulationsKnown = !head.formulations().isEmpty();
        RowContext context = new RowContext(head, formulationsKnown, folder);
        Rows<Firing> firings = firingTable()
                .map(table -> FiringLog.read(table, context, inputs, problems))
                .orElseGet(Rows::none);
        Rows<DirectPoint> points = table("points.csv")
                .map(table -> PointTable.read(table, context, problems))
                .orElseGet(Rows::none);
        Rows<Strand> strands = table("strands.csv")
                .map(table -> StrandTable.read(table, context, problems))
                .orElseGet(Rows::none);
        List<UnusableRow> unusable = Stream.of(firings.unusable(), points.unusable(), strands.unusable())
                .flatMap(List::stream)
                .toList();
        boolean nothing = firings.usable().isEmpty()
                && points.usable().isEmpty()
                && strands.usable().isEmpty();
        if (!problems.isEmpty() || nothing) {
            return unusable(unusable);
        }
        if (head.ambientPressure().isEmpty()) {
            notes.add("No ambient pressure is stated; 101.325 kPa, the standard atmosphere, was assumed.");
        }
        Stream.of(firings.notes(), points.notes(), strands.notes(), context.notes())
                .forEach(notes::addAll);
        return new Outcome.Given<>(new Campaign(
                path,
                head.title(),
                head.preparedBy(),
                head.licence(),
                head.note(),
                head.ambient(),
                head.ambientPressure().isEmpty(),
                head.referenceTemperature(),
                head.formulations(),
                head.hardware(),
                head.reduction(),
                head.fit(),
                firings.usable(),
                points.usable(),
                strands.usable(),
                context.batches(),
                unusable,
                inputs,
                notes));
    }

    private Outcome<Campaign, Problem> unusable(List<UnusableRow> rows) {
        List<Problem> all = new ArrayList<>(problems);
        rows.forEach(row -> all.addAll(row.problems()));
        if (all.isEmpty()) {
            all.add(new Problem(
                    path.toString(),
                    0,
                    "",
                    "the campaign has no firing, no point and no strand",
                    "",
                    "firings.csv, points.csv or strands.csv with at least one row",
                    inputs.size() > 1 ? "add a row below the headings" : "add the table"));
        }
        return new Outcome.Refused<>(all);
    }

    private Optional<YamlNode.Mapping> yaml() {
        return bytes(CAMPAIGN, MOST_YAML, true).flatMap(bytes -> {
            Optional<DecodedText> decoded = DecodedText.of(bytes);
            if (decoded.isEmpty()) {
                problems.add(new Problem(
                        CAMPAIGN, 0, "", "this is not text", "", "keys and values as text", "save it as UTF-8 text"));
                return Optional.empty();
            }
            decoded.get().note().ifPresent(note -> notes.add(CAMPAIGN + ": " + note + "."));
            return YamlDocument.read(CAMPAIGN, decoded.get().text(), problems);
        });
    }

    /** The log is text or a workbook; two logs would contradict each other. */
    private Optional<TableText> firingTable() {
        boolean text = exists("firings.csv");
        boolean workbook = exists("firings.xlsx");
        if (text && workbook) {
            problems.add(new Problem(
                    "firings.xlsx",
                    0,
                    "",
                    "there are two firing logs",
                    "firings.csv and firings.xlsx",
                    "one of them",
                    "move the other out of the folder"));
        }
        return text
                ? table("firings.csv")
                : bytes("firings.xlsx", MOST_TABLE, false)
                        .flatMap(bytes -> XlsxTable.read("firings.xlsx", bytes, problems));
    }

    private Optional<TableText> table(String name) {
        return bytes(name, MOST_TABLE, false).flatMap(bytes -> CsvTable.read(name, bytes, problems));
    }

    private boolean exists(String name) {
        return Files.exists(path.resolve(name), LinkOption.NOFOLLOW_LINKS);
    }

    private Optional<byte[]> bytes(String name, long most, boolean required) {
        if (!required && !exists(name)) {
            return Optional.empty();
        }
        CampaignFolder.Location location = folder.locate(name);
        if (location instanceof CampaignFolder.Location.NotFound missing) {
            problems.add(new Problem(name, 0, "", missing.what(), "", missing.expected(), missing.mend()));
            return Optional.empty();
        }
        Optional<byte[]> bytes = FileBytes.read(name, (CampaignFolder.Location.Found) location, most, problems);
        bytes.ifPresent(read -> inputs.add(FileBytes.input(name, read)));
        return bytes;
    }

    /** Reads a table from the first sheet of a workbook. */
    private static final class XlsxTable {

        private XlsxTable() {}

        /**
         * Reads a table.
         *
         * @param problems where what is wrong is added
         * @return the table; empty where there is none
         */
        static Optional<TableText> read(String file, byte[] bytes, List<Problem> problems) {
            Optional<List<Workbook.SheetRow>> sheet = Workbook.firstSheet(bytes, TableText.MOST_ROWS);
            if (sheet.isEmpty()) {
                problems.add(new Problem(
                        file,
                        0,
                        "",
                        "this is not a workbook, or it is too large",
                        "",
                        "a workbook with the table on its first sheet",
                        "save it again as .xlsx, or as CSV"));
                return Optional.empty();
            }
            List<Workbook.SheetRow> rows = sheet.get().stream()
                    .filter(row -> !row.cells().get(0).startsWith("#"))
                    .toList();
            if (rows.isEmpty()) {
                problems.add(new Problem(
                        file,
                        0,
                        "",
                        "the first sheet is empty",
                        "",
                        "a row of headings, and rows below it",
                        "fill it in"));
                return Optional.empty();
            }
            if (rows.size() > TableText.MOST_ROWS) {
                problems.add(CsvTable.tooManyRows(file));
                return Optional.empty();
            }
            Workbook.SheetRow headings = rows.get(0);
            List<TableText.Line> lines = new ArrayList<>();
            for (Workbook.SheetRow row : rows.subList(1, rows.size())) {
                lines.add(new TableText.Line(
                        row.number(), fitted(row.cells(), headings.cells().size())));
            }
            return Optional.of(new TableText(
                    file,
                    headings.number(),
                    headings.cells(),
                    lines,
                    List.of("%s: the first sheet was read.".formatted(file))));
        }

        /** A sheet stores no empty cells at the end of a row. */
        private static List<String> fitted(List<String> cells, int width) {
            List<String> fitted = new ArrayList<>(cells);
            while (fitted.size() < width) {
                fitted.add("");
            }
            while (fitted.size() > width && fitted.get(fitted.size() - 1).isEmpty()) {
                fitted.remove(fitted.size() - 1);
            }
            return fitted;
        }
    }
}
