package io.burnlaw.cli;

import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.campaign.reading.OneRecord;
import io.burnlaw.characterize.RecordLook;
import io.burnlaw.publish.RecordDocument;
import io.burnlaw.trace.reading.TraceReader;
import io.burnlaw.trace.reading.TraceReading;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Records that lie in a folder, with what could be read of each, as the beginning of a campaign. */
final class FoundRecords {

    /** More files are no series of firings. */
    private static final int MOST = 500;

    private final List<Found> all;

    private FoundRecords(List<Found> all) {
        this.all = all;
    }

    /**
     * One record.
     *
     * @param summary what could be read of it, or why it could not
     */
    record Found(Path file, String summary, Optional<Problem> problem) {

        String name() {
            return file.getFileName().toString();
        }
    }

    /**
     * Looks at the records of a folder.
     *
     * @return in the order of their names
     * @throws IOException if the folder cannot be read
     */
    static FoundRecords in(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return new FoundRecords(files.filter(file -> Stray.isRecord(file.toString()))
                    .filter(file -> !file.getFileName()
                            .toString()
                            .toLowerCase(java.util.Locale.ROOT)
                            .startsWith("readme"))
                    .sorted()
                    .limit(MOST)
                    .map(FoundRecords::look)
                    .toList());
        }
    }

    List<Found> all() {
        return all;
    }

    private static Found look(Path file) {
        Path absolute = file.toAbsolutePath().normalize();
        String name = absolute.getFileName().toString();
        OneRecord.Reading asked = OneRecord.read(absolute.getParent(), name, Map.of());
        TraceSettings settings = asked.settings().of(PressureKind.GAUGE);
        TraceReading first = TraceReader.read(absolute.getParent(), name, name, settings, asked.ambient());
        // a unit such as psia says it itself
        TraceReading reading = first instanceof TraceReading.Unreadable
                ? TraceReader.read(absolute.getParent(), name, name, asked.settings(), asked.ambient())
                : first;
        TraceReading last = reading instanceof TraceReading.Unreadable ? first : reading;
        return last.match(
                read -> new Found(
                        file, RecordDocument.summary(RecordLook.of(read, asked.ambient(), settings)), Optional.empty()),
                unreadable -> new Found(
                        file,
                        "not read yet: "
                                + unreadable
                                        .problem()
                                        .map(Problem::what)
                                        .orElse(unreadable.findings().get(0).message()),
                        unreadable.problem()));
    }

    /** The log: a row for each record, whose grains are left to be filled in. */
    String log(String headings) {
        int columns = headings.split(",").length;
        return all.stream()
                .map(found -> quoted(stem(found.name())) + ",base," + quoted("traces/" + found.name())
                        + ",".repeat(columns - 3) + quoted(found.summary()))
                .collect(Collectors.joining("\n", headings + "\n", "\n"));
    }

    /**
     * The lines that the records leave open, as remarks to be filled in below {@code trace:}.
     *
     * @return lines with their ends; nothing where all could be read
     */
    String open() {
        return all.stream()
                .filter(found -> found.problem()
                        .filter(problem -> problem.mend().contains("\n"))
                        .isPresent())
                .findFirst()
                .map(found -> "  # " + found.name() + " shows   "
                        + found.problem().get().found() + "\n"
                        + found.problem()
                                .get()
                                .mend()
                                .lines()
                                .skip(1)
                                .map(line -> "  # " + line + "\n")
                                .collect(Collectors.joining()))
                .orElse("");
    }

    private static String stem(String name) {
        return name.replaceFirst("(\\.[A-Za-z0-9]{1,4})+$", "");
    }

    private static String quoted(String cell) {
        return cell.matches("[^,\"\\r\\n]*") ? cell : '"' + cell.replace("\"", "\"\"") + '"';
    }
}
