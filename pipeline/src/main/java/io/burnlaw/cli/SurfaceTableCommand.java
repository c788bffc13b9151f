package io.burnlaw.cli;

import io.burnlaw.campaign.GrainDescription.SurfacePoint;
import io.burnlaw.campaign.reading.PortOutlineFile;
import io.burnlaw.cli.Burnlaw.ExitCode;
import io.burnlaw.cli.OutputFolders.SingleFile;
import io.burnlaw.grain.PortOutline;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Makes the surface table of a grain with any port. */
@Command(
        name = "surface-table",
        mixinStandardHelpOptions = true,
        description = {
            "Makes the table of burning surface against web for a grain of the kind 'table', such as a star, from the"
                    + " outline of its port. The outline is a table x [mm], y [mm] of its corners in order, with the grain's axis at 0, 0.",
            ""
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "Example:",
            "  burnlaw surface-table port.csv --outer-diameter \"50 mm\" \\",
            "      --length \"120 mm\" -o star.csv"
        })
final class SurfaceTableCommand implements Callable<Integer> {

    private static final int ROWS = 60;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "PORT.csv", description = "corners of the port's cross-section")
    private Path outline;

    @Option(
            names = "--outer-diameter",
            required = true,
            paramLabel = "LENGTH",
            converter = OptionTypes.Length.class,
            description = "outer diameter of the grain, with its unit")
    private Measured outerDiameter;

    @Option(
            names = "--length",
            required = true,
            paramLabel = "LENGTH",
            converter = OptionTypes.Length.class,
            description = "length of the grain, with its unit")
    private Measured length;

    @Option(
            names = "--burning-ends",
            paramLabel = "0|1|2",
            defaultValue = "0",
            description = "number of ends that burn")
    private int burningEnds;

    @Option(
            names = {"-o", "--output"},
            required = true,
            paramLabel = "TABLE.csv",
            description = "file of the table")
    private Path output;

    @Option(names = "--replace", description = "overwrite an existing file")
    private boolean replace;

    @Override
    public Integer call() {
        Optional<String> refusal = refusal();
        if (refusal.isPresent()) {
            spec.commandLine()
                    .getErr()
                    .println(Terminal.safe("burnlaw: " + output + ": " + refusal.get() + "; nothing was written"));
            return ExitCode.UNUSABLE.number();
        }
        double diameter = outerDiameter.value();
        double metres = length.value();
        if (burningEnds < 0 || burningEnds > 2) {
            throw new ParameterException(spec.commandLine(), "--burning-ends is 0, 1 or 2, not " + burningEnds);
        }
        PortOutlineFile file = PortOutlineFile.read(outline);
        if (!file.problems().isEmpty()) {
            ProblemList.print(file.problems(), spec.commandLine().getErr());
            return ExitCode.UNUSABLE.number();
        }
        for (int i = 0; i < file.x().size(); i++) {
            if (!(Math.hypot(file.x().get(i), file.y().get(i)) < diameter / 2)) {
                spec.commandLine()
                        .getErr()
                        .println(Terminal.safe(outline + ": corner " + (i + 1) + " is not inside the grain of "
                                + NumberFormat.plain(Unit.MILLIMETRE.fromSi(diameter), 4)
                                + " mm; nothing was written."));
                return ExitCode.UNUSABLE.number();
            }
        }
        PortOutline port = new PortOutline(file.x(), file.y(), diameter / 2);
        List<SurfacePoint> points = port.burn(metres, burningEnds, ROWS);
        StringBuilder table = new StringBuilder("web [mm],area [mm2]\n");
        for (SurfacePoint point : points) {
            table.append(String.format(Locale.ROOT, "%.5f,%.3f%n", point.web() * 1e3, point.surface() * 1e6)
                    .replace("\r", ""));
        }
        try {
            SingleFile.write(output, table.toString().getBytes(StandardCharsets.UTF_8));
        } catch (IOException failed) {
            spec.commandLine()
                    .getErr()
                    .println(Terminal.safe(output + " could not be written; check the folder and its permissions."));
            return ExitCode.NOT_WRITTEN.number();
        }
        double web = points.get(points.size() - 1).web();
        spec.commandLine()
                .getOut()
                .println(Terminal.safe(String.format(
                        Locale.ROOT,
                        "%s: %d rows, web %.3f mm, propellant %.2f cm3. Compare this volume with mass over density.",
                        output,
                        points.size(),
                        web * 1e3,
                        port.propellantSection() * metres * 1e6)));
        return ExitCode.DONE.number();
    }

    private Optional<String> refusal() {
        if (Files.isSymbolicLink(output) && !Files.exists(output)) {
            return Optional.of("this is a link to a missing file");
        }
        if (!Files.exists(output)) {
            return Optional.empty();
        }
        if (!Files.isRegularFile(output)) {
            return Optional.of("this is not an ordinary file");
        }
        try {
            if (Files.isSameFile(output, outline)) {
                return Optional.of("this is the outline itself; name another file for the table");
            }
        } catch (IOException notThere) {
            // an outline that cannot be read is told where it is read
        }
        return replace
                ? Optional.empty()
                : Optional.of("this file exists already; name another, or overwrite it with --replace");
    }
}
