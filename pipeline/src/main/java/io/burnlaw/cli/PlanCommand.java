package io.burnlaw.cli;

import io.burnlaw.ballistics.Motor;
import io.burnlaw.campaign.CampaignReader;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.campaign.Problem;
import io.burnlaw.characterize.CampaignResult;
import io.burnlaw.characterize.Characterizer;
import io.burnlaw.planning.Cautions;
import io.burnlaw.planning.FirstGuess;
import io.burnlaw.planning.Plan;
import io.burnlaw.planning.PlanBasis;
import io.burnlaw.planning.PlanOptions;
import io.burnlaw.planning.Planner;
import io.burnlaw.planning.ThroatAnswer;
import io.burnlaw.publish.DocumentOf;
import io.burnlaw.publish.PlannableNumbers;
import io.burnlaw.publish.PublishedFormulation;
import io.burnlaw.quantity.Figures;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Unit;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Quantity;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Which throat to drill next. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        description = {
            "Says which throat to drill next, what pressure it gives and how sure that is: from a campaign, from its"
                    + " published document, or from a first guess of the law. A throat whose peak could pass the case"
                    + " limit over the safety factor is refused.",
            ""
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "Examples:",
            "  burnlaw plan my-campaign",
            "  burnlaw plan report/burnlaw.json --throat \"7.1 mm\" --pressure \"3 MPa\"",
            "  burnlaw plan report/burnlaw.json --ladder \"1 MPa to 4 MPa\" --rungs 4 --drills metric",
            "  burnlaw plan report/burnlaw.json --sharpen break",
            "  burnlaw plan strands/burnlaw.json --grain tube --outer-diameter \"50 mm\" --core-diameter \"20 mm\""
                    + " --segment-length \"120 mm\" --characteristic-velocity \"880 m/s\"",
            "  burnlaw plan --rate \"5.7 ± 0.6 mm/s at 1 MPa\" --exponent \"0.35 ± 0.05\" --density \"1.78 g/cm3\""
                    + " --characteristic-velocity \"880 m/s\" --grain bates --segments 2 --outer-diameter \"38 mm\""
                    + " --core-diameter \"14 mm\" --segment-length \"62 mm\" --case-limit \"7 MPa\"",
            "",
            "A plan replaces neither a proof test, nor distance and shelter, nor the local law and a licensed person."
        })
