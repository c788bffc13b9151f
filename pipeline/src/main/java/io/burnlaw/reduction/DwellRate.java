package io.burnlaw.reduction;

import io.burnlaw.reduction.balance.BurnInputs;
import io.burnlaw.reduction.balance.BurnPressures;
import io.burnlaw.reduction.balance.MassBalance;
import io.burnlaw.reduction.balance.TailOff;
import io.burnlaw.reduction.point.PressureDistribution;
import io.burnlaw.reduction.point.RateBudget;
import io.burnlaw.reduction.point.UsualUncertainty;
import java.util.Locale;
import java.util.Optional;

/**
 * Rate in a dwell at low pressure before the main rise, from the mass balance alone: the web has no end there to time.
 *
 * <p>If only a share f of the surface burned in the dwell, the rate over that share was higher by 1/f, and the web was
 * left uneven, which the tail-off shows later: x burned in the mean and x/f where it burned spread the web by s, with
 * s^2 = x^2 (1 - f)/f. So the tail-off bounds f from below, f &gt; 1/(1 + (s/x)^2); what it leaves open is in the
 * budget, and the point counts as a lower grade.
 *
 * <p><b>Source.</b> Derived.
 *
 * @param pressures how long at which pressure
 * @param rate      [m/s]
 * @param setAside  why it is not to be fitted; empty where it is
 */
record DwellRate(PressureDistribution pressures, double rate, RateBudget budget, Optional<String> setAside) {

    /** The least share of the web that gives a rate [1]. */
    private static final double LEAST_WEB = 0.02;

    /** The largest relative standard uncertainty with which a rate is still reported [1]. */
    private static final double VAGUE = 0.2;

    /** Where the tail-off leaves it open that less than this share of the surface burned, the point is set aside [1]. */
    private static final double MOSTLY_ALIGHT = 0.8;

    /** With fewer samples in it, a dwell may be a swing of the stand [1]: common practice, no source. */
    private static final double FEWEST_SAMPLES = 20;

    /** Begin and end of the dwell are left out, as shares of it [1]: there the pressure is on its way. */
    private static final double EDGE = 0.1;

    /**
     * Takes the rate.
     *
     * @return empty where there was no dwell, or too little burned in it, or too few samples of it were taken
     */
    static Optional<DwellRate> of(BurnReduction reduction) {
        if (reduction.found().dwellStart().isEmpty()) {
            return Optional.empty();
        }
        double start = reduction.found().dwellStart().getAsDouble();
        double end = reduction.found().dwellEnd().getAsDouble();
        double from = start + EDGE * (end - start);
        double to = end - EDGE * (end - start);
        MassBalance balance = reduction.estimate().balance();
        double burned = balance.webAt(to) - balance.webAt(from);
        double web = reduction.inputs().grain().web();
        if (!(burned > LEAST_WEB * web) || to - from < FEWEST_SAMPLES * reduction.interval()) {
            return Optional.empty();
        }
        double rate = burned / (to - from);
        double zeroStd = reduction.burn().record().zeroStd();
        BurnInputs shifted =
                reduction.inputs().withRecord(reduction.inputs().record().shifted(zeroStd));
        MassBalance other = MassBalance.of(shifted);
        double zero = (other.webAt(to) - other.webAt(from)) / burned - 1;
        double gain = reduction.definitions() / (2 * BurnReduction.RECTANGULAR);
        double spread = Math.max(reduction.estimate().tail().spread(), TailOff.NOTICEABLE / 2 * web);
        double share = spread / Math.max(reduction.estimate().webAtIgnition(), burned);
        double alight = share * share / (2 * BurnReduction.RECTANGULAR);
        RateBudget budget = new RateBudget()
                .add(
                        "web",
                        reduction.webStd(),
                        "m",
                        reduction.webStd() / web,
                        Math.min(reduction.webStd(), UsualUncertainty.CALIPER) / web)
                .add("surface alight", alight, "1", alight, 0)
                .add("sensor zero", zeroStd, "Pa", zero, 0)
                .add("definition of the rate", gain, "1", gain, 0)
                .add("edges of the dwell", EDGE, "1", EDGE * LEAST_WEB * web / burned, 0)
                .add("sampling", reduction.samplingStd(), "s", reduction.samplingStd() / (to - from), 0)
                .add(
                        "reduction method",
                        UsualUncertainty.METHOD,
                        "1",
                        UsualUncertainty.METHOD,
                        UsualUncertainty.METHOD);
        if (budget.relativeStd() > VAGUE) {
            return Optional.empty();
        }
        PressureDistribution pressures = BurnPressures.between(
                reduction.inputs().record(), from, to, reduction.burn().firing().ambientPressure());
        double alightShare = 1 / (1 + share * share);
        Optional<String> setAside = alightShare < MOSTLY_ALIGHT
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "by its tail-off as little as %.0f %% of the surface may have burned in the dwell",
                        100 * alightShare))
                : Optional.empty();
        return Optional.of(new DwellRate(pressures, rate, budget, setAside));
    }
}
