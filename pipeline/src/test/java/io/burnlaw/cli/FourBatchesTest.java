package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.characterize.Characterizer;
import io.burnlaw.characterize.Progress;
import io.burnlaw.publish.CharacterizationDocument;
import io.burnlaw.report.document.Batches;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Law;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A formulation cast four times: the sample run four-batches, whose truth is 4.5 mm/s at 1 MPa with an exponent of 0.35. */
class FourBatchesTest {

    private static final Path SAMPLE = Path.of("..", "sample-runs", "four-batches");

    @TempDir
    private static Path folder;

    private static Characterization document;
    private static Path file;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @BeforeAll
    static void characterize() throws IOException {
        document = of(SAMPLE);
        file = folder.resolve("burnlaw.json");
        Files.writeString(file, DocumentFile.text(document));
    }

    private static Characterization of(Path campaign) {
        return CharacterizationDocument.result(
                Characterizer.characterize(CampaignReader.read(campaign).orElseThrow(), 2, Progress.silent()),
                "test",
                Optional.empty(),
                false);
    }

    private static Formulation quince() {
        return document.formulations().get(0);
    }

    private int burnlaw(String... arguments) {
        return Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
                .execute(arguments);
    }

    @Test
    void theLawToUseIsThatOfTheFormulationAndHoldsTheTruth() {
        Law law = quince().useLaws().get(0);
        assertThat(law.intervalMethod()).isEqualTo("kenward-roger");
        assertThat(law.coefficient().low()).isLessThan(4.5);
        assertThat(law.coefficient().high()).isGreaterThan(4.5);
        assertThat(law.exponent().low()).isLessThan(0.35);
        assertThat(law.exponent().high()).isGreaterThan(0.35);
        assertThat(law.coefficient()).isEqualTo(quince().singleLaw().coefficient());
        // As if each firing stood for itself the same points promise much more than they can keep.
        double plain = quince().singleLaw().intervals().get(0).coefficientHigh()
                - quince().singleLaw().intervals().get(0).coefficientLow();
        assertThat(law.coefficient().high() - law.coefficient().low()).isGreaterThan(1.25 * plain);
    }

    @Test
    void meanBatchAndNextBatchAreThreeAnswers() {
        Batches batches = quince().batches();
        assertThat(batches.count()).isEqualTo(4);
        assertThat(batches.differ()).isTrue();
        assertThat(batches.betweenStd().low()).isLessThan(0.03);
        assertThat(batches.betweenStd().high()).isGreaterThan(0.03);
        // one firing scatters by 1 % in truth, plus what measuring it adds
        assertThat(batches.withinStd()).isBetween(0.005, 0.02);
        assertThat(batches.members()).extracting("id").containsExactly("April", "June", "March", "May");
        double[] truth = {0.9475801, 0.9275765, 0.963067, 0.9998312};
        double mean = Stream.of(0, 1, 2, 3).mapToDouble(i -> truth[i] / 4).sum();
        for (int i = 0; i < 4; i++) {
            // 0.5 % for the mean of four firings that scatter by 1 %, three times over
            assertThat(batches.members().get(i).rateRatio().value()).isCloseTo(truth[i] / mean, offset(0.015));
        }
        var last = batches.nextBatch().get(batches.nextBatch().size() - 1);
        var mean95 =
                quince().singleLaw().curve().get(quince().singleLaw().curve().size() - 1);
        assertThat(last.high()).isGreaterThan(mean95.confidenceHigh());
        assertThat(batches.sentence()).contains("The 4 batches differ").contains("not yet cast");
        assertThat(quince().findings()).extracting("code").doesNotContain("lack-of-fit");
    }

    @Test
    void aPlanIsForABatchNotYetCastUnlessOneIsNamed() {
        assertThat(burnlaw("plan", SAMPLE.toString())).isZero();
        String fromTables = out.toString();
        out.getBuffer().setLength(0);
        assertThat(burnlaw("plan", file.toString())).isZero();
        assertThat(out.toString()).isEqualTo(fromTables);
        assertThat(spread(out.toString())).isGreaterThan(0.1);
        out.getBuffer().setLength(0);
        assertThat(burnlaw("plan", file.toString(), "--batch", "May")).isZero();
        assertThat(out.toString()).contains("(quince, batch May)");
        assertThat(spread(out.toString())).isLessThan(0.1);
    }

    /** Half of the width of the mean pressure's prediction over the pressure, for the first throat of the answer. */
    private static double spread(String answer) {
        var found = java.util.regex.Pattern.compile("next[^\\n]*?([\\d.]+) \\(([\\d.]+) to ([\\d.]+)\\)")
                .matcher(answer);
        assertThat(found.find()).as(answer).isTrue();
        return (Double.parseDouble(found.group(3)) - Double.parseDouble(found.group(2)))
                / 2
                / Double.parseDouble(found.group(1));
    }

    @Test
    void aFirstGuessHasNoBatch() {
        assertThat(burnlaw("plan", "--batch", "May", "--rate", "5 mm/s at 1 MPa", "--exponent", "0.35"))
                .isEqualTo(2);
        assertThat(err.toString()).contains("leave out --batch");
    }

    @Test
    void aBatchThatNobodyFiredIsRefusedWithThoseThatWere() {
        assertThat(burnlaw("plan", file.toString(), "--batch", "July")).isEqualTo(2);
        assertThat(err.toString()).contains("--batch July").contains("April, June, March, May");
    }

    @Test
    void aRowWithoutABatchIsToldAndTheLawIsThatOfTheFirings() throws IOException {
        Path copy = folder.resolve("copy");
        copy(SAMPLE, copy);
        Path log = copy.resolve("firings.csv");
        Files.writeString(log, Files.readString(log).replace("MAY-1,quince,May", "MAY-1,quince,"));
        Formulation formulation = of(copy).formulations().get(0);
        assertThat(formulation.batches().sentence()).contains("1 of 16 points name no batch");
        assertThat(formulation.batches().notEstimated().mend()).contains("column batch");
        assertThat(formulation.singleLaw().intervalMethod()).isNotEqualTo("kenward-roger");
    }

    private static void copy(Path from, Path to) throws IOException {
        List<Path> all;
        try (Stream<Path> found = Files.walk(from)) {
            all = new ArrayList<>(found.toList());
        }
        for (Path each : all) {
            Path target = to.resolve(from.relativize(each).toString());
            if (Files.isDirectory(each)) {
                Files.createDirectories(target);
            } else {
                Files.copy(each, target);
            }
        }
    }
}