final class PlanCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "SOURCE",
            arity = "0..1",
            description = "a campaign folder, a burnlaw.json, or an index.html that carries it")
    private Optional<Path> source;

    @Option(
            names = "--formulation",
            paramLabel = "ID",
            description = "that is planned for; all of the campaign's if absent")
    private Optional<String> formulation;

    @ArgGroup(validate = false, heading = "%nQuestions:%n")
    private PlanQuestions questions = new PlanQuestions();

    @ArgGroup(validate = false, heading = "%nA first guess instead of a campaign:%n")
    private FirstGuessOptions guess = new FirstGuessOptions();

    @ArgGroup(validate = false, heading = "%nMotor and case:%n")
    private MotorOptions motor = new MotorOptions();

    @Override
    public Integer call() {
        TypedQuantity typed = new TypedQuantity(spec.commandLine());
        PlanOptions options = questions.options(typed);
        // all that was typed is looked at before anything is printed
        questions.throats(typed);
        questions.pressures(typed);
        motor.check(typed);
        if (source.isPresent() == guess.typed()) {
            throw new ParameterException(
                    spec.commandLine(),
                    guess.typed()
                            ? "a first guess and a campaign exclude each other: leave out --rate and --exponent, or "
                                    + source.get()
                            : "a campaign, a document, or a first guess with --rate and --exponent is missing");
        }
        return (guess.typed() ? ofGuess(typed, options) : ofSource(source.get(), typed, options)).number();
    }

    private ExitCode ofGuess(TypedQuantity typed, PlanOptions options) {
        FirstGuess law = guess.guess(typed);
        Measured density = needed(motor.density(typed), "--density", "1.78 g/cm3");
        Measured velocity = needed(motor.velocity(typed), "--characteristic-velocity", "880 m/s");
        if (!motor.grainTyped()) {
            throw new ParameterException(
                    spec.commandLine(), "a first guess needs a --grain with its dimensions, such as --grain bates");
        }
        Motor fired = motor.motor(typed, density.value(), velocity.value(), motor.ambientPressure(typed));
        PlanBasis basis = new PlanBasis(
                "the first guess",
                law.law(),
                List.of(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                fired,
                motor.words(typed),
                strengthStd(density, velocity, FirstGuess.USUAL_STRENGTH_STD),
                PlanBasis.USUAL_THROAT_STD,
                motor.hardware(typed, new Hardware(OptionalDouble.empty(), 1)),
                OptionalDouble.empty(),
                List.of());
        return answer(basis, typed, options);
    }

    private Measured needed(Optional<Measured> value, String option, String example) {
        return value.orElseThrow(() -> new ParameterException(
                spec.commandLine(),
                option + " is missing: the plan needs it, such as " + option + " \"" + example + "\""));
    }

    private static double strengthStd(Measured density, Measured velocity, double usual) {
        return density.std().isEmpty() && velocity.std().isEmpty()
                ? usual
                : Math.hypot(density.stdOr(0) / density.value(), velocity.stdOr(0) / velocity.value());
    }

    private ExitCode ofSource(Path from, TypedQuantity typed, PlanOptions options) {
        PrintWriter err = spec.commandLine().getErr();
        if (!Files.isDirectory(from)) {
            return DocumentFile.read(from).match(read -> ofDocument(from, read.document(), typed, options), refused -> {
                err.println(Terminal.safe(refused.text()));
                return ExitCode.UNUSABLE;
            });
        }
        return CampaignReader.read(from)
                .match(
                        read -> {
                            CampaignResult result = Characterizer.characterize(
                                    read.campaign(), Runtime.getRuntime().availableProcessors(), ProgressLines.to(err));
                            return ofDocument(
                                    from,
                                    DocumentOf.result(result, Version.number(), Optional.empty(), false),
                                    typed,
                                    options);
                        },
                        unusable -> {
                            ProblemList.print(unusable.problems(), err);
                            return ExitCode.UNUSABLE;
                        });
    }

    private ExitCode ofDocument(Path from, Characterization document, TypedQuantity typed, PlanOptions options) {
        List<Formulation> wanted = document.formulations().stream()
                .filter(each -> formulation.isEmpty() || each.id().equals(formulation.get()))
                .toList();
        if (wanted.isEmpty()) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--formulation " + formulation.orElse("") + ": the campaign has "
                            + document.formulations().stream()
                                    .map(Formulation::id)
                                    .collect(Collectors.joining(", ")));
        }
        List<Problem> problems = wanted.stream()
                .flatMap(each ->
                        PlannableNumbers.problems(from.toString(), each, plan(document, each), document.campaign())
                                .stream())
                .distinct()
                .toList();
        if (!problems.isEmpty()) {
            ProblemList.print(problems, spec.commandLine().getErr());
            return ExitCode.UNUSABLE;
        }
        ExitCode worst = ExitCode.DONE;
        for (Formulation each : wanted) {
            PrintWriter out = spec.commandLine().getOut();
            out.println(Terminal.safe(each.title() + " (" + each.id() + ")"));
            worst = worst.and(ofFormulation(each, document, typed, options));
            out.println();
        }
        return worst;
    }

    private ExitCode ofFormulation(
            Formulation each, Characterization document, TypedQuantity typed, PlanOptions options) {
        Optional<io.burnlaw.report.document.Plan> published = plan(document, each);
        Optional<PlanBasis> basis =
                published.flatMap(plan -> PublishedFormulation.planBasis(each, plan, document.campaign()));
        if (motor.grainTyped() && PublishedFormulation.laws(each).isPresent()) {
            basis = Optional.of(forGrain(basis, each, document, typed));
        }
        if (basis.isEmpty()) {
            String why = published
                    .map(io.burnlaw.report.document.Plan::sentence)
                    .orElse("No throat is named: the document holds no motor. Name one with --grain.");
            spec.commandLine().getOut().println(Terminal.safe(why));
            return ExitCode.DONE_WITH_REJECTIONS;
        }
        return answer(basis.get().withHardware(motor.hardware(typed, basis.get().hardware())), typed, options);
    }

    private static Optional<io.burnlaw.report.document.Plan> plan(Characterization document, Formulation formulation) {
        return document.plans().stream()
                .filter(plan -> plan.formulation().equals(formulation.id()))
                .findFirst();
    }

    /** The grain as typed; density and c* as typed, else as the document has them. */
    private PlanBasis forGrain(
            Optional<PlanBasis> published, Formulation each, Characterization document, TypedQuantity typed) {
        Measured density = needed(
                motor.density(typed)
                        .or(() ->
                                published.map(basis -> Measured.of(basis.motor().density())))
                        .or(() -> measured(each.density())),
                "--density",
                "1.78 g/cm3");
        Measured velocity = needed(
                motor.velocity(typed)
                        .or(() -> published.map(
                                basis -> Measured.of(basis.motor().gas().characteristicVelocity())))
                        .or(() -> measured(each.characteristicVelocity())),
                "--characteristic-velocity",
                "880 m/s");
        double ambient = PublishedFormulation.si(document.campaign().ambientPressure());
        Motor fired = motor.motor(typed, density.value(), velocity.value(), ambient);
        String words = motor.words(typed);
        return published
                .map(basis -> basis.withMotor(fired, words))
                .orElseGet(() -> PublishedFormulation.planBasis(
                                each,
                                fired,
                                words,
                                strengthStd(density, velocity, FirstGuess.USUAL_STRENGTH_STD),
                                document.campaign())
                        .orElseThrow());
    }

    private static Optional<Measured> measured(@Nullable Quantity quantity) {
        return Optional.ofNullable(quantity).map(found -> Measured.of(PublishedFormulation.si(found)));
    }

    private ExitCode answer(PlanBasis basis, TypedQuantity typed, PlanOptions options) {
        PrintWriter out = spec.commandLine().getOut();
        Plan plan = Planner.plan(basis, options);
        PlanTable.print(plan, out);
        boolean named = plan instanceof Plan.Planned;
        for (double diameter : questions.throats(typed)) {
            ThroatAnswer answer = Planner.throat(basis, options, diameter);
            named &= PlanTable.print(
                    "a throat of " + Figures.plain(Unit.MILLIMETRE.fromSi(diameter), 4) + " mm:", answer, out);
        }
        for (double pressure : questions.pressures(typed)) {
            ThroatAnswer answer = Planner.throatFor(basis, options, pressure);
            named &= PlanTable.print(
                    "a mean of " + Figures.plain(Unit.MEGAPASCAL.fromSi(pressure), 4) + " MPa absolute:", answer, out);
        }
        PlanTable.cautions(plan.cautions().isEmpty() ? Cautions.ALWAYS : plan.cautions(), out);
        return named ? ExitCode.DONE : ExitCode.DONE_WITH_REJECTIONS;
    }
}
