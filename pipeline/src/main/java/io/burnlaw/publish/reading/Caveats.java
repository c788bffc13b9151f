package io.burnlaw.publish.reading;

import io.burnlaw.publish.reading.FormulationChoice.ChosenFormulation;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What else differs between two formulations and would count as the propellant's difference. */
final class Caveats {

    /**
     * A temperature difference worth a word [K]. Sensitivities of a few tenths of a per cent a kelvin are usual (common
     * practice, no source): 3 K are then about a per cent of the rate.
     */
    private static final double LEAST_DIFFERENCE = 3;

    private Caveats() {}

    /** The caveats. */
    static List<String> of(List<ChosenFormulation> formulations) {
        List<String> caveats = new ArrayList<>();
        if (formulations.stream().map(ChosenFormulation::source).distinct().count() > 1) {
            caveats.add("The campaigns were measured separately: differences between their stands, sensors, batches and"
                    + " operators count as differences of the propellants here.");
        }
        caveats.addAll(betweenThem(formulations));
        return caveats;
    }

    /** What differs between the first formulation and the others in temperature and method. */
    static List<String> betweenThem(List<ChosenFormulation> formulations) {
        ChosenFormulation baseline = formulations.get(0);
        List<String> caveats = new ArrayList<>();
        for (ChosenFormulation candidate : formulations.subList(1, formulations.size())) {
            OptionalDouble warm = temperature(candidate);
            OptionalDouble cold = temperature(baseline);
            if (warm.isPresent()
                    && cold.isPresent()
                    && Math.abs(warm.getAsDouble() - cold.getAsDouble()) >= LEAST_DIFFERENCE) {
                caveats.add(
                        "The rates of %s are for %s °C, those of %s for %s °C: part of a difference may come from the temperatures."
                                .formatted(
                                        candidate.id(),
                                        NumberFormat.decimals(Unit.DEGREE_CELSIUS.fromSi(warm.getAsDouble()), 1),
                                        baseline.id(),
                                        NumberFormat.decimals(Unit.DEGREE_CELSIUS.fromSi(cold.getAsDouble()), 1)));
            }
            if (!methods(candidate).equals(methods(baseline))) {
                caveats.add(
                        "The rates of %s come from %s, those of %s from %s: part of a difference may come from the methods."
                                .formatted(candidate.id(), methods(candidate), baseline.id(), methods(baseline)));
            }
        }
        return caveats;
    }

    /** The temperature that the rates stand for [K]: the one they were referred to, else the mean of the points. */
    private static OptionalDouble temperature(ChosenFormulation chosen) {
        Quantity reference = chosen.source().document().campaign().referenceTemperature();
        if (chosen.formulation().temperatureSensitivity() != null && reference != null) {
            return si(reference);
        }
        List<Point> used =
                chosen.formulation().points().stream().filter(Point::used).toList();
        return used.stream().anyMatch(point -> point.temperature() == null)
                ? OptionalDouble.empty()
                : used.stream()
                        .map(Point::temperature)
                        .flatMapToDouble(each -> si(each).stream())
                        .average();
    }

    private static OptionalDouble si(@Nullable Quantity quantity) {
        return quantity == null || quantity.unit() == null
                ? OptionalDouble.empty()
                : Unit.spelled(quantity.unit()).stream()
                        .mapToDouble(unit -> unit.toSi(quantity.value()))
                        .findFirst();
    }

    private static String methods(ChosenFormulation chosen) {
        return chosen.formulation().points().stream()
                .filter(Point::used)
                .map(Point::method)
                .distinct()
                .sorted()
                .collect(Collectors.joining(" and "));
    }
}
