package io.burnlaw.cli;

import io.burnlaw.ballistics.Motor;
import io.burnlaw.planning.FirstGuess;
import io.burnlaw.planning.PlanBasis;
import io.burnlaw.publish.reading.PublishedFormulation;
import io.burnlaw.quantity.Measured;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Plan;
import io.burnlaw.report.document.Quantity;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;

/**
 * What a plan from a published document rests on.
 *
 * @param formulation of it, that is planned for
 */
record DocumentBasis(Characterization document, Formulation formulation) {

    /** {@return the plan that the document has} */
    Optional<Plan> published() {
        return document.plans().stream()
                .filter(plan -> plan.formulation().equals(formulation.id()))
                .findFirst();
    }

    /** {@return why there is no basis} */
    String whyNone() {
        return published()
                .map(Plan::sentence)
                .orElse("No throat is named: the document has no motor. Give one with --grain.");
    }

    /**
     * The basis: for the grain that was fired last, or for the one that was typed.
     *
     * @param line  for what is wrong with it
     * @return empty where the document has no motor and none was typed, or it has no law
     */
    Optional<PlanBasis> basis(MotorOptions motor, CommandLine line) {
        Optional<PlanBasis> basis =
                published().flatMap(plan -> PublishedFormulation.planBasis(formulation, plan, document.campaign()));
        return motor.grainTyped() && PublishedFormulation.laws(formulation).isPresent()
                ? Optional.of(forGrain(basis, motor, line))
                : basis;
    }

    /** The grain as typed; density and c* as typed, else as the document has them. */
    private PlanBasis forGrain(Optional<PlanBasis> published, MotorOptions motor, CommandLine line) {
        Measured density = motor.neededDensity(
                line,
                published.map(basis -> Measured.of(basis.motor().density())).or(() -> measured(formulation.density())));
        Measured velocity = motor.neededVelocity(
                line,
                published
                        .map(basis -> Measured.of(basis.motor().gas().characteristicVelocity()))
                        .or(() -> measured(formulation.characteristicVelocity())));
        double ambient = PublishedFormulation.si(document.campaign().ambientPressure());
        Motor fired = motor.motor(line, density.value(), velocity.value(), ambient);
        String words = motor.words();
        return published
                .map(basis -> basis.withMotor(fired, words))
                .orElseGet(() -> PublishedFormulation.planBasis(
                                formulation,
                                fired,
                                words,
                                FirstGuess.strengthStd(density, velocity),
                                document.campaign())
                        .orElseThrow());
    }

    private static Optional<Measured> measured(@Nullable Quantity quantity) {
        return Optional.ofNullable(quantity).map(found -> Measured.of(PublishedFormulation.si(found)));
    }
}
