package io.burnlaw.campaign;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** The grains that a log can name, each with the dimensions that it needs. */
enum GrainKind {
    BATES("outer_diameter", "core_diameter", "segment_length"),
    TUBE("outer_diameter", "core_diameter", "segment_length"),
    TUBE_BOTH_SIDES("outer_diameter", "core_diameter", "segment_length"),
    ROD("outer_diameter", "segment_length"),
    ROD_AND_TUBE("outer_diameter", "core_diameter", "rod_diameter", "segment_length"),
    END_BURNER("outer_diameter", "segment_length"),
    TABLE();

    private final List<String> needs;

    GrainKind(String... needs) {
        this.needs = List.of(needs);
    }

    List<String> needs() {
        return needs;
    }

    String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static List<String> words() {
        return Arrays.stream(values()).map(GrainKind::word).toList();
    }
}
