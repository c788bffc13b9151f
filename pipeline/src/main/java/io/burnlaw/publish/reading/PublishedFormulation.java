package io.burnlaw.publish.reading;

import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.campaign.Choice;
import io.burnlaw.campaign.GrainDescription.SurfacePoint;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.comparison.Propellant;
import io.burnlaw.grain.SurfaceTable;
import io.burnlaw.planning.PlanBasis;
import io.burnlaw.prediction.IgnitionSpike;
import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.PiecewiseLaw;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.ratelaw.SystematicError;
import io.burnlaw.report.document.Batches;
import io.burnlaw.report.document.Characterization.CampaignSummary;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Plan;
import io.burnlaw.report.document.Plan.PlannedMotor;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.document.Regimes;
import io.burnlaw.report.document.Regimes.Break;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Reads the formulation of a published document back into SI, for plans and comparisons. */
public final class PublishedFormulation {

    private PublishedFormulation() {}

    /**
     * For a comparison.
     *
     * @param id that it is to have; ids of two documents may be the same
     * @return its points, its law, and where its law changes
     * @throws IllegalArgumentException if units or numbers are none that a run writes; the message names them
     */
    public static Propellant propellant(Formulation formulation, String id) {
        return new Propellant(
                id,
                Optional.ofNullable(formulation.additive()),
                formulation.additiveFraction() == null
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(formulation.additiveFraction()),
                points(formulation),
                Optional.ofNullable(formulation.singleLaw()).map(PublishedFormulation::law),
                batches(formulation),
                breaks(formulation.regimes()));
    }

    /** The casting of each firing or point, by the id under which it counts once. */
    private static Map<String, String> batches(Formulation formulation) {
        Map<String, String> batches = new HashMap<>();
        formulation.points().stream()
                .filter(point -> point.batch() != null)
                .forEach(point -> batches.put(point.cluster(), point.batch()));
        return batches;
    }

    /** {@return the laws to plan with: for the next batch, where batches are known; empty where none was fitted} */
    public static Optional<PiecewiseLaw> laws(Formulation formulation) {
        Regimes regimes = formulation.regimes();
        if (regimes != null && regimes.selected() > 1) {
            return Optional.of(new PiecewiseLaw(
                    regimes.laws().stream().map(PublishedFormulation::law).toList(), breaks(regimes)));
        }
        Batches batches = formulation.batches();
        return Optional.ofNullable(
                        batches == null || batches.nextLaw() == null ? formulation.singleLaw() : batches.nextLaw())
                .map(PublishedFormulation::law)
                .map(PiecewiseLaw::of);
    }

    /**
     * What a plan rests on, for the motor that the document's own plan has.
     *
     * @param plan     of the same document for it
     * @param campaign for the limit of the case
     * @return empty where no law was fitted, or the plan has no motor
     */
    public static Optional<PlanBasis> planBasis(Formulation formulation, Plan plan, CampaignSummary campaign) {
        PlannedMotor motor = plan.motor();
        if (motor == null) {
            return Optional.empty();
        }
        return laws(formulation)
                .map(laws -> new PlanBasis(
                        formulation.id(),
                        laws,
                        points(formulation),
                        optional(motor.slowBelow()),
                        optional(motor.fastAbove()),
                        motor(motor),
                        plan.grain(),
                        motor.strengthStd(),
                        Unit.MILLIMETRE.toSi(motor.throatStd()),
                        hardware(campaign),
                        optional(motor.highestFired()),
                        ignition(motor),
                        motor.remarks()));
    }

    /**
     * What a plan rests on, for a motor that the document knows nothing of: its points may come from strands.
     *
     * @param motor       to be fired, with some throat
     * @param strengthStd relative standard deviation, from firing to firing, of density times c* [1]
     * @param campaign    for the limit of the case
     * @return empty where no law was fitted
     */
    public static Optional<PlanBasis> planBasis(
            Formulation formulation, Motor motor, String grain, double strengthStd, CampaignSummary campaign) {
        return laws(formulation)
                .map(laws -> new PlanBasis(
                        formulation.id(),
                        laws,
                        points(formulation),
                        formulation.threshold() == null
                                ? OptionalDouble.empty()
                                : OptionalDouble.of(
                                        upper(formulation.threshold().pressure())),
                        OptionalDouble.empty(),
                        motor,
                        grain,
                        strengthStd,
                        PlanBasis.USUAL_THROAT_STD,
                        hardware(campaign),
                        OptionalDouble.empty(),
                        IgnitionSpike.NONE,
                        List.of()));
    }

