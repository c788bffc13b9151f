package io.burnlaw.comparison;

import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.RateLaw;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One propellant in a comparison: its points, or only its published law.
 *
 * @param id       as in the tables
 * @param fraction of the additive by mass [1]
 * @param points   used in its law; may be empty where there is a law
 * @param law      with covariance and scatter, taken where there are no points
 * @param batches  the casting that a firing or point came from, by its id; where the tables say
 * @param breaks   pressures at which its law changes [Pa, absolute], rising; empty where one law holds
 */
public record Propellant(
        String id,
        Optional<String> additive,
        OptionalDouble fraction,
        List<FitPoint> points,
        Optional<RateLaw> law,
        Map<String, String> batches,
        List<Double> breaks) {

    public Propellant {
        points = List.copyOf(points);
        batches = Map.copyOf(batches);
        breaks = breaks.stream().sorted().toList();
    }

    double pressureLow() {
        return points.stream()
                .mapToDouble(FitPoint::pressure)
                .min()
                .orElseGet(() -> law.map(RateLaw::pressureLow).orElse(Double.POSITIVE_INFINITY));
    }

    double pressureHigh() {
        return points.stream()
                .mapToDouble(FitPoint::pressure)
                .max()
                .orElseGet(() -> law.map(RateLaw::pressureHigh).orElse(Double.NEGATIVE_INFINITY));
    }

    /** The line that holds at a pressure: of the points between the breaks around it. */
    Optional<LogLine> lineAt(double pressure) {
        return points.isEmpty() ? law.flatMap(LogLine::of) : LogLine.of(around(pressure));
    }

    /** The points between the breaks around a pressure, in the order of the pressure. */
    List<FitPoint> around(double pressure) {
        double low = breaks.stream().filter(each -> each <= pressure).reduce(0.0, Math::max);
        double high = breaks.stream().filter(each -> each > pressure).reduce(Double.POSITIVE_INFINITY, Math::min);
        return points.stream()
                .filter(each -> each.pressure() >= low && each.pressure() < high)
                .sorted(Comparator.comparingDouble(FitPoint::pressure))
                .toList();
    }
}
