package io.burnlaw.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Stream;

/** A small campaign of sample runs, with a timed firing and a comparison, and seeded changes to it. */
final class MutatedCampaigns {

    private static final Path SAMPLES = Path.of("..", "sample-runs");

    /**
     * A campaign.
     *
     * @param files       by their path
     * @param what        was changed
     * @param meaningKept whether it says the same as before
     * @param touched     id of the only firing or strand whose record or row was changed; empty where it is not one
     */
    record Mutant(Map<String, byte[]> files, String what, boolean meaningKept, String touched) {

        void write(Path folder) throws IOException {
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                Path path = folder.resolve(file.getKey());
                Files.createDirectories(path.getParent());
                Files.write(path, file.getValue());
            }
        }
    }

    private final Map<String, byte[]> base = new TreeMap<>();

    MutatedCampaigns() throws IOException {
        this(List.of("NS-02", "NS-04", "NS-06", "NS-08"), List.of("SV-02", "SV-03", "SV-04", "SV-05"), 4);
    }

    /** A smaller campaign, of which many are worked out in a short time. */
    static MutatedCampaigns small() throws IOException {
        return new MutatedCampaigns(List.of("NS-02", "NS-04", "NS-08"), List.of("SV-02", "SV-03"), 8);
    }

    /** Just a campaign. */
    static MutatedCampaigns tiny() throws IOException {
        return new MutatedCampaigns(List.of("NS-02", "NS-08"), List.of("SV-02"), 16);
    }

    private MutatedCampaigns(List<String> firings, List<String> strands, int every) throws IOException {
        String yaml = Files.readString(SAMPLES.resolve("new-sugar-source/campaign.yaml"));
        base.put(
                "campaign.yaml",
                bytes(yaml.replace(
                        "trace:\n",
                        "  plateau:\n    title: Strands\n    density: 1.771 g/cm3\n    compare_with: date\ntrace:\n")));
        base.put(
                "firings.csv",
                bytes(rows("new-sugar-source/firings.csv", firings)
                                .replace("[cm3]\n", "[cm3],burn_time [s]\n")
                                .replaceAll("(?m)^(NS.*)$", "$1,")
                        + "T-01,date,,bates,2,14.00,38.04,62.04,9.00,218.2,200,2.1\n"));
        base.put(
                "strands.csv",
                bytes(rows("strand-set/strands.csv", strands)
                        .replace("wire_times [s]\n", "wire_times [s],pressure_kind\n")
                        .replaceAll("(?m)^(SV.*)$", "$1,absolute")));
        base.put("points.csv", thinned("strand-set/points.csv", every / 4));
        for (String id : firings) {
            base.put("traces/" + id + ".csv", thinned("new-sugar-source/traces/" + id + ".csv", every));
        }
        for (String id : strands) {
            base.put("traces/" + id + ".csv", thinned("strand-set/traces/" + id + ".csv", every));
        }
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String rows(String file, List<String> ids) throws IOException {
        List<String> lines = Files.readAllLines(SAMPLES.resolve(file));
        StringBuilder text = new StringBuilder(lines.get(0)).append('\n');
        lines.stream()
                .filter(line -> ids.stream().anyMatch(line::startsWith))
                .forEach(line -> text.append(line).append('\n'));
        return text.toString();
    }

    private static byte[] thinned(String file, int every) throws IOException {
        List<String> lines = Files.readAllLines(SAMPLES.resolve(file));
        StringBuilder text = new StringBuilder(lines.get(0)).append('\n');
        for (int i = 1; i < lines.size(); i += every) {
            text.append(lines.get(i)).append('\n');
        }
        return bytes(text.toString());
    }

    Mutant unchanged() {
        return new Mutant(new TreeMap<>(base), "unchanged", true, "");
    }

    Mutant mutant(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Map<String, byte[]> files = new TreeMap<>(base);
        if (random.nextInt(8) == 0) {
            String file = pick(new ArrayList<>(files.keySet()), random);
            SameMeaning.Said said = SameMeaning.of(file, text(files, file), random);
            files.put(file, bytes(said.text()));
            return new Mutant(files, file + ": same meaning, " + said.how(), true, "");
        }
        int changes = random.nextInt(5) == 0 ? 2 + random.nextInt(2) : 1;
        StringBuilder what = new StringBuilder();
        String touched = "";
        for (int i = 0; i < changes; i++) {
            String file = pick(new ArrayList<>(files.keySet()), random);
            touched = file.startsWith("traces/") ? file.substring(7, file.length() - 4) : "";
            String change;
            if (random.nextInt(12) == 0) {
                change = whole(files, file, random);
            } else {
                ChangedText.Changed made = ChangedText.of(file, text(files, file), random);
                touched += changes == 1 ? touched(file, made) : "";
                files.put(
                        file,
                        made.text()
                                .getBytes(
                                        made.what().startsWith("latin")
                                                ? StandardCharsets.ISO_8859_1
                                                : StandardCharsets.UTF_8));
                change = made.what();
            }
            what.append(file).append(": ").append(change).append("; ");
        }
        return new Mutant(files, what.toString(), false, changes == 1 ? touched : "");
    }

    /** The row in which one cell was changed that is neither its id nor its propellant; a quotation mark goes on into the next. */
    private String touched(String file, ChangedText.Changed made) {
        boolean own = file.equals("firings.csv") || file.equals("strands.csv");
        return own && made.row() > 0 && made.column() > 1 && !made.what().endsWith("\"")
                ? text(base, file).lines().toList().get(made.row()).split(",")[0]
                : "";
    }

    private static String text(Map<String, byte[]> files, String file) {
        return new String(files.get(file), StandardCharsets.UTF_8);
    }

    private static String whole(Map<String, byte[]> files, String file, SplittableRandom random) {
        byte[] bytes = files.get(file);
        switch (random.nextInt(7)) {
            case 0 -> {
                files.remove(file);
                return "removed";
            }
            case 1 -> {
                files.put(file, new byte[0]);
                return "empty";
            }
            case 2 -> {
                files.put(file, Arrays.copyOf(bytes, random.nextInt(bytes.length)));
                return "cut off";
            }
            case 3 -> {
                byte[] other = bytes.clone();
                int count = 1 + random.nextInt(20);
                for (int i = 0; i < count; i++) {
                    other[random.nextInt(other.length)] = (byte) random.nextInt(256);
                }
                files.put(file, other);
                return "bytes changed";
            }
            case 4 -> {
                files.put(file, files.get(pick(new ArrayList<>(files.keySet()), random)));
                return "another file under its name";
            }
            case 5 -> {
                byte[] twice = Arrays.copyOf(bytes, 2 * bytes.length);
                System.arraycopy(bytes, 0, twice, bytes.length, bytes.length);
                files.put(file, twice);
                return "twice";
            }
            default -> {
                files.put(file, text(files, file).getBytes(StandardCharsets.UTF_16));
                return "UTF-16";
            }
        }
    }

    private static <T> T pick(List<T> from, SplittableRandom random) {
        return from.get(random.nextInt(from.size()));
    }

    static void delete(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> below = Files.walk(folder)) {
            for (Path path : below.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }
}
