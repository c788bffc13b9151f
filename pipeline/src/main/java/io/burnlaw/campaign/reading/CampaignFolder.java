package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Excerpt;
import io.burnlaw.quantity.Spelling;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The folder with all files of a campaign; no file outside of it is ever opened. */
public final class CampaignFolder {

    /** More names than these are not searched for one that was meant. */
    private static final int NAMES_LOOKED_AT = 10_000;

    private static final String TRACES = "traces/";
    private static final String ANY_ENDING = ".*";
    private static final Pattern NO_RECORD =
            Pattern.compile("(?i)(.*/)?(readme.*|\\..*|campaign\\..*|(firings|points|strands)\\.(csv|xlsx))");

    private final Path folder;
    private final Map<String, List<String>> bySpelling = new HashMap<>();

    /** Makes a folder; it need not exist. */
    public CampaignFolder(Path folder) {
        this.folder = folder;
    }

    /** Where a path of the log leads: to a file, or nowhere. */
    public sealed interface Location {

        /** An ordinary file below the folder. */
        record Found(Path file, long bytes) implements Location {}

        /**
         * There is none that may be read.
         *
         * @param expected what should stand there
         * @param mend     what to write or do
         */
        record NotFound(String what, String expected, String mend) implements Location {}
    }

    /**
     * Finds a file.
     *
     * @param written its path below the folder, with {@code /} or {@code \}
     * @return the file, or why it cannot be read
     */
    public Location locate(String written) {
        Path relative;
        Path target;
        try {
            relative = Path.of(written.replace('\\', '/'));
            target = here().resolve(relative).normalize();
        } catch (InvalidPathException e) {
            return new Location.NotFound(
                    "this cannot be a path" + localeAsCause(), "a path below the campaign folder", "correct the path");
        }
        boolean drive = written.length() > 1 && written.charAt(1) == ':';
        if (relative.isAbsolute() || drive || !target.startsWith(here()) || written.isBlank()) {
            return outside();
        }
        try {
            Path real = target.toRealPath();
            if (!real.startsWith(folder.toRealPath())) {
                return outside();
            }
            if (!Files.isRegularFile(real)) {
                return new Location.NotFound("this is not an ordinary file", "a file", "name the file itself");
            }
            if (!Files.isReadable(real)) {
                return new Location.NotFound(
                        "there is no permission to read the file", "a readable file", "change its permissions");
            }
            return new Location.Found(real, Files.size(real));
        } catch (NoSuchFileException e) {
            return missing(written, target);
        } catch (IOException e) {
            return new Location.NotFound(
                    "the file cannot be reached", "a readable file", "check the file and the links that lead to it");
        }
    }

    /**
     * The record that a row means: people write it without its folder, without its ending, with the capitals or the path
     * of another machine.
     *
     * @return its path below the folder, with {@code /}; empty where no file, or more than one, can be meant
     */
    Optional<String> meant(String written) {
        String path = written.strip().replace('\\', '/').toLowerCase(Locale.ROOT);
        String inTraces = TRACES + path.substring(path.lastIndexOf('/') + 1);
        return Stream.of(path, TRACES + path, inTraces, inTraces + ANY_ENDING)
                .filter(bySpelling()::containsKey)
                .findFirst()
                .map(bySpelling()::get)
                .filter(alike -> alike.size() == 1)
                .map(alike -> alike.get(0));
    }

    /** The records by their paths in small letters, and those in traces/ also by their paths without the ending. */
    private Map<String, List<String>> bySpelling() {
        if (bySpelling.isEmpty()) {
            for (String record : records()) {
                String path = record.toLowerCase(Locale.ROOT);
                String bare = path.replaceFirst("(\\.[^./]*)+$", "") + ANY_ENDING;
                Stream.of(path, bare)
                        .forEach(spelling -> bySpelling
                                .computeIfAbsent(spelling, key -> new ArrayList<>())
                                .add(record));
            }
        }
        return bySpelling;
    }

    /** {@return what lies in traces/ and beside campaign.yaml and can be a record, by its path, in order} */
    List<String> records() {
        return Stream.concat(names(here().resolve(TRACES)).stream().map(TRACES::concat), names(here()).stream())
                .filter(name -> !NO_RECORD.matcher(name).matches())
                .filter(name -> Files.isRegularFile(here().resolve(name)))
                .toList();
    }

    /**
     * Whether the locale is the reason why a name cannot be used: Java takes the letters of names from it.
     *
     * @return what to do, to be put behind a message; nothing where the locale knows all letters
     */
    public static String localeAsCause() {
        return System.getProperty("sun.jnu.encoding", "UTF-8")
                        .toUpperCase(Locale.ROOT)
                        .startsWith("UTF")
                ? ""
                : ": the locale of this system has only ASCII letters; set LC_ALL=C.UTF-8 and try again";
    }

    private static Location outside() {
        return new Location.NotFound(
                "the path leaves the campaign folder",
                "a path below the campaign folder",
                "copy the file into the campaign folder");
    }

    private Location missing(String written, Path target) {
        String mend = "check the path";
        Path parent = target.getParent();
        Path name = target.getFileName();
        if (parent != null && name != null && Files.isDirectory(parent)) {
            mend = Spelling.nearest(name.toString(), names(parent))
                    .map(near -> here().relativize(parent.resolve(near)))
                    .map(near -> "write   " + Excerpt.of(near.toString().replace('\\', '/')))
                    .orElse(mend);
        }
        return new Location.NotFound("there is no such file", "a file below the campaign folder", mend);
    }

    private static List<String> names(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.limit(NAMES_LOOKED_AT)
                    .map(file -> String.valueOf(file.getFileName()))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            return List.of();
        }
    }

    /** Absolute, since the folder "." has no name that a path below it could begin with. */
    private Path here() {
        return folder.toAbsolutePath().normalize();
    }
}
