package io.burnlaw.publish.reading;

import io.burnlaw.campaign.Choice;
import io.burnlaw.campaign.Plausible;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Unit;
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
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Whether the numbers of a document can be those of a law and a motor. A document may come from anywhere, and hold
 * anything that its schema allows; what is planned from it may be drilled. What somebody stated or measured has the bounds
 * of {@link Plausible}; what was worked out of it has wider ones, outside of which a number was spoiled or written in
 * another unit. Common practice, no source.
 */
public final class PlannableNumbers {

    private static final String MEND = "take the document as it was written, or run the campaign again";

    private final String file;
    private final List<Problem> problems = new ArrayList<>();

    private PlannableNumbers(String file) {
        this.file = file;
    }

    /**
     * Looks at all that a plan for one formulation would take from a document.
     *
     * @param file        path of the document as the user knows it
     * @param formulation that is planned for
     * @param plan        that the document has for it, if it has one
     * @param campaign    for the limit of the case
     * @return what is wrong; empty where nothing is
     */
    public static List<Problem> problems(
            String file, Formulation formulation, Optional<Plan> plan, CampaignSummary campaign) {
        PlannableNumbers numbers = new PlannableNumbers(file);
        numbers.campaign(campaign);
        numbers.formulation(formulation);
        plan.map(Plan::motor).ifPresent(numbers::motor);
        return List.copyOf(numbers.problems);
    }

    private void campaign(CampaignSummary campaign) {
        quantity("ambient_pressure", campaign.ambientPressure(), Dimension.PRESSURE, Plausible.AMBIENT_PRESSURE);
        quantity("case_pressure_limit", campaign.casePressureLimit(), Dimension.PRESSURE, 1e3, 1e8);
        number("confidence", campaign.confidence(), 0.5, 0.9999);
        if (campaign.safetyFactor() != null) {
            number("safety_factor", campaign.safetyFactor(), 1, 100);
        }
    }

    private void formulation(Formulation formulation) {
        quantity("density", formulation.density(), Dimension.DENSITY, Plausible.DENSITY);
        quantity("characteristic_velocity", formulation.characteristicVelocity(), Dimension.SPEED, Plausible.VELOCITY);
        law("single_law", formulation.singleLaw());
        if (formulation.batches() != null) {
            law("batches.next_law", formulation.batches().nextLaw());
            formulation.batches().members().forEach(each -> law("batches.members", each.law()));
        }
        if (formulation.threshold() != null) {
            pressure("threshold.pressure", formulation.threshold().pressure());
        }
        for (Point each : formulation.points()) {
            pressure("point " + each.id(), each.pressure());
            quantity("point " + each.id(), each.rate(), Dimension.SPEED, Plausible.RATE);
        }
        Regimes regimes = formulation.regimes();
        if (regimes != null) {
            regimes.laws().forEach(each -> law("regimes.laws", each));
            double last = 0;
            for (Break each : regimes.breaks()) {
                pressure("regimes.breaks", each.pressure());
                double at = each.pressure().value();
                number("regimes.breaks", at, last, Double.MAX_VALUE);
                last = Math.nextUp(at);
            }
            number(
                    "regimes.breaks",
                    regimes.breaks().size(),
                    regimes.laws().size() - 1,
                    regimes.laws().size() - 1);
        }
    }

    private void law(String place, @Nullable Law law) {
        if (law == null) {
            return;
        }
        pressure(place + ".reference_pressure", law.referencePressure());
        pressure(place + ".pressure_low", law.pressureLow());
        pressure(place + ".pressure_high", law.pressureHigh());
        quantity(place + ".rate_at_reference", law.rateAtReference(), Dimension.SPEED, 1e-7, 10);
        number(place + ".exponent", law.exponent().value(), -20, 20);
        number(place + ".residual_scatter", law.residualScatter(), 0, 1);
        number(place + ".degrees_of_freedom", law.degreesOfFreedom(), 0, 1e9);
        boolean square =
                law.covariance().size() == 2 && law.covariance().stream().allMatch(row -> row.size() == 2);
        if (!square) {
            wrong(
                    place + ".covariance",
                    "this is not a matrix of two by two",
                    law.covariance().toString(),
                    "two rows of two");
        } else {
            for (int i = 0; i < 2; i++) {
                number(place + ".covariance", law.covariance().get(i).get(i), 0, 100);
                number(place + ".covariance", law.covariance().get(i).get(1 - i), -100, 100);
                if (law.sharedCovariance() != null) {
                    number(
                            place + ".shared_covariance",
                            law.sharedCovariance().get(i).get(i),
                            0,
                            100);
                    number(
                            place + ".shared_covariance",
                            law.sharedCovariance().get(i).get(1 - i),
                            -100,
                            100);
                }
            }
        }
        if (!Choice.words(Weighting.class).contains(law.weighting())) {
            wrong(
                    place + ".weighting",
                    "this weighting is not known",
                    law.weighting(),
                    "proportional, constant or measured");
        }
    }

