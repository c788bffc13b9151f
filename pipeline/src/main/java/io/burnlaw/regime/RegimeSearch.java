package io.burnlaw.regime;

import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.regime.Regimes.UnsettledRegime;
import io.burnlaw.regime.Selector.Selection;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Finds how many power laws the rate-pressure points follow, at which pressures the law changes, and how certain that
 * is.
 *
 * <p>In ln r over ln P, pieces that are joined or jump at their breaks are fitted by exact least squares. Starting from
 * one law, each count is tested against the next by a seeded bootstrap of the largest F; the first count that is not
 * rejected is taken, if its laws differ from one law by 2 % somewhere. Joined against jumping is then decided by a test of
 * the same kind, and every rival explanation is compared with the breaks.
 *
 * <p>Points that belong to no law are found before, and do not count in the number of laws: a few of them would hide
 * a change of a factor of four, or make one. Where they would have changed the answer, that is reported. Points at an end
 * that plainly follow another law, but are too few for one, are set apart and reported. Derivation and sources:
 * docs/methods.md, Regimes and thresholds.
 */
public final class RegimeSearch {

    private RegimeSearch() {}

    /**
     * Further information on the points, beside their rates and pressures.
     *
     * @param cautioned ids of the points whose firing carries a caution: they are more readily taken to be off, and it is said
     *                  when the answer rests on them
     * @param spans     by the id of a point, the pressures at which it burned all the while with its law; a point without
     *                  one counts at its pressure. They narrow the gap in which a jump of the rate lies
     * @param pulsed    firings without a rate that bound a threshold
     */
    public record Circumstances(Set<String> cautioned, Map<String, Regimes.Span> spans, List<PulsedFiring> pulsed) {

        public Circumstances {
            cautioned = Set.copyOf(cautioned);
            spans = Map.copyOf(spans);
            pulsed = List.copyOf(pulsed);
        }

        /**
         * Without a firing that pulsed.
         *
         * @param spans by the id of a point
         */
        public Circumstances(Set<String> cautioned, Map<String, Regimes.Span> spans) {
            this(cautioned, spans, List.of());
        }
    }

    /** A search among some of the points, and its decision. */
    private record Answer(Optional<UnsettledRegime> apart, Sample sample, Selection selection) {

        static Answer of(List<FitPoint> points, RegimeOptions options) {
            Optional<SparseEndScreen.Parted> parted = SparseEndScreen.find(points, options);
            List<FitPoint> rest = parted.map(SparseEndScreen.Parted::rest).orElse(points);
            Sample sample = Sample.of(rest, options.weighting(), options.systematicFloor());
            return new Answer(
                    parted.map(SparseEndScreen.Parted::apart), sample, new Selector(sample, options).select());
        }

        static Answer of(SparseEndScreen.Parted parted, RegimeOptions options) {
            Sample sample = Sample.of(parted.rest(), options.weighting(), options.systematicFloor());
            return new Answer(Optional.of(parted.apart()), sample, new Selector(sample, options).select());
        }

        int laws() {
            return selection.fit().count();
        }

        /** Whether another answer says the same about regimes. */
        boolean agrees(Answer other) {
            return laws() == other.laws() && apart.isPresent() == other.apart.isPresent();
        }

        String words() {
            return Words.laws(laws())
                    + (apart.isPresent() ? " and " + Words.points(apart.get().ids()) + " apart" : "");
        }
    }

    /**
     * Searches among points of which none is doubted.
     *
     * @param points rate-pressure points, in any order; points of one cluster in order of time
     * @return the laws, breaks, evidence and findings
     * @throws IllegalArgumentException if there are fewer than two different pressures: nothing to fit, as
     *                                  {@code RateLawFit} says in words
     */
    public static Regimes search(List<FitPoint> points, RegimeOptions options) {
        return search(points, options, new Circumstances(Set.of(), Map.of()));
    }

