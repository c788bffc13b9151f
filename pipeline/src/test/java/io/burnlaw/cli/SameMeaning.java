package io.burnlaw.cli;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Seeded changes to one text file of a campaign that say the same in another way. */
final class SameMeaning {

    /** A unit and how many powers of ten more of it make the same value, by the unit that is replaced. */
    private static final Map<String, Map<String, Integer>> UNITS = Map.of(
            "mm", Map.of("cm", -1, "m", -3),
            "g", Map.of("kg", -3, "mg", 3),
            "cm3", Map.of("mm3", 3, "m3", -6),
            "s", Map.of("ms", 3),
            "MPa", Map.of("kPa", 3, "bar", 1, "Pa", 6),
            "bar", Map.of("kPa", 2, "MPa", -1),
            "mm/s", Map.of("cm/s", -1, "m/s", -3));

    private static final Pattern HEADING = Pattern.compile("\\[(.*)]");
    private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(?:\\.[0-9]+)?(?:[eE][+-]?[0-9]+)?");

    /** What was changed, and the text after it. */
    record Said(String how, String text) {}

    private SameMeaning() {}

    static Said of(String file, String text, SplittableRandom random) {
        if (file.endsWith(".yaml")) {
            return yaml(text, random);
        }
        boolean record = file.startsWith("traces/");
        boolean lists = file.equals("strands.csv");
        return switch (random.nextInt(10)) {
            case 0 -> new Said("CRLF", text.replace("\n", "\r\n"));
            case 1 -> new Said("byte order mark", "\ufeff" + text);
            case 2 -> new Said("blank lines", record ? text + "\n\n" : text.replaceAll("\n", "\n\n"));
            case 3 -> new Said("+/-", text.replace("\u00b1", "+/-"));
            case 4 -> record ? new Said("a remark", "# a remark\n" + text) : order(text, random);
            case 5 -> new Said("tabs", text.replace(',', '\t'));
            case 6 -> lists ? order(text, random) : new Said("semicolons", text.replace(',', ';'));
            case 7 ->
                record
                        ? new Said("decimal commas", text.replace(',', ';').replace('.', ','))
                        : new Said("quotation marks", quoted(text));
            case 8 -> order(text, random);
            default -> units(text, random);
        };
    }

    private static Said yaml(String text, SplittableRandom random) {
        return switch (random.nextInt(5)) {
            case 0 -> new Said("CRLF", text.replace("\n", "\r\n"));
            case 1 -> new Said("remarks and blank lines", "# a remark\n\n" + text.replace("\n", "   # another\n"));
            case 2 -> new Said("limit in kPa", text.replace("7 MPa", "7000 kPa"));
            case 3 -> new Said("ambient pressure in Pa", text.replace("98.60 kPa", "98600 Pa"));
            default -> new Said("density in kg/m3", text.replace("1.788 \u00b1 0.006 g/cm3", "1788 \u00b1 6 kg/m3"));
        };
    }

    private static List<List<String>> cells(String text) {
        return text.lines()
                .map(line -> (List<String>) new ArrayList<>(List.of(line.split(",", -1))))
                .toList();
    }

    private static String text(List<List<String>> cells) {
        return cells.stream().map(row -> String.join(",", row) + "\n").collect(Collectors.joining());
    }

    private static String quoted(String text) {
        List<List<String>> cells = cells(text);
        cells.forEach(row -> row.replaceAll(cell -> "\"" + cell + "\""));
        return text(cells);
    }

    private static Said order(String text, SplittableRandom random) {
        List<List<String>> cells = cells(text);
        long seed = random.nextLong();
        // each row by the same seed: whole columns move
        cells.forEach(row -> Collections.shuffle(row, new Random(seed)));
        return new Said("column order", text(cells));
    }

    private static Said units(String text, SplittableRandom random) {
        List<List<String>> cells = cells(text);
        List<String> headings = cells.get(0);
        StringBuilder how = new StringBuilder();
        for (int column = 0; column < headings.size(); column++) {
            Matcher heading = HEADING.matcher(headings.get(column));
            Map<String, Integer> others = heading.find() ? UNITS.getOrDefault(heading.group(1), Map.of()) : Map.of();
            if (others.isEmpty() || random.nextBoolean()) {
                continue;
            }
            String unit = others.keySet().stream().sorted().toList().get(random.nextInt(others.size()));
            int c = column;
            int powers = others.get(unit);
            headings.set(c, heading.replaceFirst("[" + unit + "]"));
            cells.subList(1, cells.size()).forEach(row -> row.set(c, converted(row.get(c), powers)));
            how.append(headings.get(c)).append(' ');
        }
        return new Said("units " + how, text(cells));
    }

    private static String converted(String cell, int powers) {
        UnaryOperator<String> moved =
                number -> new BigDecimal(number).scaleByPowerOfTen(powers).toPlainString();
        return NUMBER.matcher(cell).replaceAll(found -> moved.apply(found.group()));
    }
}