    /** None in a document from before it was measured. */
    private static IgnitionSpike ignition(PlannedMotor motor) {
        return motor.ignitionSpike() == null || motor.ignitionSpikeStd() == null
                ? IgnitionSpike.NONE
                : new IgnitionSpike(motor.ignitionSpike(), motor.ignitionSpikeStd());
    }

    private static Motor motor(PlannedMotor motor) {
        List<SurfacePoint> table = new ArrayList<>();
        for (int i = 0; i < motor.web().size(); i++) {
            table.add(new SurfacePoint(
                    Unit.MILLIMETRE.toSi(motor.web().get(i)),
                    Unit.SQUARE_MILLIMETRE.toSi(motor.surface().get(i))));
        }
        // the throat is what the plan is to find: this one only scales the uncertainty of a throat
        double area = table.get(0).surface() / 250;
        return new Motor(
                new SurfaceTable(table, OptionalDouble.empty()),
                si(motor.density()),
                new Gas(si(motor.characteristicVelocity()), motor.specificHeatRatio()),
                new Nozzle(Math.sqrt(4 * area / Math.PI)),
                si(motor.freeVolume()),
                si(motor.ambientPressure()));
    }

    private static Hardware hardware(CampaignSummary campaign) {
        return new Hardware(
                optional(campaign.casePressureLimit()), campaign.safetyFactor() == null ? 1 : campaign.safetyFactor());
    }

    private static List<FitPoint> points(Formulation formulation) {
        return formulation.points().stream()
                .filter(Point::used)
                .map(each -> new FitPoint(
                        each.id(),
                        each.cluster(),
                        si(each.pressure()),
                        std(each.pressure()),
                        si(each.rate()),
                        std(each.rate()),
                        0))
                .toList();
    }

    private static List<Double> breaks(@Nullable Regimes regimes) {
        return regimes == null
                ? List.of()
                : regimes.breaks().stream()
                        .map(Break::pressure)
                        .map(PublishedFormulation::si)
                        .toList();
    }

    private static RateLaw law(Law law) {
        SystematicError shared = law.sharedCovariance() == null
                ? SystematicError.NONE
                : new SystematicError(
                        law.sharedCovariance().get(0).get(0),
                        law.sharedCovariance().get(0).get(1),
                        law.sharedCovariance().get(1).get(1));
        return new RateLaw(
                StrictMath.log(si(law.rateAtReference())),
                law.exponent().value(),
                si(law.referencePressure()),
                Math.max(0, law.covariance().get(0).get(0) - shared.rateVariance()),
                law.covariance().get(0).get(1) - shared.covariance(),
                Math.max(0, law.covariance().get(1).get(1) - shared.exponentVariance()),
                law.degreesOfFreedom(),
                law.residualScatter(),
                si(law.pressureLow()),
                si(law.pressureHigh()),
                law.pointsUsed(),
                weighting(law.weighting()),
                shared);
    }

    private static Weighting weighting(String word) {
        return Choice.of(Weighting.class, word)
                .orElseThrow(() -> new IllegalArgumentException("a document with the weighting " + word));
    }

    private static double upper(Quantity quantity) {
        return quantity.high() == null ? si(quantity) : unit(quantity).toSi(quantity.high());
    }

    private static OptionalDouble optional(@Nullable Quantity quantity) {
        return quantity == null ? OptionalDouble.empty() : OptionalDouble.of(si(quantity));
    }

    /** A published quantity in SI. */
    public static double si(Quantity quantity) {
        return unit(quantity).toSi(quantity.value());
    }

    private static double std(Quantity quantity) {
        return quantity.std() == null ? 0 : unit(quantity).differenceToSi(quantity.std());
    }

    private static Unit unit(Quantity quantity) {
        String code = quantity.unit();
        return code == null
                ? Unit.ONE
                : Unit.spelled(code)
                        .orElseThrow(() -> new IllegalArgumentException("a document with the unit " + code));
    }
}
