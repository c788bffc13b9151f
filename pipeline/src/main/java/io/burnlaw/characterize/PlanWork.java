package io.burnlaw.characterize;

import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Firing;
import io.burnlaw.characterize.FiredMotor.Fired;
import io.burnlaw.planning.Plan;
import io.burnlaw.planning.PlanBasis;
import io.burnlaw.planning.PlanOptions;
import io.burnlaw.planning.Planner;
import io.burnlaw.prediction.IgnitionSpike;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.TemperatureFit.TemperatureResult;
import io.burnlaw.regime.Regimes.UnsettledRegime;
import io.burnlaw.regime.Thresholds.Threshold;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The next throat for one formulation, for the grain that was fired last. */
final class PlanWork {

    private PlanWork() {}

    /**
     * A plan, with what it rests on.
     *
     * @param basis empty where no motor could be made
     */
    record Made(Plan plan, Optional<PlanBasis> basis) {}

    /**
     * Plans for a formulation.
     *
     * @param campaign with the limit of the case
     * @param fired    its firings that gave a rate, in the order of the log
     * @return the plan; a refusal where there is no law, or no motor to plan for
     */
    static Made of(Campaign campaign, FormulationResult result, List<Fired> fired) {
        return Guard.around(
                () -> guarded(campaign, result, fired),
                "the plan of " + result.formulation().id(),
                fault -> refused(result, "No throat is named. " + fault.message()));
    }

    private static Made guarded(Campaign campaign, FormulationResult result, List<Fired> fired) {
        if (result.laws().isEmpty()) {
            return refused(result, "No throat is named: there is no law to plan with.");
        }
        if (fired.isEmpty()) {
            return refused(
                    result,
                    "No throat is named: no motor of this propellant was fired, so the grain is unknown. Give one to"
                            + " burnlaw plan with --grain.");
        }
        Fired last = fired.get(fired.size() - 1);
        Optional<PlanBasis> basis = result.characteristicVelocity()
                .flatMap(velocity -> motor(result, fired, velocity.value()))
                .map(motor -> basis(campaign, result, fired, motor));
        return basis.map(found -> new Made(
                        Planner.plan(
                                found,
                                PlanOptions.defaults()
                                        .withLevelOf(campaign.fit().confidence())),
                        basis))
                .orElseGet(() -> refused(
                        result,
                        "No throat is named: for the grain of " + last.row().id()
                                + " neither a mass nor a density with a c* is known. Weigh the grain."));
    }

    private static Made refused(FormulationResult result, String reason) {
        return new Made(
                new Plan.Refused(result.formulation().id(), "none", OptionalDouble.empty(), reason, Plan.CAUTIONS),
                Optional.empty());
    }

    /** With the mean density of the firings: that of the last alone would carry its own errors of measurement. */
    private static Optional<Motor> motor(FormulationResult result, List<Fired> fired, double velocity) {
        List<Motor> all = PooledVelocity.believed(fired, Fired::reduced).stream()
                .flatMap(each -> FiredMotor.of(each.row(), result.formulation(), velocity).stream())
                .toList();
        Optional<Motor> last = FiredMotor.of(fired.get(fired.size() - 1).row(), result.formulation(), velocity);
        double density = all.stream().mapToDouble(Motor::density).average().orElse(0);
        return last.map(motor -> new Motor(
                motor.grain(),
                density,
                new Gas(velocity, motor.gas().specificHeatRatio()),
                motor.nozzle(),
                motor.freeVolume(),
                motor.ambientPressure()));
    }

    private static PlanBasis basis(Campaign campaign, FormulationResult result, List<Fired> fired, Motor motor) {
        Firing last = fired.get(fired.size() - 1).row();
        Optional<UnsettledRegime> unsettled = result.regimes().flatMap(found -> found.unsettled());
        OptionalDouble slowBelow = result.threshold()
                .map(PlanWork::upperEnd)
                .or(() -> unsettled
                        .filter(found -> found.side() == UnsettledRegime.Side.BELOW)
                        .map(UnsettledRegime::gapHigh))
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty());
        OptionalDouble fastAbove = unsettled
                .filter(found -> found.side() == UnsettledRegime.Side.ABOVE)
                .map(found -> OptionalDouble.of(found.gapLow()))
                .orElse(OptionalDouble.empty());
        return new PlanBasis(
                result.formulation().id(),
                result.laws().orElseThrow(),
                result.lawPoints(),
                slowBelow,
                fastAbove,
                motor,
                last.grain().inWords() + ", as in " + last.id(),
                strengthStd(result, fired),
                last.throatDiameter().stdOr(PlanBasis.USUAL_THROAT_STD),
                campaign.hardware(),
                fired.stream()
                        .filter(each -> !each.reduced().timed())
                        .mapToDouble(each -> each.reduced().maxPressure())
                        .max(),
                IgnitionSpike.of(fired.stream()
                        .flatMapToDouble(each -> IgnitionSpike.of(each.reduced()).stream())
                        .boxed()
                        .toList()),
                result.temperature().flatMap(TemperatureResult::estimated).map(PlanWork::remark).stream()
                        .toList());
    }

    private static double upperEnd(Threshold threshold) {
        return threshold.interval().estimated().map(interval -> interval.high()).orElse(threshold.gapHigh());
    }

    /**
     * Of density times c*, which is the pressure integral times the throat over the grain's volume: from the firings, with
     * the usual one taken as so many firings more.
     */
    private static double strengthStd(FormulationResult result, List<Fired> fired) {
        List<Double> strengths = new ArrayList<>();
        for (Fired each : PooledVelocity.believed(fired, Fired::reduced)) {
            Optional<Measured> velocity = each.reduced().characteristicVelocity();
            velocity.flatMap(own -> FiredMotor.of(each.row(), result.formulation(), own.value()))
                    .ifPresent(
                            motor -> strengths.add(motor.density() * motor.gas().characteristicVelocity()));
        }
        return PlanBasis.strengthStd(strengths);
    }

    private static String remark(TemperatureResult.Estimated temperature) {
        String effect = temperature
                .piKInterval()
                .estimated()
                .map(interval -> interval.low() > 0
                        ? "one degree more raises the pressure by %s, at most %s"
                                .formatted(
                                        NumberFormat.percent(temperature.piK(), 2),
                                        NumberFormat.percent(interval.high(), 2))
                        : "no effect is shown; it may be up to %s of the pressure per degree"
                                .formatted(NumberFormat.percent(Math.max(interval.high(), -interval.low()), 2)))
                .orElse("its effect on the pressure is unknown");
        return "All this is for grains at %s °C. By the firings at several temperatures, %s."
                .formatted(
                        NumberFormat.significant(Unit.DEGREE_CELSIUS.fromSi(temperature.referenceTemperature()), 3),
                        effect);
    }
}
