package io.burnlaw.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/** Seeded changes to one text file of a campaign, such as people and loggers make. */
final class ChangedText {

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

    /**
     * A text after a change.
     *
     * @param what was changed
     * @param row  of a table in which one cell was changed, from 1; 0 for all else
     * @param text after it
     */
    record Changed(String what, int row, int column, String text) {
        Changed(String what, String text) {
            this(what, 0, 0, text);
        }
    }

    private ChangedText() {}

    static Changed of(String file, String text, SplittableRandom random) {
        return file.endsWith(".yaml")
                ? yaml(text, random)
                : file.startsWith("traces/") ? trace(text, random) : table(text, random);
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

    private static Changed table(String text, SplittableRandom random) {
        List<String[]> cells = new ArrayList<>();
        for (String line : text.split("\n")) {
            cells.add(line.split(",", -1));
        }
        int row = cells.size() < 2 ? 0 : 1 + random.nextInt(cells.size() - 1);
        int column = random.nextInt(cells.get(row).length);
        String change;
        int kind = random.nextInt(9);
        switch (kind) {
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
        return kind < 4 ? new Changed(change, row, column, made.toString()) : new Changed(change, made.toString());
    }

    private static Changed trace(String text, SplittableRandom random) {
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
        return new Changed(change, made.toString());
    }

    private static Changed yaml(String text, SplittableRandom random) {
        List<String> lines = new ArrayList<>(List.of(text.split("\n")));
        int at = random.nextInt(lines.size());
        String line = lines.get(at);
        int colon = line.indexOf(':');
        switch (random.nextInt(7)) {
            case 0, 1 -> {
                String to = strange(random);
                lines.set(at, colon < 0 ? to : line.substring(0, colon + 1) + " " + to);
                return new Changed("line " + at + " is " + to, String.join("\n", lines));
            }
            case 2 -> {
                lines.remove(at);
                return new Changed("line " + at + " gone", String.join("\n", lines));
            }
            case 3 -> {
                lines.add(at, line);
                return new Changed("line " + at + " twice", String.join("\n", lines));
            }
            case 4 -> {
                lines.set(at, "  " + line);
                return new Changed("line " + at + " further in", String.join("\n", lines));
            }
            case 5 -> {
                double factor = FACTORS[random.nextInt(FACTORS.length)];
                lines.set(
                        at,
                        colon < 0 ? line : line.substring(0, colon + 1) + scaled(line.substring(colon + 1), factor));
                return new Changed("line " + at + " times " + factor, String.join("\n", lines));
            }
            default -> {
                return new Changed("latin 1", text.replace("characterization", "charakterisierung \u00e4"));
            }
        }
    }
}
