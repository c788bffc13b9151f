package io.burnlaw.cli;

import io.burnlaw.ballistics.Motor;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.characterize.CampaignResult;
import io.burnlaw.characterize.Characterizer;
import io.burnlaw.cli.Burnlaw.ExitCode;
import io.burnlaw.cli.Burnlaw.Version;
import io.burnlaw.cli.PlanQuestions.FirstGuessOptions;
import io.burnlaw.planning.FirstGuess;
import io.burnlaw.planning.Plan;
import io.burnlaw.planning.PlanBasis;
import io.burnlaw.planning.PlanOptions;
import io.burnlaw.prediction.IgnitionSpike;
import io.burnlaw.publish.CharacterizationDocument;
import io.burnlaw.publish.PlannedDocument;
import io.burnlaw.publish.reading.PlannableNumbers;
import io.burnlaw.quantity.Measured;
import io.burnlaw.report.OwnFolder;
import io.burnlaw.report.document.Batches.BatchMember;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.Formulation;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
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
            "Says which throat to drill next, what pressure it gives and how certain that is: from a campaign, from its"
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
            "  burnlaw plan report/burnlaw.json --ladder \"1 MPa to 4 MPa\" --drills metric",
            "  burnlaw plan report/burnlaw.json --batch May",
            "  burnlaw plan report/burnlaw.json --confidence 99 --json > plan.json",
            "  burnlaw plan strands/burnlaw.json --grain tube --outer-diameter \"50 mm\" \\",
            "      --core-diameter \"20 mm\" --segment-length \"120 mm\" \\",
            "      --characteristic-velocity \"880 m/s\"",
            "  burnlaw plan --rate \"5.7 ± 0.6 mm/s at 1 MPa\" --exponent \"0.35 ± 0.05\" \\",
            "      --density \"1.78 g/cm3\" --characteristic-velocity \"880 m/s\" \\",
            "      --grain bates --segments 2 --outer-diameter \"38 mm\" \\",
            "      --core-diameter \"14 mm\" --segment-length \"62 mm\" --case-limit \"7 MPa\"",
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
            description = "formulation to plan for; if absent, all of the campaign")
    private Optional<String> formulation;

    @Option(
            names = "--batch",
            paramLabel = "ID",
            description =
                    "batch that the grains are cast from; if absent and the campaign names batches, a batch not yet cast")
    private Optional<String> batch;

    @Option(
            names = "--confidence",
            paramLabel = "PERCENT",
            converter = OptionTypes.ConfidenceOfPlans.class,
            description =
                    "confidence of all predictions, at least 90; if absent, the campaign's, or 95 for a first guess. Their upper ends"
                            + " decide which throats are refused")
    private Optional<Double> confidence;

    @Mixin
    private UnitsOption units;

    @Option(names = "--json", description = "print the document with these plans in it, and nothing else")
    private boolean json;

    @ArgGroup(validate = false, heading = "%nQuestions:%n")
    private PlanQuestions questions = new PlanQuestions();

    @ArgGroup(validate = false, heading = "%nA first guess instead of a campaign:%n")
    private FirstGuessOptions guess = new FirstGuessOptions();

    @ArgGroup(validate = false, heading = "%nMotor and case:%n")
    private MotorOptions motor = new MotorOptions();

    @Override
    public Integer call() {
        PlanOptions options = questions.options(spec.commandLine());
        if (confidence.isPresent()) {
            options = options.withLevel(confidence.get());
        }
        motor.check(spec.commandLine());
        if (source.isPresent() == guess.typed()) {
            throw new ParameterException(
                    spec.commandLine(),
                    guess.typed()
                            ? "give a first guess or a campaign, not both: leave out --rate and --exponent, or "
                                    + source.get()
                            : "name a campaign or a document, or give a first guess with --rate and --exponent");
        }
        if (source.isPresent()) {
            refuseWhatWouldBeIgnored();
        }
        return (guess.typed() ? ofGuess(options) : ofSource(source.get(), options)).number();
    }

    /** A number that was typed is planned with, or refused: nobody shall drill a throat for a grain that was not looked at. */
    private void refuseWhatWouldBeIgnored() {
        List<String> ofNoUse = motor.grainTyped() ? MotorOptions.OF_A_GUESS : MotorOptions.OF_A_GRAIN;
        ofNoUse.stream()
                .filter(option -> spec.commandLine().getParseResult().hasMatchedOption(option))
                .findFirst()
                .ifPresent(option -> {
                    throw new ParameterException(
                            spec.commandLine(),
                            motor.grainTyped()
                                    ? option + " belongs to a first guess; the campaign has its own value"
                                    : option
                                            + " needs --grain as well; without it, the grain that was fired last is"
                                            + " planned for, with its measured values");
                });
    }

    private ExitCode ofGuess(PlanOptions options) {
        if (batch.isPresent()) {
            throw new ParameterException(spec.commandLine(), "a first guess has no batches: leave out --batch");
        }
        FirstGuess law = guess.guess(spec.commandLine());
        Measured density = motor.neededDensity(spec.commandLine(), Optional.empty());
        Measured velocity = motor.neededVelocity(spec.commandLine(), Optional.empty());
        if (!motor.grainTyped()) {
            throw new ParameterException(
                    spec.commandLine(), "a first guess needs a --grain with its dimensions, such as --grain bates");
        }
        Motor fired = motor.motor(spec.commandLine(), density.value(), velocity.value(), motor.ambientPressure());
        PlanBasis basis = new PlanBasis(
                "the first guess",
                law.law(),
                List.of(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                fired,
                motor.words(),
                FirstGuess.strengthStd(density, velocity),
                PlanBasis.USUAL_THROAT_STD,
                motor.hardware(new Hardware(OptionalDouble.empty(), 1)),
                OptionalDouble.empty(),
                IgnitionSpike.NONE,
                List.of());
        PlanAnswers answers = answers(basis, options);
        if (json) {
            print(PlannedDocument.ofGuess(basis, answers.document(), options.level(), Version.number()));
        } else {
            answers.print(units.to(spec.commandLine().getOut()));
        }
        return code(answers.named());
    }

    private ExitCode ofSource(Path from, PlanOptions options) {
        PrintWriter err = spec.commandLine().getErr();
        OwnFolder.putBack(from);
        if (!Files.isDirectory(from) || OutputFolders.isReport(from)) {
            return OutputFolders.document(from).match(read -> ofDocument(from, read.document(), options), refused -> {
                err.println(Terminal.safe(refused.text()));
                return ExitCode.UNUSABLE;
            });
        }
        return CampaignReader.read(from)
                .match(
                        read -> {
                            CampaignResult result = Characterizer.characterize(
                                    read, Runtime.getRuntime().availableProcessors(), ProgressLines.to(err));
                            return ofDocument(
                                    from,
                                    CharacterizationDocument.result(result, Version.number(), Optional.empty(), false),
                                    options);
                        },
                        unusable -> {
                            ProblemList.print(unusable, err);
                            return ExitCode.UNUSABLE;
                        });
    }

    private ExitCode ofDocument(Path from, Characterization document, PlanOptions options) {
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
                .flatMap(each -> PlannableNumbers.problems(
                        from.toString(), each, new DocumentBasis(document, each).published(), document.campaign())
                        .stream())
                .distinct()
                .toList();
        if (!problems.isEmpty()) {
            ProblemList.print(problems, spec.commandLine().getErr());
            return ExitCode.UNUSABLE;
        }
        if (batch.isPresent()) {
            wanted = ofBatch(wanted, batch.get());
        }
        PrintWriter out = units.to(spec.commandLine().getOut());
        PlanOptions planned = confidence.isPresent()
                ? options
                : options.withLevelOf(document.campaign().confidence());
        List<PlanAnswers> all = new ArrayList<>();
        for (Formulation each : wanted) {
            PlanAnswers answers = ofFormulation(each, document, planned);
            all.add(answers);
            if (!json) {
                out.println(Terminal.safe(each.title() + " (" + each.id()
                        + batch.map(id -> ", batch " + id).orElse("") + ")"));
                answers.print(out);
                out.println();
            }
        }
        if (json) {
            Optional<Hardware> hardware = all.stream()
                    .flatMap(each -> each.basis().stream())
                    .map(PlanBasis::hardware)
                    .findFirst();
            print(PlannedDocument.of(
                    document, all.stream().map(PlanAnswers::document).toList(), hardware, Version.number()));
        }
        return code(all.stream().allMatch(PlanAnswers::named));
    }

    /** With the law of the batch in the place of the law for any batch. */
    private List<Formulation> ofBatch(List<Formulation> formulations, String id) {
        List<Formulation> found =
                formulations.stream().flatMap(each -> each.ofBatch(id).stream()).toList();
        if (!found.isEmpty()) {
            return found;
        }
        String known = formulations.stream()
                .flatMap(each -> Stream.ofNullable(each.batches()))
                .flatMap(batches -> batches.members().stream())
                .map(BatchMember::id)
                .collect(Collectors.joining(", "));
        throw new ParameterException(
                spec.commandLine(),
                "--batch " + id + ": "
                        + (known.isEmpty()
                                ? "no batch of this campaign has its own law"
                                : "there are laws of " + known));
    }

    private void print(Characterization document) {
        PrintWriter out = spec.commandLine().getOut();
        out.print(DocumentFile.text(document));
        out.flush();
    }

    private static ExitCode code(boolean named) {
        return named ? ExitCode.DONE : ExitCode.DONE_WITH_REJECTIONS;
    }

    private PlanAnswers ofFormulation(Formulation each, Characterization document, PlanOptions options) {
        DocumentBasis from = new DocumentBasis(document, each);
        return from.basis(motor, spec.commandLine())
                .map(basis -> answers(basis.withHardware(motor.hardware(basis.hardware())), options))
                .orElseGet(() -> PlanAnswers.none(
                        new Plan.Refused(each.id(), "none", OptionalDouble.empty(), from.whyNone(), Plan.CAUTIONS),
                        options));
    }

    private PlanAnswers answers(PlanBasis basis, PlanOptions options) {
        return PlanAnswers.of(basis, options, questions.throats(), questions.pressures());
    }
}
