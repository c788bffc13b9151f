package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
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
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
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
}