    private void motor(PlannedMotor motor) {
        quantity("plans.motor.density", motor.density(), Dimension.DENSITY, Plausible.DENSITY);
        quantity(
                "plans.motor.characteristic_velocity",
                motor.characteristicVelocity(),
                Dimension.SPEED,
                Plausible.VELOCITY);
        quantity("plans.motor.free_volume", motor.freeVolume(), Dimension.VOLUME, 1e-10, 1e3);
        quantity(
                "plans.motor.ambient_pressure",
                motor.ambientPressure(),
                Dimension.PRESSURE,
                Plausible.AMBIENT_PRESSURE);
        number("plans.motor.specific_heat_ratio", motor.specificHeatRatio(), 1.01, 2);
        number("plans.motor.strength_std", motor.strengthStd(), 0, 0.5);
        number("plans.motor.throat_std", motor.throatStd(), 0, 10);
        pressure("plans.motor.slow_below", motor.slowBelow());
        pressure("plans.motor.fast_above", motor.fastAbove());
        pressure("plans.motor.highest_fired", motor.highestFired());
        if (motor.ignitionSpike() != null) {
            number("plans.motor.ignition_spike", motor.ignitionSpike(), 0, 1e6);
        }
        if (motor.ignitionSpikeStd() != null) {
            number("plans.motor.ignition_spike_std", motor.ignitionSpikeStd(), 0, 1e6);
        }
        number(
                "plans.motor.surface",
                motor.surface().size(),
                motor.web().size(),
                motor.web().size());
        number("plans.motor.web", motor.web().size(), 2, 1e6);
        for (int i = 0; i < motor.web().size(); i++) {
            double least = i == 0 ? 0 : Math.nextUp(motor.web().get(i - 1));
            number("plans.motor.web", motor.web().get(i), least, i == 0 ? 0 : 1e4);
        }
        motor.surface().forEach(each -> number("plans.motor.surface", each, 0, 1e9));
        if (!motor.surface().isEmpty()) {
            number("plans.motor.surface", motor.surface().get(0), 1e-3, 1e9);
        }
    }

    private void pressure(String place, @Nullable Quantity quantity) {
        quantity(place, quantity, Dimension.PRESSURE, 1e3, 1e10);
    }

    private void quantity(String place, @Nullable Quantity quantity, Dimension dimension, Plausible bounds) {
        quantity(place, quantity, dimension, bounds.low(), bounds.high());
    }

    private void quantity(String place, @Nullable Quantity quantity, Dimension dimension, double low, double high) {
        if (quantity == null) {
            return;
        }
        Optional<Unit> unit = Optional.ofNullable(quantity.unit()).flatMap(Unit::spelled);
        if (unit.filter(found -> found.dimension() == dimension).isEmpty()) {
            wrong(
                    place,
                    "the unit is not that of " + dimension.noun(),
                    String.valueOf(quantity.unit()),
                    "such as " + dimension.usual().ucum());
            return;
        }
        double si = unit.get().toSi(quantity.value());
        if (!(si >= low && si <= high)) {
            wrong(
                    place,
                    "this value is impossible",
                    quantity.value() + " " + quantity.unit(),
                    unit.get().fromSi(low) + " to " + unit.get().fromSi(high) + " " + quantity.unit());
        }
    }

    private void number(String place, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            wrong(place, "this value is impossible", String.valueOf(value), low + " to " + high);
        }
    }

    private void wrong(String place, String what, String found, String expected) {
        problems.add(new Problem(file, 0, place, what, found, expected, MEND));
    }
}
