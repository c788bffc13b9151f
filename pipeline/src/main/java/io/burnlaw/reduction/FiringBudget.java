package io.burnlaw.reduction;

import io.burnlaw.ballistics.Motor;
import io.burnlaw.campaign.Campaign.ReductionSettings.Method;
import io.burnlaw.quantity.Measured;
import io.burnlaw.reduction.balance.BurnInputs;
import io.burnlaw.reduction.balance.MassBalance;
import io.burnlaw.reduction.balance.RateEstimate;
import io.burnlaw.reduction.balance.UnseenEnd;
import io.burnlaw.reduction.point.RateBudget;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.reduction.point.UsualUncertainty;

/**
 * Where the uncertainty of a firing's rate comes from, each input tried alone.
 *
 * <p>With c* closed on the same record, mass, density, the throat's size and the sensor's gain cancel from the rate and
 * are not in its budget; the gain is in the uncertainty of the pressure, all four are in that of c*. What stays is
 * what bends the course of the web over time: events, zero, noise, a throat that changes, gas stored in the chamber.
 */
final class FiringBudget {

    private final BurnReduction reduction;
    private final Method method;
    private final BurnInputs inputs;
    private final RateEstimate base;

    /** What an input changes shows on a coarser grid as well, at a fraction of the cost. */
    private static final int CELLS = 1000;

    private FiringBudget(BurnReduction reduction, Method method) {
        this.reduction = reduction;
        this.method = method == Method.INSTANTANEOUS ? Method.MASS_BALANCE : method;
        this.inputs = reduction.inputs().withRecord(reduction.inputs().record().coarser(CELLS));
        this.base = tried(inputs, reduction.found().crossing(), even());
    }

    /** Adds it up. */
    static RateBudget of(BurnReduction reduction, Method method) {
        return new FiringBudget(reduction, method).budget();
    }

    private RateBudget budget() {
        RateBudget budget = new RateBudget();
        double web = inputs.grain().web();
        double webStd = reduction.webStd();
        budget.add("web", webStd, "m", webStd / web, Math.min(webStd, UsualUncertainty.CALIPER) / web);
        events(budget);
        double definitions = reduction.definitions() / (2 * BurnReduction.RECTANGULAR);
        budget.add("definition of the rate", definitions, "1", definitions, 0);
        reduction
                .againstGrain()
                .ifPresent(seen -> budget.add("record against grain", seen.size(), "1", seen.size(), 0));
        double before = BurnedBefore.std(reduction);
        if (before > 0) {
            budget.add(RatePoint.BURNED_BEFORE_LINE, before * web, "m", before, 0);
        }
        double zero = reduction.burn().record().zeroStd();
        double ofCell = reduction.burn().record().noiseStd()
                / Math.sqrt(Math.max(1, inputs.record().samplesPerCell()));
        double after = UnseenEnd.share(inputs, zero, ofCell) / BurnReduction.RECTANGULAR;
        if (after > 0) {
            budget.add("gas at the end", after * inputs.mass(), "kg", after, 0);
        }
        budget.add(
                "sensor zero",
                zero,
                "Pa",
                effect(inputs.withRecord(inputs.record().shifted(zero))),
                0);
        double ofSamples = reduction.samplingStd();
        budget.add("sampling", ofSamples, "s", ofSamples / reduction.events().burnTime(), 0);
        double noise = reduction.burn().record().noiseStd();
        budget.add("noise", noise, "Pa", ofNoise(noise), 0);
        throat(budget);
        double gas = reduction
                .burn()
                .firing()
                .igniterGas()
                .map(known -> known.stdOr(0))
                .orElse(UsualUncertainty.IGNITER * inputs.mass());
        double igniter = effect(inputs.withIgniterGas(inputs.igniterGas() + gas));
        // The same igniter lights all of them.
        budget.add("igniter gas", gas, "kg", igniter, igniter);
        double chamberStd = chamberStd();
        double chamber = effect(inputs.withChamberVolume(inputs.chamberVolume() + chamberStd));
        budget.add("chamber volume", chamberStd, "m3", chamber, chamber);
        double ratioStd = reduction.burn().formulation().specificHeatRatio().isPresent()
                ? UsualUncertainty.SPECIFIC_HEAT_RATIO / 3
                : UsualUncertainty.SPECIFIC_HEAT_RATIO;
        double ratio = effect(inputs.withSpecificHeatRatio(inputs.flow().specificHeatRatio() + ratioStd));
        budget.add("ratio of specific heats", ratioStd, "1", ratio, ratio);
        budget.add("reduction method", UsualUncertainty.METHOD, "1", UsualUncertainty.METHOD, UsualUncertainty.METHOD);
        return budget;
    }

    private void events(RateBudget budget) {
        double ignition = reduction.events().ignitionStd();
        RateEstimate later = tried(inputs, reduction.found().crossing() + ignition, even());
        budget.add("ignition", ignition, "s", relative(rate(later), rate(base)), 0);
        double burnout = reduction.events().webBurnoutStd();
        double share = burnout / reduction.events().burnTime();
        double ofBurnout = method == Method.THICKNESS_TIME
                ? share
                : relative(rate(tried(inputs, reduction.found().crossing(), even() - share)), rate(base));
        budget.add("web burnout", burnout, "s", ofBurnout, 0);
    }

    /** Noise of the level over the root of the samples in the burn. */
    private double ofNoise(double noise) {
        double samples = reduction.inputs().record().samplesPerCell()
                * reduction.events().burnTime()
                / reduction.inputs().record().step();
        double mean = reduction.pressures(method).powerMean(1);
        return noise / mean / Math.sqrt(Math.max(1, samples));
    }

    private void throat(RateBudget budget) {
        Measured before = reduction.burn().firing().throatDiameter();
        // What the trace shows of a change that was not measured counts as uncertain by its whole size.
        double seen = reduction
                .throatChange()
                .map(change -> Math.abs(change.area()) / 2)
                .orElse(0.0);
        double std = reduction
                .burn()
                .firing()
                .throatDiameterAfter()
                .map(after -> Math.hypot(before.stdOr(UsualUncertainty.THROAT), after.stdOr(UsualUncertainty.THROAT)))
                .orElse(Math.max(UsualUncertainty.UNMEASURED_THROAT, seen) * before.value());
        double area = inputs.throatAfter() * (1 + 2 * std / before.value());
        budget.add("change of the throat", std, "m", effect(inputs.withThroatAfter(area)), 0);
    }

    private double chamberStd() {
        return reduction
                .burn()
                .firing()
                .chamberVolume()
                .filter(v -> Motor.fits(reduction.burn().grain(), v.value()))
                .map(v -> v.stdOr(UsualUncertainty.CHAMBER * v.value()))
                .orElse(UsualUncertainty.DERIVED_CHAMBER * reduction.inputs().chamberVolume());
    }

    private double effect(BurnInputs changed) {
        return relative(rate(tried(changed, reduction.found().crossing(), even())), rate(base));
    }

    private RateEstimate tried(BurnInputs inputs, double ignition, double even) {
        return RateEstimate.of(
                MassBalance.of(inputs),
                ignition,
                reduction.found().burnout(reduction.settings().burnoutEvent()),
                reduction.estimate().settled(),
                even);
    }

    private double even() {
        return reduction.estimate().even();
    }

    private double rate(RateEstimate estimate) {
        return method == Method.THICKNESS_TIME ? estimate.thicknessTime() : estimate.massBalance();
    }

    private static double relative(double value, double reference) {
        return Math.abs(value / reference - 1);
    }
}
