package io.burnlaw.cli;

import io.burnlaw.planning.FirstGuess;
import io.burnlaw.planning.PlanOptions;
import io.burnlaw.planning.PlannedThroat.Drill;
import io.burnlaw.planning.PressureRange;
import io.burnlaw.quantity.Measured;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Option;

/** What is asked of a plan. */
final class PlanQuestions {

    /** What the next firing should narrow. */
    enum Sharpen {
        EXPONENT,
        /** The pressure at which the law changes. */
        BREAK
    }

    private static final int MOST_RUNGS = 50;

    @Option(
            names = "--throat",
            paramLabel = "LENGTH",
            converter = OptionTypes.Length.class,
            description = "predict this throat diameter, such as \"9.2 mm\"; repeat for more")
    private List<Measured> throats = new ArrayList<>();

    @Option(
            names = "--pressure",
            paramLabel = "PRESSURE",
            converter = OptionTypes.Pressure.class,
            description = "find the throat for this mean pressure, absolute; repeat for more")
    private List<Measured> pressures = new ArrayList<>();

    @Option(
            names = "--ladder",
            paramLabel = "\"PRESSURE to PRESSURE\"",
            converter = OptionTypes.Range.class,
            description =
                    "show throats with mean pressures over this range, absolute; if absent, over all that is allowed and known")
    private Optional<PressureRange> ladder;

    @Option(
            names = "--rungs",
            paramLabel = "N",
            defaultValue = "5",
            description = "number of throats in the ladder; 5 if absent")
    private int rungs;

    @Option(
            names = "--sharpen",
            paramLabel = "exponent|break",
            converter = OptionTypes.Goal.class,
            description = "what the next firing should narrow most; if absent, the break where there is one")
    private Optional<Sharpen> sharpen;

    @Option(
            names = "--drills",
            paramLabel = "SERIES",
            split = ",",
            converter = OptionTypes.Drills.class,
            description = "drills that you have: metric, number, letter, fraction, separated by commas; if absent, all")
    private List<Drill.Series> drills = new ArrayList<>();

    PlanOptions options(CommandLine line) {
        if (rungs < 2 || rungs > MOST_RUNGS) {
            throw OptionTypes.wrong(line, "--rungs", "a ladder has 2 to " + MOST_RUNGS + " throats");
        }
        PlanOptions options = PlanOptions.defaults().withRungs(rungs);
        if (!drills.isEmpty()) {
            options = options.with(EnumSet.copyOf(drills));
        }
        if (sharpen.isPresent()) {
            options = options.with(sharpen.get() == Sharpen.BREAK ? PlanOptions.Goal.BREAK : PlanOptions.Goal.EXPONENT);
        }
        return ladder.map(options::withLadder).orElse(options);
    }

    /** {@return diameters [m]} */
    List<Double> throats() {
        return throats.stream().map(Measured::value).toList();
    }

    /** {@return mean pressures [Pa, absolute]} */
    List<Double> pressures() {
        return pressures.stream().map(Measured::value).toList();
    }

    /** A law that nobody measured, as typed. */
    static final class FirstGuessOptions {

        @Option(
                names = "--rate",
                paramLabel = "\"RATE at PRESSURE\"",
                converter = OptionTypes.RateAtPressure.class,
                description =
                        "rate at a pressure, such as \"5.7 ± 0.5 mm/s at 1 MPa\", absolute; a of r = a P^n is the rate at one unit"
                                + " of pressure. Without an uncertainty, 10 %% is assumed")
        private Optional<OptionTypes.RateAt> rate;

        @Option(
                names = "--exponent",
                paramLabel = "N",
                converter = OptionTypes.Exponent.class,
                description = "exponent n, such as \"0.35 ± 0.05\"; without an uncertainty, 0.05 is assumed")
        private Optional<Measured> exponent;

        boolean typed() {
            return rate.isPresent() || exponent.isPresent();
        }

        FirstGuess guess(CommandLine line) {
            OptionTypes.RateAt at =
                    rate.orElseThrow(() -> OptionTypes.wrong(line, "--exponent", "a first guess needs --rate as well"));
            Measured slope = exponent.orElseThrow(
                    () -> OptionTypes.wrong(line, "--rate", "a first guess needs --exponent as well"));
            return new FirstGuess(at.rate(), at.pressure(), slope, FirstGuess.USUAL_SCATTER);
        }
    }
}
