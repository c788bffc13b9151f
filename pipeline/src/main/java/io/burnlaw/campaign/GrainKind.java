package io.burnlaw.campaign;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The grains that a log can name, each with the dimensions that it needs. */
public enum GrainKind {
    /** Segments that burn at core and ends. */
    BATES("outer_diameter", "core_diameter", "segment_length"),
    /** Burns at its core; its ends do not burn. */
    TUBE("outer_diameter", "core_diameter", "segment_length"),
    /** Burns at its core and on its outside; its ends do not burn. */
    TUBE_BOTH_SIDES("outer_diameter", "core_diameter", "segment_length"),
    /** Burns on its outside; its ends do not burn. */
    ROD("outer_diameter", "segment_length"),
    /** A rod in a tube. */
    ROD_AND_TUBE("outer_diameter", "core_diameter", "rod_diameter", "segment_length"),
    /** Burns from one end to the other. */
    END_BURNER("outer_diameter", "segment_length"),
    /** Any shape by a table of surface against web. */
    TABLE();

    private final List<String> needs;

    GrainKind(String... needs) {
        this.needs = List.of(needs);
    }

    /** {@return names of the dimensions that it needs} */
    public List<String> needs() {
        return needs;
    }

    /** {@return as it stands in the log, in kebab-case} */
    public String word() {
        return Choice.word(this);
    }

    /**
     * A kind by its word.
     *
     * @param word as it stands in the log
     * @return the kind; empty where none has this name
     */
    public static Optional<GrainKind> of(String word) {
        return Choice.of(GrainKind.class, word);
    }

    /** {@return all of them as they stand in the log} */
    public static List<String> words() {
        return Arrays.stream(values()).map(GrainKind::word).toList();
    }
}
