package io.burnlaw.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Stream;

/** A small campaign of sample runs, and seeded changes to it such as people and loggers make. */
final class MutatedCampaigns {

    private static final Path SAMPLES = Path.of("..", "sample-runs");

    private static final List<String> FIRINGS = List.of("NS-02", "NS-04", "NS-06", "NS-08");
    private static final List<String> STRANDS = List.of("SV-02", "SV-03", "SV-04", "SV-05");

    private static final List<String> STRANGE = List.of(
            "",
            " ",
            "nan",
            "NaN",
            "inf",
            "-1",
            "0",
            "-0",
            "1e303",
            "1e-303",
            "1e155",
            "-1e303",
            "9.5 \u00b1 1e155",
            "200 \u00b1 1e9",
            "1 \u00b1 0",
            "9.51 \u00b1 50 %",
            "7,5",
            "1,234",
            "1:17.5",
            "12 in",
            "70 psi",
            "3 parsec",
            "=1+1",
            "#REF!",
            "yes",
            "no: set aside",
            "null",
            "true",
            "[]",
            "{}",
            "\"",
            "'",
            "9999999999999999999999",
            "0x1F",
            "1e",
            "\u0000",
            "\u212b",
            "\ud83d\ude80",
            "traces/NS-02.csv",
            "../secret",
            "bates",
            "tube",
            "rod",
            "table",
            "end-burner",
            "99999",
            "1e6",
            "1e-6",
            "-273.15 degC",
            "2026-11-27",
            "0.5; 0.2",
            "1;2;3",
            "5e-324",
            "1.7976931348623157e308");

    private static final double[] FACTORS = {
        1e-12, 1e-8, 1e-6, 1e-3, 0.1, 0.5, 1.01, 2, 10, 25.4, 145.04, 1e3, 1e6, 1e12, -1
    };

