package io.burnlaw.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.jsoup.parser.Parser;
import org.junit.jupiter.api.Test;

/** Words around a plot lie beside each other, whatever crowds below them. */
class LabelsTest {

    @Test
    void wordsAboveAPlotNeverOverlapAndStayOnTheSheet() {
        SplittableRandom random = new SplittableRandom(3);
        for (int round = 0; round < 500; round++) {
            List<TopLabels.Label> labels = new ArrayList<>();
            for (int i = random.nextInt(1, 5); i > 0; i--) {
                // in a crowd or all over the plot
                double at = random.nextBoolean() ? random.nextDouble(0, 660) : 300 + random.nextDouble(0, 20);
                labels.add(new TopLabels.Label(
                        at, "word ".repeat(random.nextInt(1, 6)).strip(), Ink.TEXT));
            }
            List<double[]> boxes = new ArrayList<>();
            for (Element text : texts(new TopLabels(labels, -40, 700).toString())) {
                double middle = Double.parseDouble(text.attr("x"));
                double half = Svg.widthOf(text.text()) / 2;
                boxes.add(new double[] {middle - half, middle + half, Double.parseDouble(text.attr("y"))});
            }
            assertThat(boxes).hasSize(labels.size());
            for (double[] box : boxes) {
                // a hundredth: coordinates are written with two decimals
                assertThat(box[0]).as("%s", labels).isGreaterThanOrEqualTo(-40.01);
                assertThat(box[1]).as("%s", labels).isLessThanOrEqualTo(700.01);
                for (double[] other : boxes) {
                    boolean apart = box == other || box[2] != other[2] || box[1] < other[0] || other[1] < box[0];
                    assertThat(apart).as("%s", labels).isTrue();
                }
            }
        }
    }

    @Test
    void theKeyBreaksIntoRowsWhereTheWidthEnds() {
        List<Mark.Named> entries = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            entries.add(
                    new Mark.Named(new Mark.Lines(List.of(), 1, Mark.Dash.SOLID, Ink.S1), "a mark of some kind " + i));
        }
        for (double width : new double[] {320, 700}) {
            for (Element text : texts(new Key(entries, width).toString())) {
                assertThat(Double.parseDouble(text.attr("x")) + Svg.widthOf(text.text()))
                        .isLessThanOrEqualTo(width);
            }
        }
        assertThat(new Key(entries, 320).height()).isGreaterThan(new Key(entries, 700).height());
        assertThat(new Key(List.of(), 320).height()).isZero();
    }

    private static List<Element> texts(String svg) {
        return Jsoup.parse(svg, "", Parser.xmlParser()).select("text");
    }
}
