package io.burnlaw.comparison;

import static io.burnlaw.quantity.NumberFormat.megapascal;

import io.burnlaw.quantity.NumberFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** What a comparison means, in a sentence with its numbers. */
final class Verdict {

    private Verdict() {}

    static Comparison.Compared on(Comparison.Compared numbers, double significance) {
        String text = numbers.differs() ? different(numbers, significance) : noDifference(numbers);
        return numbers.with(numbers.differs(), text);
    }

    private static String different(Comparison.Compared numbers, double significance) {
        return "%s differs from %s between %s and %s MPa: at %s MPa it burns %s. %s Two equal laws would differ this much by chance with %s%s."
                .formatted(
                        numbers.candidate(),
                        numbers.baseline(),
                        megapascal(numbers.pressureLow()),
                        megapascal(numbers.pressureHigh()),
                        megapascal(numbers.typical().pressure()),
                        change(numbers.typical()),
                        exponents(numbers, significance),
                        probability(numbers.adjustedPValue()),
                        family(numbers));
    }

    private static String noDifference(Comparison.Compared numbers) {
        return "No difference shown between %s and %s from %s to %s MPa (%s%s): at %s MPa it burns %s. %s"
                .formatted(
                        numbers.candidate(),
                        numbers.baseline(),
                        megapascal(numbers.pressureLow()),
                        megapascal(numbers.pressureHigh()),
                        probability(numbers.adjustedPValue()),
                        family(numbers),
                        megapascal(numbers.typical().pressure()),
                        change(numbers.typical()),
                        detectable(numbers));
    }

    private static String detectable(Comparison.Compared numbers) {
        return "This test detects changes of the rate above %2$s (%1$s %% power)."
                .formatted(
                        NumberFormat.significant(100 * numbers.power(), 2),
                        NumberFormat.percent(numbers.smallestDetectable(), 2));
    }

    /** Such as {@code 12.4 (8.1 to 16.9) % faster}; with the sign of the change in the interval. */
    private static String change(Comparison.Ratio ratio) {
        boolean faster = ratio.value() >= 1;
        double sign = faster ? 100 : -100;
        double first = sign * (ratio.low() - 1);
        double second = sign * (ratio.high() - 1);
        return "%s %% %s"
                .formatted(
                        NumberFormat.withInterval(
                                sign * (ratio.value() - 1), Math.min(first, second), Math.max(first, second)),
                        faster ? "faster" : "slower");
    }

    private static String exponents(Comparison.Compared numbers, double significance) {
        String difference = NumberFormat.withInterval(
                numbers.exponentDifference(),
                numbers.exponentInterval().low(),
                numbers.exponentInterval().high());
        if (numbers.parallel().pValue() > significance) {
            return "The exponents do not differ measurably: %s.".formatted(difference);
        }
        Comparison.Ratio first = numbers.ratio().get(0);
        Comparison.Ratio last = numbers.ratio().get(numbers.ratio().size() - 1);
        return "The exponents differ by %s: its rate is %s times the baseline's at the lowest of these pressures and %s times at the highest."
                .formatted(
                        difference,
                        NumberFormat.significant(first.value(), 3),
                        NumberFormat.significant(last.value(), 3));
    }

    private static String family(Comparison.Compared numbers) {
        return numbers.family() == 1 ? "" : " after correction for %d tests".formatted(numbers.family());
    }

    static String whyNot(Propellant baseline, Propellant candidate) {
        if (SharedRange.of(baseline, candidate).isEmpty()) {
            return candidate.pressureHigh() < candidate.pressureLow()
                            || baseline.pressureHigh() < baseline.pressureLow()
                    ? "%s and %s cannot be compared: one of them has no points."
                            .formatted(candidate.id(), baseline.id())
                    : "%s and %s share no range of pressures (%s to %s MPa against %s to %s MPa): fire %s between these."
                            .formatted(
                                    candidate.id(),
                                    baseline.id(),
                                    megapascal(candidate.pressureLow()),
                                    megapascal(candidate.pressureHigh()),
                                    megapascal(baseline.pressureLow()),
                                    megapascal(baseline.pressureHigh()),
                                    candidate.id());
        }
        double middle = SharedRange.of(baseline, candidate).get(0).middle();
        List<String> thin = List.of(baseline, candidate).stream()
                .filter(each -> each.lineAt(middle).isEmpty())
                .map(Propellant::id)
                .toList();
        return thin.isEmpty()
                ? "%s and %s have too few firings together for two laws: fire either of them a third time."
                        .formatted(candidate.id(), baseline.id())
                : "%s has fewer than two firings at different pressures: fire it again with another throat."
                        .formatted(String.join(", and ", thin));
    }

    /** Such as {@code p = 0.034}. */
    static String probability(double value) {
        return NumberFormat.probability(value);
    }

    /**
     * Pressures that two propellants share, without a change of law in either.
     *
     * @param low  [Pa, absolute]
     * @param high [Pa, absolute]
     */
    record SharedRange(double low, double high) {

        /** A range narrower than this says nothing of its own. */
        private static final double LEAST_RATIO = 1.05;

        static List<SharedRange> of(Propellant baseline, Propellant candidate) {
            double low = Math.max(baseline.pressureLow(), candidate.pressureLow());
            double high = Math.min(baseline.pressureHigh(), candidate.pressureHigh());
            TreeSet<Double> cuts = new TreeSet<>(baseline.breaks());
            cuts.addAll(candidate.breaks());
            List<SharedRange> ranges = new ArrayList<>();
            double from = low;
            for (double cut : cuts) {
                if (cut > from && cut < high) {
                    ranges.add(new SharedRange(from, cut));
                    from = cut;
                }
            }
            ranges.add(new SharedRange(from, high));
            // a sliver between two breaks that mean the same change is no range
            return ranges.stream()
                    .filter(each -> each.high > each.low * LEAST_RATIO)
                    .toList();
        }

        double middle() {
            return Math.sqrt(low * high);
        }
    }
}
