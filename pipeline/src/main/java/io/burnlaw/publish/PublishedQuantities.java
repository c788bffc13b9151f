package io.burnlaw.publish;

import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.report.document.Quantity;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** SI values on their way into the document. */
final class PublishedQuantities {

    private static final int DIGITS = 8;

    /** Outside of these no power of ten is exact that would round to so many digits. */
    private static final double SMALLEST = 1e-12;

    private static final double LARGEST = 1e20;

    private static final double[] POWERS_OF_TEN = IntStream.rangeClosed(0, 20)
            .mapToDouble(power -> Double.parseDouble("1e" + power))
            .toArray();

    private PublishedQuantities() {}

    /**
     * A value without an uncertainty.
     *
     * @param si   the value in SI
     * @param unit that it is published in
     */
    static Quantity published(double si, Unit unit) {
        return Quantity.of(unit.fromSi(si), unit.ucum());
    }

    /**
     * A value with a standard uncertainty.
     *
     * @param si   the value in SI
     * @param std  its standard uncertainty in SI
     * @param unit that both are published in
     */
    static Quantity published(double si, double std, Unit unit) {
        return Quantity.of(unit.fromSi(si), unit.ucum(), unit.differenceFromSi(std));
    }

    /**
     * A measured value, with its uncertainty where one is known.
     *
     * @param measured in SI
     * @param unit     that it is published in
     */
    static Quantity published(Measured measured, Unit unit) {
        return measured.std().isPresent()
                ? published(measured.value(), measured.std().getAsDouble(), unit)
                : published(measured.value(), unit);
    }

    /**
     * A value with its interval, where one could be had.
     *
     * @param si       the value in SI
     * @param interval in SI
     * @param std      its standard uncertainty in SI, where it says something
     * @param unit     that all are published in
     */
    static Quantity published(double si, Interval interval, OptionalDouble std, Unit unit) {
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
     * A course over time, without its unit, to eight digits of the range that it goes through: no instrument has as many, and
     * all that a double has would make half of a report.
     *
     * @param si   the values in SI
     * @param unit that they are published in
     * @return one for each, in order
     */
    static List<Double> course(double[] si, Unit unit) {
        double[] values = Arrays.stream(si).map(unit::fromSi).toArray();
        DoubleSummaryStatistics all = Arrays.stream(values).summaryStatistics();
        double range = all.getMax() - all.getMin();
        if (!(range > SMALLEST) || !(range < LARGEST)) {
            return Arrays.stream(values).boxed().toList();
        }
        int decimals = DIGITS - 1 - (int) Math.floor(StrictMath.log10(range));
        // Whole powers of ten, and one division: the quotient is the double nearest to the decimal, so it is written
        // short.
        double scale = POWERS_OF_TEN[Math.abs(decimals)];
        return Arrays.stream(values)
                .map(value -> decimals < 0 ? Math.rint(value / scale) * scale : Math.rint(value * scale) / scale)
                .boxed()
                .toList();
    }

    /**
     * A value that may be missing.
     *
     * @param si   the value in SI, or nothing
     * @param unit that it is published in
     * @return the quantity, or null
     */
    static @Nullable Quantity published(OptionalDouble si, Unit unit) {
        return si.isPresent() ? published(si.getAsDouble(), unit) : null;
    }

    /**
     * A measured value that may be missing.
     *
     * @param measured in SI, or nothing
     * @param unit     that it is published in
     * @return the quantity, or null
     */
    static @Nullable Quantity published(Optional<Measured> measured, Unit unit) {
        return measured.map(value -> published(value, unit)).orElse(null);
    }
}