    /** A campaign by the path of its files. */
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
        String yaml = Files.readString(SAMPLES.resolve("new-sugar-source/campaign.yaml"));
        base.put(
                "campaign.yaml",
                bytes(yaml.replace("trace:\n", "  plateau:\n    title: Strands\n    density: 1.771 g/cm3\ntrace:\n")));
        base.put("firings.csv", bytes(rows("new-sugar-source/firings.csv", FIRINGS)));
        base.put(
                "strands.csv",
                bytes(rows("strand-set/strands.csv", STRANDS)
                        .replace("wire_times [s]\n", "wire_times [s],pressure_kind\n")
                        .replaceAll("(?m)^(SV.*)$", "$1,absolute")));
        base.put("points.csv", Files.readAllBytes(SAMPLES.resolve("strand-set/points.csv")));
        for (String id : FIRINGS) {
            base.put("traces/" + id + ".csv", thinned("new-sugar-source/traces/" + id + ".csv", 4));
        }
        for (String id : STRANDS) {
            base.put("traces/" + id + ".csv", thinned("strand-set/traces/" + id + ".csv", 4));
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
            return kept(files, random);
        }
        int changes = random.nextInt(5) == 0 ? 2 + random.nextInt(2) : 1;
        StringBuilder what = new StringBuilder();
        String touched = "";
        for (int i = 0; i < changes; i++) {
            String file = pick(new ArrayList<>(files.keySet()), random);
            touched = changes == 1 ? file : "several";
            String text = new String(files.get(file), StandardCharsets.UTF_8);
            String change;
            if (random.nextInt(12) == 0) {
                change = whole(files, file, random);
            } else {
                String[] made = file.endsWith(".yaml")
                        ? yaml(text, random)
                        : file.startsWith("traces/") ? trace(text, random) : table(text, random);
                files.put(
                        file,
                        made[1].getBytes(
                                made[0].startsWith("latin") ? StandardCharsets.ISO_8859_1 : StandardCharsets.UTF_8));
                change = made[0];
            }
            what.append(file).append(": ").append(change).append("; ");
        }
        return new Mutant(files, what.toString(), false, touched);
    }

    /** Other bytes, and the same meaning. */
    private static Mutant kept(Map<String, byte[]> files, SplittableRandom random) {
        List<String> tables =
                files.keySet().stream().filter(name -> name.endsWith(".csv")).toList();
        String file = pick(tables, random);
        String text = new String(files.get(file), StandardCharsets.UTF_8);
        int kind = random.nextInt(5);
        String made = switch (kind) {
            case 0 -> text.replace("\n", "\r\n");
            case 1 -> "\ufeff" + text;
            case 2 -> text + "\n\n";
            case 3 -> text.replace("\u00b1", "+/-");
            default -> "# a remark\n" + text;
        };
        if (kind == 4 && !file.startsWith("traces/")) {
            made = text.replace("\n", "\r\n");
        }
        files.put(file, bytes(made));
        return new Mutant(files, file + ": meaning kept " + kind, true, file);
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
                for (int i = 0; i < 1 + random.nextInt(20); i++) {
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
                files.put(file, new String(bytes, StandardCharsets.UTF_8).getBytes(StandardCharsets.UTF_16));
                return "UTF-16";
            }
        }
    }

    private static <T> T pick(List<T> from, SplittableRandom random) {
        return from.get(random.nextInt(from.size()));
    }

    private static String strange(SplittableRandom random) {
        return pick(STRANGE, random);
    }

    private static String scaled(String cell, double factor) {
        try {
            String number = cell.strip().split("[ \u00b1]")[0];
            return cell.replace(number, String.format(Locale.ROOT, "%.6g", Double.parseDouble(number) * factor));
        } catch (NumberFormatException none) {
            return cell;
        }
    }

    private static String[] table(String text, SplittableRandom random) {
        List<String[]> cells = new ArrayList<>();
        for (String line : text.split("\n")) {
            cells.add(line.split(",", -1));
        }
        int row = cells.size() < 2 ? 0 : 1 + random.nextInt(cells.size() - 1);
        int column = random.nextInt(cells.get(row).length);
        String change;
        switch (random.nextInt(9)) {
            case 0, 1, 2 -> {
                String to = strange(random);
                change = "cell " + row + "/" + column + " is " + to;
                cells.get(row)[column] = to;
            }
            case 3 -> {
                double factor = FACTORS[random.nextInt(FACTORS.length)];
                change = "cell " + row + "/" + column + " times " + factor;
                cells.get(row)[column] = scaled(cells.get(row)[column], factor);
            }
            case 4 -> {
                double factor = FACTORS[random.nextInt(FACTORS.length)];
                change = "column " + column + " times " + factor;
                for (String[] each : cells.subList(1, cells.size())) {
                    if (column < each.length) {
                        each[column] = scaled(each[column], factor);
                    }
                }
            }
            case 5 -> {
                String to = strange(random);
                change = "column " + column + " is " + to;
                for (String[] each : cells.subList(1, cells.size())) {
                    if (column < each.length) {
                        each[column] = to;
                    }
                }
            }
            case 6 -> {
                String unit = pick(
                        List.of("[m]", "[in]", "[kg]", "[m3]", "[s]", "[ms]", "[MPa]", "[psi]", "[K]", "[x]", ""),
                        random);
                change = "heading " + column + " in " + unit;
                cells.get(0)[column % cells.get(0).length] =
                        cells.get(0)[column % cells.get(0).length].replaceAll("\\[.*]", unit);
            }
            case 7 -> {
                change = "row " + row + " twice or gone";
                if (random.nextBoolean()) {
                    cells.add(cells.get(row));
                } else {
                    cells.remove(row);
                }
            }
            default -> {
                change = "cells of row " + row + " moved";
                String[] each = cells.get(row);
                String first = each[0];
                System.arraycopy(each, 1, each, 0, each.length - 1);
                each[each.length - 1] = first;
            }
        }
        StringBuilder made = new StringBuilder();
        cells.forEach(each -> made.append(String.join(",", each)).append('\n'));
        return new String[] {change, made.toString()};
    }

    private static String[] trace(String text, SplittableRandom random) {
        String[] lines = text.split("\n");
        int count = lines.length;
        int kind = random.nextInt(10);
        int column = random.nextInt(2);
        int from = 1 + random.nextInt(Math.max(1, count - 1));
        double factor = FACTORS[random.nextInt(FACTORS.length)];
        String to = strange(random);
        StringBuilder made = new StringBuilder();
        String change = switch (kind) {
            case 0 -> "column " + column + " times " + factor;
            case 1 -> "reading " + from + " of column " + column + " is " + to;
            case 2 -> "column " + column + " is " + to + " from " + from;
            case 3 -> "ends at " + from;
            case 4 -> "begins at " + from;
            case 5 -> "heading is " + to;
            case 6 -> "pressure constant from " + from;
            case 7 -> "part again from " + from;
            case 8 -> "noise times " + factor;
            default -> "column " + column + " all 0 or huge";
        };
        for (int i = 0; i < count; i++) {
            String[] cells = lines[i].split(",", -1);
            if (i == 0) {
                made.append(kind == 5 ? to + "," + lines[0] : lines[0]).append('\n');
                continue;
            }
            switch (kind) {
                case 0 -> cells[column % cells.length] = scaled(cells[column % cells.length], factor);
                case 1 -> {
                    if (i == from) {
                        cells[column % cells.length] = to;
                    }
                }
                case 2 -> {
                    if (i >= from) {
                        cells[column % cells.length] = to;
                    }
                }
                case 6 -> {
                    if (i >= from && cells.length > 1) {
                        cells[1] = "1.0";
                    }
                }
                case 8 -> {
                    if (cells.length > 1) {
                        cells[1] = String.format(Locale.ROOT, "%.6g", random.nextDouble(-1, 1) * factor);
                    }
                }
                case 9 -> cells[column % cells.length] = factor > 1 ? "1e200" : "0";
                default -> {}
            }
            if (!(kind == 3 && i > from) && !(kind == 4 && i < from)) {
                made.append(String.join(",", cells)).append('\n');
            }
        }
        if (kind == 7) {
            for (int i = from; i < Math.min(count, from + 50); i++) {
                made.append(lines[i]).append('\n');
            }
        }
        return new String[] {change, made.toString()};
    }

    private static String[] yaml(String text, SplittableRandom random) {
        List<String> lines = new ArrayList<>(List.of(text.split("\n")));
        int at = random.nextInt(lines.size());
        String line = lines.get(at);
        int colon = line.indexOf(':');
        switch (random.nextInt(7)) {
            case 0, 1 -> {
                String to = strange(random);
                lines.set(at, colon < 0 ? to : line.substring(0, colon + 1) + " " + to);
                return new String[] {"line " + at + " is " + to, String.join("\n", lines)};
            }
            case 2 -> {
                lines.remove(at);
                return new String[] {"line " + at + " gone", String.join("\n", lines)};
            }
            case 3 -> {
                lines.add(at, line);
                return new String[] {"line " + at + " twice", String.join("\n", lines)};
            }
            case 4 -> {
                lines.set(at, "  " + line);
                return new String[] {"line " + at + " further in", String.join("\n", lines)};
            }
            case 5 -> {
                double factor = FACTORS[random.nextInt(FACTORS.length)];
                lines.set(
                        at,
                        colon < 0 ? line : line.substring(0, colon + 1) + scaled(line.substring(colon + 1), factor));
                return new String[] {"line " + at + " times " + factor, String.join("\n", lines)};
            }
            default -> {
                return new String[] {"latin 1", text.replace("characterization", "charakterisierung \u00e4")};
            }
        }
    }

    static void delete(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> below = Files.walk(folder)) {
            for (Path path : below.sorted(java.util.Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }
}
