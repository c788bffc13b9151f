package io.burnlaw.regime;

import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.regime.Regimes.Break;
import io.burnlaw.regime.Regimes.Shape;
import io.burnlaw.regime.SegmentLaws.RateRatio;
import io.burnlaw.regime.Selector.Selection;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The pressures between the laws of a decision.
 *
 * @param spans at which pressures the motors of points burned, by the point's id
 * @param level of the intervals [1]
 */
record RegimeBreaks(Sample sample, Selection selection, Map<String, Regimes.Span> spans, double level) {

    List<Break> of(List<RateLaw> laws) {
        List<Break> breaks = new ArrayList<>();
        for (int j = 0; j + 1 < laws.size(); j++) {
            RateLaw below = laws.get(j);
            RateLaw above = laws.get(j + 1);
            boolean jump = selection.fit().shape() == Shape.JUMPING;
            Optional<Regimes.Span> gap = jump ? narrowed(j) : Optional.empty();
            double pressure = gap.map(found -> Math.sqrt(found.low() * found.high()))
                    .orElse(sample.pressure(selection.fit().breaks()[j]));
            Interval interval = gap.<Interval>map(
                            found -> new Interval.Estimated(found.low(), found.high(), level, Interval.Method.PROFILE))
                    .orElse(selection.intervals().get(j));
            breaks.add(
                    jump
                            ? jump(below, above, pressure, interval)
                            : new Break(
                                    pressure,
                                    interval,
                                    Break.Kind.SLOPE,
                                    1,
                                    new Interval.NotEstimable("the laws meet at this break"),
                                    below.exponent(),
                                    above.exponent()));
        }
        return breaks;
    }

    Break jump(RateLaw below, RateLaw above, double pressure, Interval interval) {
        return new Break(
                pressure,
                interval,
                Break.Kind.JUMP,
                above.rate(pressure) / below.rate(pressure),
                RateRatio.interval(below, above, pressure, level),
                below.exponent(),
                above.exponent());
    }

    /**
     * A jump that no other gap between points could hold lies above all pressures at which the motors of its lower side
     * burned with their law, and below all those of its upper side: that is less than the gap between their means.
     */
    Optional<Regimes.Span> narrowed(int j) {
        int first = selection.fit().starts()[j + 1];
        double below = sample.point(first - 1).pressure();
        double above = sample.point(first).pressure();
        boolean only = selection
                .intervals()
                .get(j)
                .estimated()
                .filter(found -> found.low() > below * (1 - 1e-6) && found.high() < above * (1 + 1e-6))
                .isPresent();
        double low = IntStream.range(selection.fit().starts()[j], first)
                .mapToDouble(i -> span(i).high())
                .max()
                .orElseThrow();
        double high = IntStream.range(first, selection.fit().end(j + 1))
                .mapToDouble(i -> span(i).low())
                .min()
                .orElseThrow();
        return only && below <= low && low < high && high <= above
                ? Optional.of(new Regimes.Span(low, high))
                : Optional.empty();
    }

    private Regimes.Span span(int i) {
        FitPoint point = sample.point(i);
        return spans.getOrDefault(point.id(), new Regimes.Span(point.pressure(), point.pressure()));
    }
}
