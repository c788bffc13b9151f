package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
}
