package io.burnlaw.publish;

import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.report.document.Quantity;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** SI values on their way into the document. */
final class InUnits {

    private InUnits() {}

    /**
     * A value without an uncertainty.
     *
     * @param si   the value in SI
     * @param unit that it is published in
     * @return the quantity
     */
    static Quantity of(double si, Unit unit) {
        return Quantity.of(unit.fromSi(si), unit.ucum());
    }

    /**
     * A value with a standard uncertainty.
     *
     * @param si   the value in SI
     * @param std  its standard uncertainty in SI
     * @param unit that both are published in
     * @return the quantity
     */
    static Quantity of(double si, double std, Unit unit) {
        return Quantity.of(unit.fromSi(si), unit.ucum(), unit.differenceFromSi(std));
    }

    /**
     * A measured value, with its uncertainty where one is known.
     *
     * @param measured in SI
     * @param unit     that it is published in
     * @return the quantity
     */
    static Quantity of(Measured measured, Unit unit) {
        return measured.std().isPresent()
                ? of(measured.value(), measured.std().getAsDouble(), unit)
                : of(measured.value(), unit);
    }

    /**
     * A value with its interval, where one could be had.
     *
     * @param si       the value in SI
     * @param interval in SI
     * @param std      its standard uncertainty in SI, where it says something
     * @param unit     that all are published in
     * @return the quantity
     */
    static Quantity of(double si, Interval interval, OptionalDouble std, Unit unit) {
        Optional<Interval.Estimated> estimated = interval.estimated();
        return new Quantity(
                unit.fromSi(si),
                unit.ucum(),
                estimated.map(e -> unit.fromSi(e.low())).orElse(null),
                estimated.map(e -> unit.fromSi(e.high())).orElse(null),
                estimated.map(Interval.Estimated::level).orElse(null),
                std.isPresent() ? (Double) unit.differenceFromSi(std.getAsDouble()) : null);
    }

    /**
     * Many values, without their unit.
     *
     * @param si   the values in SI
     * @param unit that they are published in
     * @return one for each, in order
     */
    static List<Double> of(double[] si, Unit unit) {
        return Arrays.stream(si).map(unit::fromSi).boxed().toList();
    }

    /**
     * A value that may be missing.
     *
     * @param si   the value in SI, or nothing
     * @param unit that it is published in
     * @return the quantity, or null
     */
    static @Nullable Quantity ofOptional(OptionalDouble si, Unit unit) {
        return si.isPresent() ? of(si.getAsDouble(), unit) : null;
    }

    /**
     * A measured value that may be missing.
     *
     * @param measured in SI, or nothing
     * @param unit     that it is published in
     * @return the quantity, or null
     */
    static @Nullable Quantity ofOptional(Optional<Measured> measured, Unit unit) {
        return measured.map(value -> of(value, unit)).orElse(null);
    }
}
