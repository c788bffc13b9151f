package io.burnlaw.report.document;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One firing.
 *
 * @param id unique
 * @param formulation id of the propellant
 * @param kind {@code strand} for a strand burned in a vessel; absent for a motor
 * @param status {@code used}, {@code flagged} or {@code rejected}
 * @param trace path of its record
 * @param note of the log
 * @param findings what was seen
 * @param events when things happened
 * @param burnTime s
 * @param actionTime s
 * @param web mm
 * @param meanPressure absolute
 * @param maxPressure absolute
 * @param rateMeanPressure absolute
 * @param rate mm/s
 * @param characteristicVelocity m/s
 * @param throat mm
 * @param totalImpulse N s
 * @param specificImpulse s
 * @param thrustCoefficient [1]
 * @param budget of its rate point
 * @param along rate along the burn
 * @param traceHistory for drawing
 * @param timed of a strand, between which moments
 * @param motor of a motor, what was fired
 */
public record Firing(
        String id,
        String formulation,
        @Nullable String kind,
        String status,
        @Nullable String trace,
        @Nullable String note,
        List<Finding> findings,
        @Nullable Events events,
        @Nullable Quantity burnTime,
        @Nullable Quantity actionTime,
        @Nullable Quantity web,
        @Nullable Quantity meanPressure,
        @Nullable Quantity maxPressure,
        @Nullable Quantity rateMeanPressure,
        @Nullable Rates rate,
        @Nullable Quantity characteristicVelocity,
        @Nullable Throat throat,
        @Nullable Quantity totalImpulse,
        @Nullable Quantity specificImpulse,
        @Nullable Quantity thrustCoefficient,
        List<BudgetLine> budget,
        List<Along> along,
        @Nullable TraceHistory traceHistory,
        @Nullable TimedSpan timed,
        @Nullable FiredMotor motor) {

    public Firing {
        findings = List.copyOf(findings);
        budget = List.copyOf(budget);
        along = List.copyOf(along);
    }

    /**
     * The same firing under another name, where documents are put together.
     *
     * @param otherId          of the firing
     * @param otherFormulation id of the propellant
     * @return the firing
     */
    public Firing called(String otherId, String otherFormulation) {
        return with(otherId, otherFormulation, budget, along, traceHistory, motor);
    }

    /**
     * The same firing with what was fired.
     *
     * @param fired as the log has it
     * @return the firing
     */
    public Firing withMotor(FiredMotor fired) {
        return with(id, formulation, budget, along, traceHistory, fired);
    }

    /** {@return whether it has more than its {@link #summary}} */
    boolean hasMore() {
        return traceHistory != null || !along.isEmpty() || !budget.isEmpty();
    }

    /** {@return the same firing without its rate along the burn, its trace and its budget} */
    public Firing summary() {
        return with(id, formulation, List.of(), List.of(), null, motor);
    }

    private Firing with(
            String otherId,
            String otherFormulation,
            List<BudgetLine> otherBudget,
            List<Along> otherAlong,
            @Nullable TraceHistory otherHistory,
            @Nullable FiredMotor otherMotor) {
        return new Firing(
                otherId,
                otherFormulation,
                kind,
                status,
                trace,
                note,
                findings,
                events,
                burnTime,
                actionTime,
                web,
                meanPressure,
                maxPressure,
                rateMeanPressure,
                rate,
                characteristicVelocity,
                throat,
                totalImpulse,
                specificImpulse,
                thrustCoefficient,
                otherBudget,
                otherAlong,
                otherHistory,
                timed,
                otherMotor);
    }

    /**
     * Rate and pressure at a moment of a burn.
     *
     * @param time s
     * @param web mm
     * @param pressure MPa, absolute
     * @param rate mm/s
     */
    public record Along(double time, double web, double pressure, double rate) {}

    /**
     * One source of a rate uncertainty.
     *
     * @param source what is uncertain
     * @param std its standard uncertainty
     * @param unit UCUM code
     * @param contribution to the relative standard uncertainty of the rate [1]
     * @param share of the variance [1]
     */
    public record BudgetLine(String source, double std, String unit, double contribution, double share) {}

    /**
     * The times of the events of a burn, on the axis of the record.
     *
     * @param start first sign of burning
     * @param ignition of the web
     * @param webBurnout referred to the mean web
     * @param tangentBisector first opinion on the burnout
     * @param maximumCurvature second opinion on the burnout
     * @param end of operation
     * @param actionStart share of the highest pressure, rising
     * @param actionEnd the same, falling
     */
    public record Events(
            Quantity start,
            Quantity ignition,
            Quantity webBurnout,
            Quantity tangentBisector,
            Quantity maximumCurvature,
            Quantity end,
            Quantity actionStart,
            Quantity actionEnd) {}

    /**
     * The motor as in the log, with the figures that follow from its geometry alone.
     *
     * @param grain kind and dimensions in words
     * @param propellantMass expelled, g
     * @param grainTemperature when fired, K
     * @param ambientPressure on the day, absolute
     * @param areaRatioStart burning surface over throat area before the firing, at ignition [1]
     * @param areaRatioMost the same where it is largest [1]
     * @param areaRatioEnd the same just before the mean web is gone [1]
     * @param portToThroat area of the port at ignition over throat area [1]; absent where there is no port or it is not
     *                     known
     */
    public record FiredMotor(
            String grain,
            @Nullable Quantity propellantMass,
            @Nullable Quantity grainTemperature,
            Quantity ambientPressure,
            @Nullable Double areaRatioStart,
            @Nullable Double areaRatioMost,
            @Nullable Double areaRatioEnd,
            @Nullable Double portToThroat) {}

    /**
     * The mean rate by each definition.
     *
     * @param thicknessTime web over burn time
     * @param massBalance corrected by the share of the pressure integral
     * @param difference the first over the second less 1, both at one pressure; absent where there is one rate only [1]
     */
    public record Rates(
            Quantity thicknessTime,
            @Nullable Quantity massBalance,
            @Nullable Double difference) {

        /** Rates of which nothing is compared. */
        public Rates(Quantity thicknessTime, @Nullable Quantity massBalance) {
            this(thicknessTime, massBalance, null);
        }
    }

    /**
     * Throat diameter.
     *
     * @param before the firing
     * @param after the firing
     */
    public record Throat(Quantity before, @Nullable Quantity after) {}

    /**
     * The begin and end of the burn of a strand, on the axis of the record.
     *
     * @param begin of the burn, or when the first break wire went
     * @param end of the burn, or when the last break wire went
     */
    public record TimedSpan(Quantity begin, Quantity end) {}

    /**
     * A record reduced to as many samples as a picture can show.
     *
     * @param time s
     * @param pressure MPa, absolute
     * @param thrust N
     * @param simulatedTime of the closure, s
     * @param simulatedPressure of the closure, MPa, absolute
     */
    public record TraceHistory(
            List<Double> time,
            List<Double> pressure,
            @Nullable List<Double> thrust,
            @Nullable List<Double> simulatedTime,
            @Nullable List<Double> simulatedPressure) {

        public TraceHistory {
            time = List.copyOf(time);
            pressure = List.copyOf(pressure);
            thrust = thrust == null ? null : List.copyOf(thrust);
            simulatedTime = simulatedTime == null ? null : List.copyOf(simulatedTime);
            simulatedPressure = simulatedPressure == null ? null : List.copyOf(simulatedPressure);
        }
    }
}