    /**
     * Searches.
     *
     * @param points rate-pressure points, in any order; points of one cluster in order of time
     * @param about  what else is known of them
     * @return the laws, breaks, evidence and findings
     * @throws IllegalArgumentException if there are fewer than two different pressures: nothing to fit, as
     *                                  {@code RateLawFit} says in words
     */
    public static Regimes search(List<FitPoint> points, RegimeOptions options, Circumstances about) {
        if (pressures(points) < 2) {
            throw new IllegalArgumentException(points.size() + " points at fewer than two pressures");
        }
        Sample all = Sample.of(points, options.weighting(), options.systematicFloor());
        BadPoints.Found bad = BadPoints.find(all, about.cautioned());
        List<String> off = off(points, all, options, bad);
        List<FitPoint> good = without(points, off);
        if (pressures(good) < 2) {
            return search(points, options, Answer.of(points, options), List.of(), about);
        }
        Answer answer = Answer.of(good, options);
        if (answer.laws() == 1 && answer.apart.isEmpty() && bad.slow() > 0 && off.size() == bad.places().length) {
            answer = SparseEndScreen.split(good, bad.slow(), options)
                    .filter(parted -> !parted.apart().mayBeBadFirings())
                    .filter(parted -> pressures(parted.rest()) >= 2)
                    .map(parted -> Answer.of(parted, options))
                    .orElse(answer);
        }
        return search(points, options, answer, off, about);
    }

    private static Regimes search(
            List<FitPoint> points, RegimeOptions options, Answer answer, List<String> off, Circumstances about) {
        DecidingPoints deciding = new DecidingPoints(off);
        if (!off.isEmpty()) {
            Answer withThem = Answer.of(points, options);
            if (!withThem.agrees(answer)) {
                deciding = deciding.withOff(answer.words(), withThem.words());
            }
        }
        List<FitPoint> good = without(points, off);
        List<String> doubted = good.stream()
                .map(FitPoint::id)
                .filter(about.cautioned()::contains)
                .toList();
        List<FitPoint> sure = without(good, doubted);
        if (!doubted.isEmpty() && 2 * doubted.size() <= good.size() && pressures(sure) >= 2) {
            Answer withoutThem = Answer.of(sure, options);
            if (!withoutThem.agrees(answer)) {
                deciding = deciding.withCautioned(doubted, answer.words(), withoutThem.words());
            }
        }
        if (answer.laws() > 1 || answer.apart.isPresent() || off.isEmpty()) {
            return RegimeReport.of(answer.sample, options, answer.selection, answer.apart, deciding, about);
        }
        // Where there is one law, bad points stay in it, as they stay in every fit of one law.
        Sample sample = Sample.of(points, options.weighting(), options.systematicFloor());
        return RegimeReport.of(
                sample, options, new Selector(sample, options).single(answer.selection), answer.apart, deciding, about);
    }

    /** Bad points, but for those at an end that form a regime of their own. */
    private static List<String> off(List<FitPoint> points, Sample all, RegimeOptions options, BadPoints.Found bad) {
        List<String> off = new ArrayList<>(
                Arrays.stream(bad.places()).mapToObj(i -> all.point(i).id()).toList());
        int n = all.size();
        List<List<String>> ends = List.of(
                IntStream.range(0, bad.low()).mapToObj(i -> all.point(i).id()).toList(),
                IntStream.range(n - bad.high(), n)
                        .mapToObj(i -> all.point(i).id())
                        .toList());
        for (List<String> end : ends) {
            List<String> others = off.stream().filter(id -> !end.contains(id)).toList();
            boolean regime = !end.isEmpty()
                    && pressures(without(points, others)) >= 2
                    && SparseEndScreen.find(without(points, others), options)
                            .filter(parted -> parted.apart().ids().equals(end))
                            .isPresent();
            if (regime) {
                off.removeAll(end);
            }
        }
        return off;
    }

    private static List<FitPoint> without(List<FitPoint> points, List<String> ids) {
        return points.stream().filter(point -> !ids.contains(point.id())).toList();
    }

    private static long pressures(List<FitPoint> points) {
        return points.stream().mapToDouble(FitPoint::pressure).distinct().count();
    }
}
