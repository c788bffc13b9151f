package io.burnlaw.report.html;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * File names made from ids. An id may hold anything; a file name holds letters, digits, point, underline and hyphen,
 * does not begin with a point, names no device, and differs from the others even where case does not count.
 */
final class FileNames {

    private static final int LONGEST = 80;
    private static final Set<String> DEVICES = Set.of("con", "prn", "aux", "nul");

    private FileNames() {}

    /** A name for each id, in the order of the ids. */
    static Map<String, String> of(List<String> ids) {
        Map<String, String> names = new LinkedHashMap<>();
        Set<String> taken = new HashSet<>();
        for (String id : ids) {
            if (names.containsKey(id)) {
                continue;
            }
            String safe = safe(id);
            String name = safe;
            for (int number = 2; !taken.add(name.toLowerCase(Locale.ROOT)); number++) {
                name = safe + "-" + number;
            }
            names.put(id, name);
        }
        return names;
    }

    private static String safe(String id) {
        String safe =
                id.replaceAll("[^A-Za-z0-9._-]", "_").replaceAll("\\.\\.+", ".").replaceFirst("^[.-]+", "_");
        safe = safe.length() > LONGEST ? safe.substring(0, LONGEST) : safe;
        String stem = safe.toLowerCase(Locale.ROOT).replaceFirst("\\..*", "");
        boolean device = DEVICES.contains(stem) || stem.matches("(com|lpt)[0-9]");
        return safe.isEmpty() || device ? "_" + safe : safe;
    }
}
