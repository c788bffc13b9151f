package io.burnlaw.cli;

import io.burnlaw.report.wording.ShownUnits;
import java.io.PrintWriter;
import picocli.CommandLine.Option;

/** In which units a command prints, and which a page shows until its reader chooses others. */
final class UnitsOption {

    @Option(
            names = "--units",
            paramLabel = "UNITS",
            converter = OptionTypes.Units.class,
            description =
                    "units of the printed text, and of the page when it opens: mpa (MPa, mm), bar (bar, mm) or psi"
                            + " (psi, in); data files keep the units that they name")
    private ShownUnits units = ShownUnits.MPA;

    ShownUnits units() {
        return units;
    }

    /** Prints in these units what is written in MPa and mm. */
    PrintWriter to(PrintWriter out) {
        return units == ShownUnits.MPA ? out : ConsoleWriter.inUnits(out, units);
    }
}
