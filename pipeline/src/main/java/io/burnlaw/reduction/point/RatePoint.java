package io.burnlaw.reduction.point;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A burning rate at a pressure.
 *
 * @param id             unique in the campaign; the firing's id, or that with a suffix for a further point of it
 * @param cluster        points of one cluster are not independent: the firing's id, or the point's own
 * @param firing         the firing that it comes from
 * @param source         where it comes from
 * @param pressures      how long the motor was at each pressure in it
 * @param pressureStd    standard uncertainty of the mean pressure [Pa]
 * @param rate           [m/s], above zero
 * @param rateStd        its standard uncertainty [m/s], at least zero
 * @param rateSystematic the part of it that repeated firings share [m/s], at least zero
 * @param temperature    of the propellant [K]
 * @param method         such as {@code mass-balance}
 * @param lowerGrade     whether it counts as a lower grade (derived from thrust, timed by eye)
 * @param setAside       why it is not to be fitted; empty where it is
 * @param budget         where its uncertainty comes from
 * @param pressureError  what the uncertainty of the mean pressure is made of
 */
public record RatePoint(
        String id,
        String cluster,
        Optional<String> firing,
        String formulation,
        Source source,
        PressureDistribution pressures,
        double pressureStd,
        double rate,
        double rateStd,
        double rateSystematic,
        OptionalDouble temperature,
        String method,
        boolean lowerGrade,
        Optional<String> setAside,
        List<BudgetLine> budget,
        PressureError pressureError) {

    /** How the reason begins for which a firing gives no rate by itself: web was gone before the main rise. */
    public static final String BURNED_BEFORE = "web was gone before the main rise: ";

    /** What the budget calls it. */
    public static final String BURNED_BEFORE_LINE = "burned before the rise";

    /** Where a point comes from. */
    public enum Source {
        /** A motor firing. */
        FIRING,
        /** The dwell at low pressure inside a motor firing. */
        DWELL,
        /** A motor firing that was timed and not recorded. */
        TIMED,
        /** A strand with its record. */
        STRAND,
        /** Stated directly. */
        POINT
    }

    public RatePoint {
        budget = List.copyOf(budget);
        if (!(rate > 0) || !(rateStd >= 0) || !(pressureStd >= 0) || !(rateSystematic >= 0)) {
            throw new IllegalArgumentException("point " + id + ": rate " + rate + " m/s, its std " + rateStd
                    + " m/s, std of the pressure " + pressureStd + " Pa, systematic " + rateSystematic + " m/s");
        }
    }

    /** The same point, not to be fitted. */
    public RatePoint withSetAside(String reason) {
        return with(pressures, Optional.of(reason));
    }

    /** {@return whether it is set aside only because web was gone before the main rise} */
    public boolean burnedBefore() {
        return setAside.filter(reason -> reason.startsWith(BURNED_BEFORE)).isPresent();
    }

    /** {@return whether a part of its own makes it less certain than the other firings, so that it must weigh less} */
    public boolean lessCertain() {
        return source == Source.TIMED
                || budget.stream().anyMatch(line -> line.source().equals(BURNED_BEFORE_LINE));
    }

    /** {@return the same point, to be fitted: the whole surface burned before the main rise} */
    public RatePoint confirmed() {
        return with(pressures, Optional.empty());
    }

    /** The same point, with its pressures kept elsewhere. */
    public RatePoint keptIn(NumberStore store) {
        return with(pressures.keptIn(store), setAside);
    }

    private RatePoint with(PressureDistribution otherPressures, Optional<String> otherSetAside) {
        return new RatePoint(
                id,
                cluster,
                firing,
                formulation,
                source,
                otherPressures,
                pressureStd,
                rate,
                rateStd,
                rateSystematic,
                temperature,
                method,
                lowerGrade,
                otherSetAside,
                budget,
                pressureError);
    }
}
