package io.burnlaw.cli;

import io.burnlaw.planning.FirstGuess;
import io.burnlaw.quantity.Measured;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Option;

/** A law that nobody measured, as typed. */
final class FirstGuessOptions {

    @Option(
            names = "--rate",
            paramLabel = "\"RATE at PRESSURE\"",
            converter = OptionTypes.RateAtPressure.class,
            description =
                    "such as \"5.7 ± 0.5 mm/s at 1 MPa\", the pressure absolute; a of r = a P^n is the rate at one unit"
                            + " of pressure. Without an uncertainty, 10 %% is taken")
    private Optional<OptionTypes.RateAt> rate;

    @Option(
            names = "--exponent",
            paramLabel = "N",
            converter = OptionTypes.Exponent.class,
            description = "n, such as \"0.35 ± 0.05\"; without an uncertainty, 0.05 is taken")
    private Optional<Measured> exponent;

    boolean typed() {
        return rate.isPresent() || exponent.isPresent();
    }

    FirstGuess guess(CommandLine line) {
        OptionTypes.RateAt at =
                rate.orElseThrow(() -> OptionTypes.wrong(line, "--exponent", "a first guess needs a --rate beside it"));
        Measured slope = exponent.orElseThrow(
                () -> OptionTypes.wrong(line, "--rate", "a first guess needs an --exponent beside it"));
        return new FirstGuess(at.rate(), at.pressure(), slope, FirstGuess.USUAL_SCATTER);
    }
}
