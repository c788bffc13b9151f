package io.burnlaw.cli;

import io.burnlaw.report.OwnFolder;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.DocumentReading;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** Where the reports of the campaigns go, decided before any work is done, so that nobody's files are swept away. */
final class OutputFolders {

    private static final String DOCUMENT = "burnlaw.json";

    private OutputFolders() {}

    /**
     * One output folder a campaign: the named one for a single campaign, else one each below it.
     *
     * @param campaigns folders, at least one
     * @param output    as named by the user; where absent, the campaign's name with {@code -report} beside nothing else
     * @return campaign to output folder, in order
     * @throws Refused with a message, where two would share a folder or one would sweep away something that is no report
     */
    static Map<Path, Path> of(List<Path> campaigns, Optional<Path> output) throws Refused {
        Map<Path, Path> folders = new LinkedHashMap<>();
        Set<Path> taken = new HashSet<>();
        List<String> refusals = new ArrayList<>();
        for (Path campaign : campaigns) {
            String name = name(campaign);
            Path folder = campaigns.size() == 1
                    ? output.orElse(Path.of(name + "-report"))
                    : output.orElse(Path.of("reports")).resolve(name);
            if (!taken.add(real(folder))) {
                refusals.add("two campaigns are called " + name + ": run them one by one, each with its own -o");
            }
            if (real(campaign).startsWith(real(folder))) {
                boolean same = real(campaign).equals(real(folder));
                refusals.add("the report would replace the campaign: " + folder
                        + (same ? " is its own folder" : " contains " + campaign) + "; name another folder with -o");
            } else {
                OwnFolder.refusal(folder, OwnFolder.Kind.REPORT).ifPresent(refusals::add);
            }
            folders.put(campaign, folder);
        }
        if (!refusals.isEmpty()) {
            throw new Refused(String.join(System.lineSeparator() + "burnlaw: ", refusals));
        }
        return folders;
    }

    /**
     * Reads a document; a report that a killed run left renamed aside is put back first.
     *
     * @param named burnlaw.json, a page that carries it, or the folder of a report
     * @return the document, or why there is none
     */
    static DocumentReading document(Path named) {
        OwnFolder.putBack(named);
        Path file = isReport(named) ? named.resolve(DOCUMENT) : named;
        Path folder = file.toAbsolutePath().normalize().getParent();
        if (folder != null) {
            OwnFolder.putBack(folder);
        }
        return DocumentFile.read(file);
    }

    /** {@return whether this is the folder of a report, and not a campaign} */
    static boolean isReport(Path folder) {
        return Files.isRegularFile(folder.resolve(DOCUMENT)) && !Files.exists(folder.resolve("campaign.yaml"));
    }

    /** {@return whether a report would lie in the folder of its campaign} */
    static boolean inside(Path campaign, Path folder) {
        return real(folder).startsWith(real(campaign));
    }

    private static String name(Path campaign) {
        Path name = campaign.toAbsolutePath().normalize().getFileName();
        return name == null ? "campaign" : name.toString();
    }

    private static Path real(Path folder) {
        Path absolute = folder.toAbsolutePath().normalize();
        try {
            return absolute.toRealPath();
        } catch (IOException notThere) {
            return absolute;
        }
    }

    /** The folders cannot be used. */
    static final class Refused extends Exception {
        private static final long serialVersionUID = 1L;

        Refused(String message) {
            super(message);
        }
    }

    /** Shows a page with whatever the machine opens pages with. */
    static final class Browser {

        private Browser() {}

        /** Opens a page; where that is not possible, says so and goes on. */
        static void open(Path page, PrintWriter err) {
            String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
            String address = page.toAbsolutePath().toUri().toString();
            List<String> command = system.contains("win")
                    ? List.of("rundll32", "url.dll,FileProtocolHandler", address)
                    : List.of(system.contains("mac") ? "open" : "xdg-open", address);
            try {
                new ProcessBuilder(command)
                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                        .redirectError(ProcessBuilder.Redirect.DISCARD)
                        .start();
            } catch (IOException none) {
                err.println(Terminal.safe("burnlaw: no browser could be started; open " + page + " yourself"));
            }
        }
    }

    /** A file that is there whole or not at all. */
    static final class SingleFile {

        private SingleFile() {}

        /**
         * Writes a file in the place of the one that may be there: a disk that is full costs the new one only.
         *
         * @param output where; a link leads to the file that is written
         * @param bytes  what is in it
         * @throws IOException if it cannot be written
         */
        static void write(Path output, byte[] bytes) throws IOException {
            Path place = Files.exists(output) ? output.toRealPath() : output.toAbsolutePath();
            Path beside = place.resolveSibling(".burnlaw-" + UUID.randomUUID());
            try {
                Files.write(beside, bytes);
                Files.move(beside, place, StandardCopyOption.ATOMIC_MOVE);
            } finally {
                Files.deleteIfExists(beside);
            }
        }
    }
}
