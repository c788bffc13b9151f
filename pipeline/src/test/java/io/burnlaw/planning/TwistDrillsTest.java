package io.burnlaw.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import io.burnlaw.Oracle;
import io.burnlaw.planning.PlannedThroat.Drill;
import io.burnlaw.planning.Throats.TwistDrills;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class TwistDrillsTest {

    @Test
    @Oracle(
            value = "ASME B94.11M number, letter and fractional twist drills, as in shop tables (drill_sizes.csv)",
            agreement = "all 187 sizes to the digits listed")
    void sizesAreThoseOfTheTable() throws IOException {
        Map<String, Drill> byName = TwistDrills.ALL.stream()
                .filter(each -> each.series() != Drill.Series.METRIC)
                .collect(Collectors.toMap(each -> key(each.series(), each.name()), Function.identity()));
        List<String> lines;
        try (InputStream table = TwistDrillsTest.class.getResourceAsStream("drill_sizes.csv")) {
            lines = new String(table.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .toList();
        }
        assertThat(lines).hasSize(187).allSatisfy(line -> {
            String[] cells = line.split(",");
            Drill.Series series = Drill.Series.valueOf(cells[0].toUpperCase(Locale.ROOT));
            assertThat(byName).as(line).containsKey(key(series, cells[1]));
            // half of the last digit of the inches, and of the millimetres
            double diameter = byName.get(key(series, cells[1])).diameter();
            assertThat(diameter / 0.0254).as(line).isCloseTo(Double.parseDouble(cells[2]), offset(1e-9));
            assertThat(diameter * 1000).as(line).isCloseTo(Double.parseDouble(cells[3]), offset(0.51e-4));
        });
        assertThat(byName).hasSize(187);
    }

    private static String key(Drill.Series series, String name) {
        // the table writes one inch as 1/1
        return series + " " + name;
    }

    @Test
    void theNearestOfEachSeriesComesNearestFirst() {
        List<Drill> near = TwistDrills.nearestOfEachSeries(7.95e-3, drill -> true);
        assertThat(near).extracting(Drill::name).containsExactly("5/16", "7.9 mm", "O");
    }

    @Test
    void drillsThatAreNotAllowedAreNotNamed() {
        List<Drill> near = TwistDrills.nearestOfEachSeries(7.95e-3, drill -> drill.diameter() >= 7.95e-3);
        assertThat(near).extracting(Drill::name).containsExactly("8.0 mm", "O");
    }

    @Test
    void aThroatLargerThanAllDrillsHasNone() {
        assertThat(TwistDrills.nearest(0.05, drill -> true)).isEmpty();
    }
}
