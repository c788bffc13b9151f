package io.burnlaw.reduction;

import io.burnlaw.campaign.ReductionSettings.Method;
import io.burnlaw.quantity.Measured;

/**
 * Tries what each uncertain input does to the rate of a firing.
 *
 * @param firing   what was measured before
 * @param quiet    zero and noise of the record
 * @param found    events
 * @param inputs   of the mass balance
 * @param estimate the rates
 * @param events   with their uncertainties
 */
record BudgetOfFiring(
        BurnReduction.Firing firing,
        QuietPart quiet,
        EventFinder.Found found,
        BurnInputs inputs,
        RateEstimate estimate,
        Events events) {

    RateBudget of(Method method) {
        RateBudget budget = new RateBudget();
        double web = inputs.grain().web();
        double webStd = firing.grain().web().stdOr(UsualUncertainty.WEB);
        budget.add("web", webStd, "m", webStd / web, Math.min(webStd, UsualUncertainty.CALIPER) / web);

        budget.add(
                "ignition",
                events.ignitionStd(),
                "s",
                effect(method, inputs, found.crossing() + events.ignitionStd(), estimate.even()),
                0);
        double burnTime = events.burnTime();
        double opinions = Math.abs(found.bisector().orElse(found.curvature()) - found.curvature()) / (2 * Math.sqrt(3));
        double definitions = Math.abs(estimate.massBalance() - estimate.thicknessTime())
                / estimate.massBalance()
                / (2 * Math.sqrt(3));
        budget.add("definition of the rate", definitions, "1", definitions, 0);
        if (method == Method.THICKNESS_TIME) {
            budget.add("web burnout", opinions, "s", opinions / burnTime, 0);
        } else {
            double shift = opinions / burnTime;
            budget.add(
                    "web burnout", opinions, "s", effect(method, inputs, found.crossing(), estimate.even() - shift), 0);
        }
        double zero = quiet.zeroStd();
        budget.add(
                "sensor zero",
                zero,
                "Pa",
                effect(method, inputs.withRecord(inputs.record().shifted(zero)), found.crossing(), estimate.even()),
                0);
        throat(method, budget);
        double chamberStd = chamberStd();
        double chamber = effect(
                method,
                inputs.withChamberVolume(inputs.chamberVolume() + chamberStd),
                found.crossing(),
                estimate.even());
        budget.add("chamber volume", chamberStd, "m3", chamber, chamber);
        double ratioStd = firing.formulation().specificHeatRatio().isPresent()
                ? UsualUncertainty.SPECIFIC_HEAT_RATIO / 3
                : UsualUncertainty.SPECIFIC_HEAT_RATIO;
        double ratio = effect(
                method,
                inputs.withSpecificHeatRatio(inputs.specificHeatRatio() + ratioStd),
                found.crossing(),
                estimate.even());
        budget.add("ratio of specific heats", ratioStd, "1", ratio, ratio);
        budget.add("reduction method", UsualUncertainty.METHOD, "1", UsualUncertainty.METHOD, UsualUncertainty.METHOD);
        return budget;
    }

    private void throat(Method method, RateBudget budget) {
        Measured before = firing.row().throatDiameter();
        double std = firing.row()
                .throatDiameterAfter()
                .map(after -> Math.hypot(before.stdOr(UsualUncertainty.THROAT), after.stdOr(UsualUncertainty.THROAT)))
                .orElse(UsualUncertainty.UNMEASURED_THROAT * before.value());
        double area = inputs.throatAfter() * (1 + 2 * std / before.value());
        budget.add(
                "change of the throat",
                std,
                "m",
                effect(method, inputs.withThroatAfter(area), found.crossing(), estimate.even()),
                0);
    }

    private double chamberStd() {
        return firing.row()
                .chamberVolume()
                .filter(v -> v.value() > inputs.grain().volume())
                .map(v -> v.stdOr(UsualUncertainty.CHAMBER * v.value()))
                .orElse(UsualUncertainty.DERIVED_CHAMBER * inputs.chamberVolume());
    }

    private double effect(Method method, BurnInputs changed, double ignition, double even) {
        RateEstimate other = RateEstimate.of(changed, ignition, even);
        return method == Method.THICKNESS_TIME
                ? other.thicknessTime() / estimate.thicknessTime() - 1
                : other.massBalance() / estimate.massBalance() - 1;
    }
}
