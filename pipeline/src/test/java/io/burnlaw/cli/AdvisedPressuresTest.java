package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Whatever is fired and whatever the case stands, no advice on the terminal, on the page or in the document names a pressure
 * above the case limit over its safety factor; without a limit, none above what was fired.
 */
class AdvisedPressuresTest {

    private static final double AMBIENT = 0.1;
    private static final double FACTOR = 1.5;

    /** Rounded to three digits, a pressure may stand half a per cent above what it is. */
    private static final double ROUNDING = 1.005;

    /** Sentences that send somebody somewhere. */
    private static final Pattern ADVICE = Pattern.compile(
            "(?i)\\b(fire (at|a third|once|again)|firing near|fired near|needs? \\d|next throat|predicted: mean|at most [0-9.]+ MPa)");

    private static final Pattern MEGAPASCALS = Pattern.compile("([0-9]+(?:\\.[0-9]+)?) MPa");

    @TempDir
    private Path folder;

    /** A campaign: how many firings, of how many laws, and the limit of the case [MPa, gauge]; 0 for none. */
    private record Case(int seed, int firings, boolean slow, double limit) {}

    static Stream<Case> campaigns() {
        SplittableRandom random = new SplittableRandom(14);
        double[] limits = {0, 0.9, 2, 3.5, 5, 8, 20};
        return Stream.iterate(0, i -> i + 1)
                .limit(21)
                .map(i -> new Case(i, 1 + i % 7, random.nextInt(4) == 0, limits[random.nextInt(limits.length)]));
    }

    @ParameterizedTest
    @MethodSource("campaigns")
    void noAdviceNamesAPressureThatTheCaseMayNotStand(Case each) throws IOException {
        Path campaign = simulated(each);
        StringWriter out = new StringWriter();
        Path report = folder.resolve("report");
        int code = Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(out, true))
                .execute("run", campaign.toString(), "-o", report.toString());
        assertThat(code).as(out.toString()).isIn(0, 1);
        JsonNode document =
                new ObjectMapper().readTree(report.resolve("burnlaw.json").toFile());
        OptionalDouble fired = document.path("firings").findValues("max_pressure").stream()
                .mapToDouble(value -> value.path("value").asDouble())
                .max();
        double allowed = each.limit > 0 ? AMBIENT + each.limit / FACTOR : fired.orElse(0);
        List<String> lines = new ArrayList<>(out.toString().lines().toList());
        Jsoup.parse(report.resolve("index.html").toFile(), "UTF-8")
                .select("p, li, dd, td, figcaption, summary")
                .forEach(element -> lines.add(element.text()));
        for (String line : lines) {
            assertThat(line).doesNotContainIgnoringCase("inside the case limit");
            for (String sentence : line.split("(?<=[a-zA-Z)])[.;:](?= )")) {
                if (ADVICE.matcher(sentence).find()) {
                    Matcher named = MEGAPASCALS.matcher(sentence);
                    while (named.find()) {
                        assertThat(Double.parseDouble(named.group(1)))
                                .as(each + ": " + sentence)
                                .isLessThanOrEqualTo(ROUNDING * allowed);
                    }
                }
            }
        }
        for (double planned : planned(document)) {
            assertThat(planned).as(each.toString()).isLessThanOrEqualTo(ROUNDING * allowed);
        }
    }

    /** Pressures of throats and of faster burning, with the upper ends of their intervals [MPa]. */
    private static List<Double> planned(JsonNode document) {
        List<Double> planned = new ArrayList<>();
        for (JsonNode formulation : document.path("formulations")) {
            formulation.path("faster").forEach(answer -> high(answer.path("pressure"), planned));
        }
        document.path("plans").findParents("allowed").stream()
                .filter(throat -> throat.path("allowed").asBoolean())
                .forEach(throat -> {
                    high(throat.path("equilibrium_pressure"), planned);
                    high(throat.path("max_pressure"), planned);
                });
        return planned;
    }

    private static void high(JsonNode pressure, List<Double> into) {
        for (String member : List.of("value", "high")) {
            if (pressure.path(member).isNumber()) {
                assertThat(pressure.path("unit").asText()).isEqualTo("MPa");
                into.add(pressure.path(member).asDouble());
            }
        }
    }

    private Path simulated(Case each) throws IOException {
        SplittableRandom random = new SplittableRandom(100 + each.seed);
        StringBuilder text = new StringBuilder("""
                format: burnlaw-scenario/1
                title: Invented
                seed: %d
                ambient_pressure: 100 kPa absolute
                formulations:
                  p:
                    title: Invented
                    density: 1.79 g/cm3
                    characteristic_velocity: 890 m/s
                    specific_heat_ratio: 1.13
                    rate_scatter: 1 %%
                    law:
                      %s
                %sgrain: {kind: bates, segments: 2, outer_diameter: 48 mm, core_diameter: 20 mm, segment_length: 70 mm}
                logger: {sample_interval: 2 ms, noise: 3 kPa, longest: 40 s}
                firings:
                """.formatted(
                        each.seed,
                        each.slow
                                ? "slow: {rate: 2 mm/s, at: 1 MPa, exponent: 0.4}\n"
                                        + "      fast: {from: 1 MPa, rate: 5 mm/s, at: 1 MPa, exponent: 0.36}"
                                : "all: {rate: 5 mm/s, at: 1 MPa, exponent: 0.36}",
                        each.limit > 0
                                ? String.format(
                                        Locale.ROOT,
                                        "hardware: {case_pressure_limit: %.2f MPa, safety_factor: %.1f}%n",
                                        each.limit,
                                        FACTOR)
                                : ""));
        for (int i = 0; i < each.firings; i++) {
            text.append(String.format(
                    Locale.ROOT, "  F%d: {formulation: p, throat: %.2f mm}%n", i, random.nextDouble(7.5, 15)));
        }
        Path scenario = Files.writeString(folder.resolve("scenario.yaml"), text);
        Path campaign = folder.resolve("campaign");
        StringWriter out = new StringWriter();
        int code = Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(out, true))
                .execute("simulate", scenario.toString(), "-o", campaign.toString());
        assertThat(code).as(out.toString()).isZero();
        return campaign;
    }
}
