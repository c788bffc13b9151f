package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SurfaceTableCommandTest {

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String outline, String diameter) throws IOException {
        Path port = folder.resolve("port.csv");
        Files.writeString(port, outline);
        return Burnlaw.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
                .execute(
                        "surface-table",
                        port.toString(),
                        "--outer-diameter",
                        diameter,
                        "--length",
                        "100 mm",
                        "-o",
                        folder.resolve("star.csv").toString());
    }

    @Test
    void anOutlineBecomesATable() throws IOException {
        assertThat(run("x [mm],y [mm]\n6,6\n-6,6\n-6,-6\n6,-6\n", "50 mm")).isZero();
        List<String> lines = Files.readAllLines(folder.resolve("star.csv"));
        // perimeter 48 mm times length 100 mm
        assertThat(lines).startsWith("web [mm],area [mm2]", "0.00000,4800.000").hasSize(62);
        assertThat(out.toString()).contains("cm3");
    }

    @Test
    void aCornerOutsideTheGrainAndALengthWithoutAUnitAreToldAndNothingIsWritten() throws IOException {
        assertThat(run("x [mm],y [mm]\n6,6\n-30,6\n-6,-6\n", "50 mm")).isEqualTo(2);
        assertThat(err.toString()).contains("corner 2").contains("nothing was written");
        assertThat(run("x [mm],y [mm]\n6,6\n-6,6\n-6,-6\n", "50")).isEqualTo(2);
        assertThat(err.toString()).contains("the number has no unit");
        assertThat(run("x,y\n6,six\n-6,6\n-6,-6\n", "50 mm")).isEqualTo(2);
        assertThat(folder.resolve("star.csv")).doesNotExist();
    }

    private static final String SQUARE = "x [mm],y [mm]\n6,6\n-6,6\n-6,-6\n6,-6\n";

    private Answer into(String output, String... more) {
        List<String> words = new ArrayList<>(List.of(
                "surface-table",
                folder.resolve("port.csv").toString(),
                "--outer-diameter",
                "50 mm",
                "--length",
                "100 mm",
                "-o",
                folder.resolve(output).toString()));
        words.addAll(List.of(more));
        return Answer.to(words.toArray(String[]::new));
    }

    @Test
    void theOutlineItselfIsNeverWrittenOver() throws IOException {
        Path port = Files.writeString(folder.resolve("port.csv"), SQUARE);
        Files.createSymbolicLink(folder.resolve("link.csv"), port);
        Files.createLink(folder.resolve("hard.csv"), port);
        Files.createDirectory(folder.resolve("sub"));
        for (String name : List.of("port.csv", "sub/../port.csv", "link.csv", "hard.csv")) {
            Answer answer = into(name, "--replace");
            assertThat(answer.code()).as(name).isEqualTo(2);
            assertThat(answer.err()).contains("this is the outline itself").contains("nothing was written");
            assertThat(port).hasContent(SQUARE);
        }
    }

    @Test
    void aFileThatIsThereIsWrittenOverByRequestOnly() throws IOException {
        Files.writeString(folder.resolve("port.csv"), SQUARE);
        Path thesis = Files.writeString(folder.resolve("thesis.txt"), "years of work");
        Answer refused = into("thesis.txt");
        assertThat(refused.code()).isEqualTo(2);
        assertThat(refused.err())
                .contains("thesis.txt: this file exists already")
                .contains("--replace");
        assertThat(thesis).hasContent("years of work");
        assertThat(into("thesis.txt", "--replace").code()).isZero();
        assertThat(Files.readString(thesis)).startsWith("web [mm],area [mm2]");
    }

    @Test
    void foldersDanglingLinksAndFoldersThatAreMissingAreNoPlaceForATable() throws IOException {
        Files.writeString(folder.resolve("port.csv"), SQUARE);
        Files.createDirectory(folder.resolve("campaign"));
        Files.createSymbolicLink(folder.resolve("dangling"), folder.resolve("gone"));
        assertThat(into("campaign", "--replace").code()).isEqualTo(2);
        assertThat(into("dangling").code()).isEqualTo(2);
        assertThat(into("none/star.csv").code()).isEqualTo(3);
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left.map(path -> path.getFileName().toString()))
                    .containsExactlyInAnyOrder("port.csv", "campaign", "dangling");
        }
    }
}
