package io.burnlaw.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Characterization.LeftOut;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.DocumentReading;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReportWriterTest {

    @TempDir
    Path work;

    @Test
    void aReportDrawnFromItsOwnDocumentIsTheSameToTheByte() throws IOException {
        Path first = work.resolve("first");
        Path second = work.resolve("second");
        ReportWriter.write(SampleDocument.rich(), first, ReportWriter.Options.EVERYTHING);
        DocumentReading.Read read = (DocumentReading.Read) DocumentFile.read(first.resolve("burnlaw.json"));
        ReportWriter.write(read.document(), second, ReportWriter.Options.EVERYTHING);
        assertThat(contents(second)).isEqualTo(contents(first)).isNotEmpty();
    }

    @Test
    void aPageBesideItsDocumentIsReadWholeAndAnotherOneIsNot() throws IOException {
        for (Characterization document : List.of(HostileDocument.document(), SampleDocument.rich())) {
            Path out = work.resolve("out");
            ReportWriter.write(document, out, ReportWriter.Options.EVERYTHING);
            assertThat(read(out.resolve("index.html")).document()).isEqualTo(document);
            assertThat(read(out.resolve("index.html")).file())
                    .isEqualTo(read(out.resolve("burnlaw.json")).file());
            Files.writeString(out.resolve("burnlaw.json"), "{}");
            assertThat(read(out.resolve("index.html")).document().leftOut()).isNotNull();
        }
    }

    @Test
    void aPageSentAloneHoldsAllButTheCoursesAndSaysWhereTheyAre() throws IOException {
        ReportWriter.write(SampleDocument.rich(), work.resolve("out"), ReportWriter.Options.EVERYTHING);
        Path alone = Files.copy(work.resolve("out/index.html"), work.resolve("sent.html"));
        String sha256 = read(work.resolve("out/burnlaw.json")).file().sha256();
        Characterization carried = read(alone).document();
        assertThat(carried).isEqualTo(SampleDocument.rich().forPage(sha256)).isNotEqualTo(SampleDocument.rich());
        assertThat(carried.leftOut())
                .containsExactly(new LeftOut(
                        List.of("firings[].along", "firings[].trace_history", "firings[].budget"),
                        "burnlaw.json",
                        sha256));
        assertThat(Files.readString(alone)).contains("SHA-256 <span class=\"sum\">" + sha256);
    }

    @Test
    void aReportDrawnFromAPageAloneSaysWhatItLacksAndIsDrawnAgainTheSame() throws IOException {
        ReportWriter.write(SampleDocument.rich(), work.resolve("out"), ReportWriter.Options.EVERYTHING);
        Path alone = Files.copy(work.resolve("out/index.html"), work.resolve("sent.html"));
        String sha256 = read(work.resolve("out/burnlaw.json")).file().sha256();
        ReportWriter.write(read(alone).document(), work.resolve("again"), ReportWriter.Options.EVERYTHING);
        assertThat(Files.readString(work.resolve("again/firings/OR-03.html"))).contains(sha256);
        assertThat(read(work.resolve("again/index.html")).document())
                .isEqualTo(read(work.resolve("again/burnlaw.json")).document());
        ReportWriter.write(
                read(work.resolve("again/index.html")).document(),
                work.resolve("third"),
                ReportWriter.Options.EVERYTHING);
        assertThat(contents(work.resolve("third"))).isEqualTo(contents(work.resolve("again")));
    }

    private static DocumentReading.Read read(Path file) {
        return (DocumentReading.Read) DocumentFile.read(file);
    }

    @Test
    void aDocumentThatIsCutOffAnywhereIsToldSoWithThePlace() throws IOException {
        ReportWriter.write(SampleDocument.rich(), work.resolve("out"), ReportWriter.Options.DATA_ONLY);
        String whole = Files.readString(work.resolve("out/burnlaw.json")).strip();
        for (int part = 1; part <= 40; part++) {
            // Before a line's end, so that no number or word is cut, which is another fault.
            int end = whole.lastIndexOf('\n', (int) ((long) whole.length() * part / 41));
            DocumentReading.Refused refused = (DocumentReading.Refused)
                    DocumentFile.read("half.json", whole.substring(0, end).getBytes(StandardCharsets.UTF_8));
            assertThat(refused.place()).matches("half\\.json:[0-9]+:[0-9]+");
            assertThat(refused.what()).as(refused.text()).isEqualTo("the document is cut off");
            assertThat(refused.found() + refused.expected()).doesNotContain("Source", "StreamReadFeature");
        }
    }

    @Test
    void aBracketThatDoesNotMatchIsToldWithThePlaceOfItsFellowAlone() {
        DocumentReading.Refused refused = (DocumentReading.Refused) DocumentFile.read(
                "edited.json",
                "{\"format\": \"burnlaw-characterization/1\", \"cautions\": [}".getBytes(StandardCharsets.UTF_8));
        assertThat(refused.found()).contains("[line: 1, column: ").doesNotContain("REDACTED", "StreamReadFeature");
    }

    @Test
    void dataAloneHasNoPages() throws IOException {
        ReportWriter.write(SampleDocument.rich(), work.resolve("out"), ReportWriter.Options.DATA_ONLY);
        assertThat(contents(work.resolve("out")))
                .containsOnlyKeys(
                        ".burnlaw-report.sha256",
                        "CITATION.cff",
                        "burnlaw.json",
                        "coefficients.json",
                        "rates.csv",
                        "rates.csv-metadata.json",
                        "laws.csv",
                        "laws.csv-metadata.json");
    }

    @Test
    void whatTheOwnerPutThereIsCarriedOverAndWhatWasOursIsNot() throws IOException {
        Path out = work.resolve("out");
        ReportWriter.write(SampleDocument.rich(), out, ReportWriter.Options.EVERYTHING);
        Files.writeString(out.resolve("notes.txt"), "mine");
        ReportWriter.write(SampleDocument.bare(), out, ReportWriter.Options.DATA_ONLY);
        assertThat(out.resolve("notes.txt")).hasContent("mine");
        assertThat(out.resolve("index.html")).doesNotExist();
        assertThat(siblings()).containsExactly("out");
    }

    @Test
    void aFolderThatHoldsNoReportIsNotReplaced() throws IOException {
        Path home = Files.createDirectory(work.resolve("home"));
        Files.writeString(home.resolve("letter.txt"), "dear");
        assertThatThrownBy(() -> ReportWriter.write(SampleDocument.bare(), home, ReportWriter.Options.DATA_ONLY))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("home")
                .hasMessageContaining("no report");
        assertThat(home.resolve("letter.txt")).hasContent("dear");
    }

    @Test
    void aFileInThePlaceOfTheFolderIsNamed() throws IOException {
        Path file = Files.writeString(work.resolve("out"), "a file");
        assertThatThrownBy(() -> ReportWriter.write(SampleDocument.bare(), file, ReportWriter.Options.DATA_ONLY))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("is a file");
        assertThatThrownBy(() -> ReportWriter.write(
                        SampleDocument.bare(), file.resolve("below"), ReportWriter.Options.DATA_ONLY))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("out");
    }

    @Test
    void aRunThatWasKilledBetweenTheRenamesIsPutRight() throws IOException {
        Path out = work.resolve("out");
        ReportWriter.write(SampleDocument.rich(), out, ReportWriter.Options.DATA_ONLY);
        // process numbers end below 2^22 on Linux: this one cannot be alive
        Files.move(out, work.resolve(".out.replaced-999999999"));
        Files.createDirectories(work.resolve(".out.making-999999999/charts"));
        OwnFolder.putBack(out);
        assertThat(out.resolve("burnlaw.json")).exists();
        ReportWriter.write(SampleDocument.rich(), out, ReportWriter.Options.DATA_ONLY);
        assertThat(siblings()).containsExactly("out");
    }

    @Test
    void whateverProcessLeftAFolderAsideItIsPutBack() throws IOException {
        Path out = work.resolve("out");
        ReportWriter.write(SampleDocument.rich(), out, ReportWriter.Options.DATA_ONLY);
        Files.writeString(out.resolve("notes.txt"), "mine");
        // the number is that of a process that runs: this one
        Files.move(out, work.resolve(".out.replaced-" + ProcessHandle.current().pid()));
        ReportWriter.write(SampleDocument.bare(), out, ReportWriter.Options.DATA_ONLY);
        assertThat(out.resolve("notes.txt")).hasContent("mine");
        assertThat(siblings()).containsExactly("out");
    }

    @Test
    void aLeftoverWithAFileThatIsNowhereElseIsNotDeleted() throws IOException {
        Path out = work.resolve("out");
        ReportWriter.write(SampleDocument.rich(), out, ReportWriter.Options.DATA_ONLY);
        Files.writeString(out.resolve("notes.txt"), "mine");
        Files.move(out, work.resolve(".out.replaced-1"));
        ReportWriter.write(SampleDocument.bare(), work.resolve("other"), ReportWriter.Options.DATA_ONLY);
        Files.move(work.resolve("other"), out);
        ReportWriter.write(SampleDocument.rich(), out, ReportWriter.Options.DATA_ONLY);
        assertThat(work.resolve(".out.replaced-1/notes.txt")).hasContent("mine");
        Files.writeString(out.resolve("notes.txt"), "mine");
        ReportWriter.write(SampleDocument.rich(), out, ReportWriter.Options.DATA_ONLY);
        assertThat(siblings()).containsExactly("out");
    }

    @Test
    void filesOfTheOwnerInTheFoldersOfTheReportStay() throws IOException {
        Path out = work.resolve("out");
        ReportWriter.write(SampleDocument.rich(), out, ReportWriter.Options.EVERYTHING);
        Files.writeString(out.resolve("firings/video.txt"), "mine");
        Files.createDirectories(out.resolve("charts/own/empty"));
        Files.writeString(out.resolve("charts/own/sketch.svg"), "mine");
        Files.writeString(out.resolve("rates.csv"), "edited");
        Files.createSymbolicLink(out.resolve("latest"), Path.of("nowhere"));
        ReportWriter.write(SampleDocument.bare(), out, ReportWriter.Options.DATA_ONLY);
        assertThat(out.resolve("firings/video.txt")).hasContent("mine");
        assertThat(out.resolve("charts/own/sketch.svg")).hasContent("mine");
        assertThat(out.resolve("charts/own/empty")).isDirectory();
        assertThat(out.resolve("rates.csv.kept-1")).hasContent("edited");
        assertThat(out.resolve("latest")).isSymbolicLink();
        assertThat(out.resolve("index.html")).doesNotExist();
        try (Stream<Path> firings = Files.list(out.resolve("firings"))) {
            assertThat(firings.map(path -> path.getFileName().toString())).containsExactly("video.txt");
        }
        assertThat(siblings()).containsExactly("out");
    }

    @Test
    void withoutItsListAReportLosesNoFile() throws IOException {
        Path out = work.resolve("out");
        ReportWriter.write(SampleDocument.rich(), out, ReportWriter.Options.DATA_ONLY);
        Files.delete(out.resolve(".burnlaw-report.sha256"));
        // such names the report has too
        Files.createDirectories(out.resolve("charts"));
        Files.writeString(out.resolve("charts/mine.svg"), "mine");
        Files.writeString(out.resolve("rates.csv"), "mine as well");
        ReportWriter.write(SampleDocument.bare(), out, ReportWriter.Options.DATA_ONLY);
        assertThat(out.resolve("charts/mine.svg")).hasContent("mine");
        assertThat(out.resolve("rates.csv.kept-1")).hasContent("mine as well");
        ReportWriter.write(SampleDocument.bare(), out, ReportWriter.Options.DATA_ONLY);
        assertThat(out.resolve("charts/mine.svg")).hasContent("mine");
    }

    @Test
    void anyJsonOfThatNameIsNoReport() throws IOException {
        Path out = Files.createDirectory(work.resolve("out"));
        Files.writeString(out.resolve("burnlaw.json"), "{\"format\": \"another-tool/1\"}");
        assertThatThrownBy(() -> ReportWriter.write(SampleDocument.bare(), out, ReportWriter.Options.DATA_ONLY))
                .hasMessageContaining("no report");
    }

    @Test
    void namesPipesLinksAndReadOnlyFoldersWorkOrAreTold() throws Exception {
        Path out = work.resolve("n".repeat(245));
        ReportWriter.write(SampleDocument.bare(), out, ReportWriter.Options.DATA_ONLY);
        Path closed = Files.createDirectory(out.resolve("closed"));
        Files.writeString(closed.resolve("mine.txt"), "mine");
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("r-xr-xr-x"));
        ReportWriter.write(SampleDocument.bare(), out, ReportWriter.Options.DATA_ONLY);
        assertThat(out.resolve("closed/mine.txt")).hasContent("mine");
        assertThat(Files.isWritable(closed)
                        || PosixFilePermissions.toString(Files.getPosixFilePermissions(closed))
                                .equals("r-xr-xr-x"))
                .isTrue();
        new ProcessBuilder("mkfifo", out.resolve("pipe").toString()).start().waitFor();
        assertThatThrownBy(() -> ReportWriter.write(SampleDocument.bare(), out, ReportWriter.Options.DATA_ONLY))
                .hasMessageContaining("it contains pipe, which is a pipe");
        Path link = Files.createSymbolicLink(work.resolve("link"), work.resolve("gone"));
        assertThatThrownBy(() -> ReportWriter.write(SampleDocument.bare(), link, ReportWriter.Options.DATA_ONLY))
                .hasMessageContaining("a link to a missing folder");
        assertThat(OwnFolder.refusal(Path.of("/proc"), OwnFolder.Kind.REPORT).orElse(""))
                .contains("mount point");
        assertThat(siblings()).containsExactly("link", out.getFileName().toString());
    }

    @Test
    void aWriterThatFailsLeavesTheOldFolder() throws IOException {
        Path out = work.resolve("out");
        ReportWriter.write(SampleDocument.rich(), out, ReportWriter.Options.DATA_ONLY);
        Map<String, String> before = contents(out);
        assertThatThrownBy(() -> OwnFolder.replace(out, OwnFolder.Kind.REPORT, fresh -> {
                    fresh.create("burnlaw.json").close();
                    throw new java.nio.file.FileSystemException("x", null, "No space left on device");
                }))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("No space left on device");
        assertThat(contents(out)).isEqualTo(before);
        assertThat(siblings()).containsExactly("out");
    }

    private java.util.List<String> siblings() throws IOException {
        try (Stream<Path> all = Files.list(work)) {
            return all.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    private static Map<String, String> contents(Path folder) throws IOException {
        Map<String, String> contents = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                contents.put(folder.relativize(file).toString(), Files.readString(file));
            }
        }
        return contents;
    }
}
