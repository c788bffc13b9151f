package io.burnlaw.grain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.campaign.GrainDescription.SurfacePoint;
import io.burnlaw.quantity.Measured;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class GrainsTest {

    private static GrainDescription described(String kind, int segments, int inhibited, Object... dimensions) {
        Map<String, Measured> values = new TreeMap<>();
        for (int i = 0; i < dimensions.length; i += 2) {
            values.put((String) dimensions[i], Measured.of(((Number) dimensions[i + 1]).doubleValue()));
        }
        return new GrainDescription(kind, segments, inhibited, values, List.of(), Optional.empty());
    }

    private static Grain built(GrainDescription description) {
        return Grains.of(description).orElseThrow();
    }

    private static List<String> reasons(GrainDescription description) {
        return Grains.of(description).reasons();
    }

    @Test
    void equalSegmentsAreABatesGrain() {
        Grain grain =
                built(described("bates", 3, 0, "outer_diameter", 0.04, "core_diameter", 0.015, "segment_length", 0.06));
        assertThat(grain).isEqualTo(new Bates(3, Measured.of(0.04), Measured.of(0.015), Measured.of(0.06)));
    }

    @Test
    void aNumberBehindADimensionMakesThatSegmentAnother() {
        Grain grain = built(described(
                "bates",
                3,
                0,
                "outer_diameter",
                0.04,
                "core_diameter",
                0.015,
                "segment_length",
                0.06,
                "segment_length_3",
                0.04,
                "core_diameter_3",
                0.02));
        Tube common = new Tube(Measured.of(0.04), Measured.of(0.015), Measured.of(0.06), 2);
        Tube last = new Tube(Measured.of(0.04), Measured.of(0.02), Measured.of(0.04), 2);
        assertThat(grain).isEqualTo(new Stack(List.of(common, common, last)));
    }

    @Test
    void inhibitedEndsGoRoundFromTheFirstSegment() {
        Object[] dimensions = {"outer_diameter", 0.04, "core_diameter", 0.015, "segment_length", 0.06};
        assertThat(ends(built(described("bates", 2, 1, dimensions)))).containsExactly(1, 2);
        assertThat(ends(built(described("bates", 2, 3, dimensions)))).containsExactly(0, 1);
        Grain tube = built(described("tube", 1, 0, dimensions));
        assertThat(built(described("bates", 1, 2, dimensions))).isEqualTo(tube);
    }

    private static List<Integer> ends(Grain grain) {
        return ((Stack) grain)
                .pieces().stream().map(piece -> ((Tube) piece).burningEnds()).toList();
    }

    @Test
    void everyReasonIsTold() {
        assertThat(reasons(described("bates", 1, 3, "outer_diameter", 0.04, "core_diameter", 0.045)))
                .hasSize(3)
                .anyMatch(text -> text.contains("inhibited_ends is 3"))
                .anyMatch(text -> text.contains("segment_length is missing"))
                .anyMatch(text -> text.contains("core_diameter 45.00 mm is not below outer_diameter 40.00 mm"));
        assertThat(reasons(described("bates", 0, 0))).containsExactly("segments is 0; a grain has 1 to 1000 of them");
        assertThat(reasons(described("betas", 1, 0)))
                .singleElement()
                .asString()
                .contains("no grain is called 'betas'")
                .contains("bates");
        assertThat(reasons(described("end-burner", 1, 1, "outer_diameter", 0.04, "segment_length", -0.06)))
                .anyMatch(text -> text.contains("inhibited_ends is 1"))
                .anyMatch(text -> text.contains("segment_length is −60.00 mm; it must be above zero"));
    }

    @Test
    void aTableIsTakenAsItStands() {
        GrainDescription table = new GrainDescription(
                "table",
                1,
                Map.of("web", Measured.of(0.01, 0.0001)),
                List.of(new SurfacePoint(0, 0.02), new SurfacePoint(0.004, 0.03), new SurfacePoint(0.01, 0.01)),
                Optional.of("star.csv"));
        Grain grain = built(table);
        assertThat(grain.surface(0.002)).isCloseTo(0.025, within(1e-15));
        assertThat(grain.volume(0)).isCloseTo(0.004 * 0.025 + 0.006 * 0.02, within(1e-15));
        assertThat(grain.web()).isEqualTo(Measured.of(0.01, 0.0001));
    }

    @Test
    void aTableThatCannotBeSaysWhichRow() {
        GrainDescription table = new GrainDescription(
                "table",
                1,
                Map.of(),
                List.of(new SurfacePoint(0.001, 0.02), new SurfacePoint(0.001, -0.03)),
                Optional.of("star.csv"));
        assertThat(reasons(table))
                .containsExactly(
                        "star.csv begins at a web of 1.000 mm; it must begin at 0",
                        "star.csv, row 2: the web of 1.000 mm is not above the one before it",
                        "star.csv, row 2: the area is negative");
    }
}
