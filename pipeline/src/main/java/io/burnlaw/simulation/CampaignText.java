package io.burnlaw.simulation;

import io.burnlaw.quantity.Unit;
import java.util.Locale;

/** The campaign.yaml of an invented campaign: what its makers would know, not what is true. */
final class CampaignText {

    private CampaignText() {}

    static String of(Scenario scenario) {
        YamlText yaml = new YamlText();
        yaml.plain("format", "burnlaw-campaign/1");
        yaml.quoted("title", scenario.title());
        scenario.note().ifPresent(note -> yaml.quoted("note", note));
        scenario.preparedBy().ifPresent(name -> yaml.quoted("prepared_by", name));
        scenario.licence().ifPresent(licence -> yaml.plain("licence", licence));
        yaml.plain("ambient_pressure", FixedNumber.decimals(scenario.ambientPressure() / 1e3, 2) + " kPa");
        scenario.referenceTemperature()
                .ifPresent(kelvin -> yaml.plain(
                        "reference_temperature",
                        FixedNumber.decimals(Unit.DEGREE_CELSIUS.fromSi(kelvin), 1) + " degC"));
        yaml.open("formulations");
        scenario.propellants().forEach(propellant -> formulation(yaml, scenario, propellant));
        yaml.close();
        yaml.open("trace");
        yaml.plain("pressure_kind", scenario.logger().pressureKind().name().toLowerCase(Locale.ROOT));
        scenario.logger().sensorClass().ifPresent(text -> yaml.plain("pressure_uncertainty", text));
        yaml.close();
        hardware(yaml, scenario.hardware());
        return yaml.text();
    }

    private static void formulation(YamlText yaml, Scenario scenario, Scenario.Propellant propellant) {
        double std = scenario.instruments().density();
        double measured = propellant.density()
                + std
                        * Randomness.of(scenario.seed(), "density " + propellant.id())
                                .nextGaussian();
        String density = FixedNumber.decimals(measured / 1e3, 3)
                + (std > 0 ? " ± " + FixedNumber.digits(std / 1e3, 2) : "")
                + " g/cm3";
        yaml.open(propellant.id());
        yaml.quoted("title", propellant.title());
        yaml.plain("density", density);
        if (propellant.baseline()) {
            yaml.plain("baseline", "true");
        }
        propellant.compareWith().ifPresent(other -> yaml.plain("compare_with", other));
        propellant.additive().ifPresent(name -> yaml.quoted("additive", name));
        propellant
                .additiveFraction()
                .ifPresent(share -> yaml.plain("additive_fraction", FixedNumber.digits(100 * share, 4) + " %"));
        yaml.plain("specific_heat_ratio", FixedNumber.digits(propellant.specificHeatRatio(), 5));
        propellant
                .expectedCharacteristicVelocity()
                .ifPresent(velocity -> yaml.plain("characteristic_velocity", FixedNumber.digits(velocity, 4) + " m/s"));
        yaml.close();
    }

    private static void hardware(YamlText yaml, Scenario.MotorCase hardware) {
        if (hardware.pressureLimit().isEmpty() && hardware.safetyFactor().isEmpty()) {
            return;
        }
        yaml.open("hardware");
        hardware.pressureLimit()
                .ifPresent(limit -> yaml.plain("case_pressure_limit", FixedNumber.digits(limit / 1e6, 4) + " MPa"));
        hardware.safetyFactor().ifPresent(factor -> yaml.plain("safety_factor", FixedNumber.digits(factor, 4)));
        yaml.close();
    }
}
