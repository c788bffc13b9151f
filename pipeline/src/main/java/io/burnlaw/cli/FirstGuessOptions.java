package io.burnlaw.cli;

import io.burnlaw.campaign.Plausible;
import io.burnlaw.planning.FirstGuess;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import java.util.Optional;
import picocli.CommandLine.Option;

/** A law that nobody measured, as typed. */
final class FirstGuessOptions {

    @Option(
            names = "--rate",
            paramLabel = "\"RATE at PRESSURE\"",
            description =
                    "such as \"5.7 ± 0.5 mm/s at 1 MPa\", the pressure absolute; a of r = a P^n is the rate at one unit"
                            + " of pressure. Without an uncertainty, 10 %% is taken")
    private Optional<String> rate;

    @Option(
            names = "--exponent",
            paramLabel = "N",
            description = "n, such as \"0.35 ± 0.05\"; without an uncertainty, 0.05 is taken")
    private Optional<String> exponent;

    boolean typed() {
        return rate.isPresent() || exponent.isPresent();
    }

    FirstGuess guess(TypedQuantity typed) {
        String text = rate.orElseThrow(
                () -> typed.wrong("--exponent", exponent.orElse(""), "a first guess needs a --rate beside it"));
        String n =
                exponent.orElseThrow(() -> typed.wrong("--rate", text, "a first guess needs an --exponent beside it"));
        String[] parts = typed.two("--rate", text, "at", "5.7 mm/s at 1 MPa");
        Measured value = typed.positive("--rate", parts[0], Dimension.SPEED);
        Measured pressure = typed.positive("--rate", parts[1], Dimension.PRESSURE);
        typed.within("--rate", text, value.value(), Plausible.RATE.low(), Plausible.RATE.high());
        typed.within("--rate", text, value.stdOr(0) / value.value(), 0, 1);
        Measured slope = typed.number("--exponent", n);
        typed.within("--exponent", n, slope.value(), Plausible.EXPONENT.low(), Plausible.EXPONENT.high());
        typed.within("--exponent", n, slope.stdOr(0), 0, 1);
        return new FirstGuess(value, pressure.value(), slope, FirstGuess.USUAL_SCATTER);
    }
}
