package io.burnlaw.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.report.SampleDocument;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Formulation.Threshold;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Quantity;
import java.util.ArrayList;
import java.util.List;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.parser.Parser;
import org.junit.jupiter.api.Test;

class LawChartTest {

    private static final Characterization RICH = SampleDocument.rich();
    private static final Formulation ORCHARD = RICH.formulations().get(0);
    private static final Formulation ADDITIVE = RICH.formulations().get(1);

    @Test
    void wordsAreWordsAndNotOutlines() {
        Document chart = drawn(ORCHARD);
        assertThat(words(chart))
                .contains("burning rate, mm/s", "absolute pressure, MPa", "95 % next firing", "95 % mean rate", "law")
                .anyMatch(text -> text.startsWith("threshold 1.12"));
        assertThat(chart.select("[font-family]"))
                .as("one font for the whole picture, on the svg")
                .isEmpty();
    }

    @Test
    void everyPointSaysWhatItIs() {
        assertThat(drawn(ORCHARD).select(".hit title").eachText())
                .hasSize(ORCHARD.points().size())
                .anyMatch(text -> text.startsWith("OR-01: "));
    }

    @Test
    void manyPointsAreDotsBetweenTheEdgesOfTheBands() {
        List<Point> many = new ArrayList<>();
        while (many.size() <= 120) {
            many.addAll(ORCHARD.points());
        }
        Formulation crowded = with(ORCHARD, many, null);
        assertThat(LawChart.crowded(ORCHARD)).isFalse();
        assertThat(LawChart.crowded(crowded)).isTrue();
        int perPoint = drawn(ORCHARD).html().length() / ORCHARD.points().size();
        assertThat(drawn(crowded).html().length() / many.size())
                .as("a dot weighs less than a mark with its bars")
                .isLessThan(perPoint / 4);
        // its bands would be seen through no dots: their edges are drawn, and no burns
        assertThat(LawChart.draw(crowded, RICH.firings(), Scales.of(RICH)).body())
                .contains("next firing", "stroke-dasharray")
                .doesNotContain("rate along");
    }

    @Test
    void aBurnThatACautionIsSaidOfLooksLikeNoSecondLaw() {
        List<Firing> used = RICH.firings().stream()
                .filter(firing -> firing.status().equals("used"))
                .toList();
        assertThat(used).hasSizeLessThan(RICH.firings().size());
        assertThat(LawChart.draw(ORCHARD, RICH.firings(), Scales.of(RICH)).body())
                .isEqualTo(LawChart.draw(ORCHARD, used, Scales.of(RICH)).body())
                .contains("rate along single burns");
    }

    @Test
    void twoPropellantsOfOneCampaignShareTheirAxes() {
        Scales scales = Scales.of(RICH);
        String one = LawChart.draw(ORCHARD, List.of(), scales).body();
        String other = LawChart.draw(ADDITIVE, List.of(), scales).body();
        assertThat(ticks(one)).isEqualTo(ticks(other)).isNotEmpty();
    }

    @Test
    void whereOnlyAGapIsKnownNoLineClaimsMore() {
        Threshold gap = new Threshold(
                Quantity.of(1.2, "MPa"), 3, List.of("OR-01", "OR-02"), List.of("OR-03", "OR-04"), null, "somewhere");
        Document chart = drawn(with(ORCHARD, ORCHARD.points(), gap));
        assertThat(words(chart))
                .contains("threshold 0.80 to 1.9 MPa")
                .noneMatch(text -> text.startsWith("threshold 1.2"));
    }

    @Test
    void aPointOfAnotherRegimeDoesNotSqueezeTheLawAndIsTold() {
        Point first = ADDITIVE.points().get(0);
        List<Point> points = new ArrayList<>(ADDITIVE.points());
        points.add(new Point(
                "FAR-1",
                "FAR-1",
                null,
                null,
                "dwell",
                Quantity.of(0.05, "MPa"),
                Quantity.of(0.05, "MPa"),
                Quantity.of(0.3, "mm/s"),
                null,
                first.method(),
                false,
                false,
                "another regime",
                null,
                null));
        Formulation far = with(ADDITIVE, points, null);
        Characterization document = alone(far);
        assertThat(Scales.of(document)).isEqualTo(Scales.of(alone(ADDITIVE)));
        Document chart = parsed(LawChart.draw(far, List.of(), Scales.of(document)));
        assertThat(words(chart))
                .contains("outside: FAR-1, 0.300 mm/s at 0.0500 MPa")
                .doesNotContain("not used in the fit");
    }

    @Test
    void noWordsAreWiderThanTheSheet() {
        Figure figure = LawChart.draw(ORCHARD, List.of(), Scales.of(RICH));
        // a phone of 360 px less its margins: letters of 14 units are then 11 px high
        assertThat(figure.width()).isLessThanOrEqualTo(328 * 14 / 10.9);
        for (Element text : parsed(figure).select("text")) {
            assertThat(Svg.widthOf(text.text())).as(text.text()).isLessThan(figure.width());
        }
    }

    private static Document drawn(Formulation formulation) {
        return parsed(LawChart.draw(formulation, RICH.firings(), Scales.of(RICH)));
    }

    private static Document parsed(Figure figure) {
        return Jsoup.parse("<svg>" + figure.body() + "</svg>", "", Parser.xmlParser());
    }

    private static List<String> words(Document chart) {
        return chart.select("text").eachText().stream()
                .map(text -> text.replace('\u00a0', ' '))
                .toList();
    }

    private static List<String> ticks(String body) {
        return Jsoup.parse(body, "", Parser.xmlParser()).select("text").stream()
                .filter(text -> text.text().matches("[0-9.]+"))
                .map(text -> text.attr("x") + " " + text.attr("y") + " " + text.text())
                .toList();
    }

    private static Characterization alone(Formulation formulation) {
        return new Characterization(
                RICH.format(),
                RICH.generator(),
                null,
                RICH.campaign(),
                List.of(),
                List.of(formulation),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                null);
    }

    private static Formulation with(Formulation f, List<Point> points, Threshold threshold) {
        return new Formulation(
                f.id(),
                f.title(),
                f.baseline(),
                f.compareWith(),
                f.additive(),
                f.additiveFraction(),
                f.density(),
                f.characteristicVelocity(),
                f.verdict(),
                f.caution(),
                points,
                f.singleLaw(),
                f.notFitted(),
                null,
                f.otherFits(),
                threshold == null ? f.regimes() : null,
                f.batches(),
                threshold,
                f.faster(),
                f.temperatureSensitivity(),
                f.stability(),
                f.withinBetween(),
                f.closure(),
                f.validRange(),
                f.notEstimated(),
                f.findings(),
                f.without());
    }
}
