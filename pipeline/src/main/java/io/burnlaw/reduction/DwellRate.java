package io.burnlaw.reduction;

import java.util.Optional;

/**
 * Rate in a dwell at low pressure before the main rise, from the mass balance alone: the web has no end there to time.
 * If only a part of the surface burned, the rate over that part was higher; so the point counts as a lower grade.
 *
 * @param pressures how long at which pressure
 * @param rate      [m/s]
 * @param budget    its uncertainty
 */
record DwellRate(PressureDistribution pressures, double rate, RateBudget budget) {

    /** The least share of the web that a rate can be told from [1]. */
    private static final double LEAST_WEB = 0.02;

    /** The largest relative standard uncertainty with which a rate is still told [1]. */
    private static final double VAGUE = 0.2;

    /** Begin and end of the dwell are left out, as shares of it [1]: there the pressure is on its way. */
    private static final double EDGE = 0.1;

    /**
     * Takes the rate.
     *
     * @param reduction of the burn
     * @return empty where there was no dwell, or too little burned in it
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
        if (!(burned > LEAST_WEB * web)) {
            return Optional.empty();
        }
        double rate = burned / (to - from);
        double zeroStd = reduction.burn().record().zeroStd();
        BurnInputs shifted =
                reduction.inputs().withRecord(reduction.inputs().record().shifted(zeroStd));
        MassBalance other = MassBalance.of(shifted);
        double zero = (other.webAt(to) - other.webAt(from)) / burned - 1;
        double gain = reduction.definitions() / (2 * BurnReduction.RECTANGULAR);
        RateBudget budget = new RateBudget()
                .add(
                        "web",
                        reduction.webStd(),
                        "m",
                        reduction.webStd() / web,
                        Math.min(reduction.webStd(), UsualUncertainty.CALIPER) / web)
                .add("sensor zero", zeroStd, "Pa", zero, 0)
                .add("definition of the rate", gain, "1", gain, 0)
                .add("edges of the dwell", EDGE, "1", EDGE * LEAST_WEB * web / burned, 0)
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
        return Optional.of(new DwellRate(pressures, rate, budget));
    }
}
