package io.burnlaw.regime;

import io.burnlaw.ratelaw.Interval;
import io.burnlaw.regime.Evidence.CountTest;
import io.burnlaw.regime.Evidence.Rival;
import io.burnlaw.regime.Regimes.Claim;
import io.burnlaw.regime.Regimes.Shape;
import io.burnlaw.regime.SequentialMonteCarlo.SimulatedP;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/** Decides how many pieces, of which shape, and against which rivals. */
final class Selector {

    /** A rival that leads by this much on the scale of the criterion is strongly preferred (Kass and Raftery 1995). */
    private static final double STRONG = 6;

    /**
     * A further law that nowhere among the points changes the rate by more than this [1] is of no use to anybody: common
     * practice, no source.
     */
    static final double SMALLEST_CHANGE = 0.02;

    /** What random numbers are for: a stream depends on the seed and its purpose, and on nothing else. */
    private enum Purpose {
        COUNT,
        JUMP,
        RIVAL,
        PROFILE
    }

    private final Sample sample;
    private final RegimeOptions options;
    private final double[] y;
    private final JoinedSearch joined;
    private final JumpingSearch jumping;
    private final CountBootstrap bootstrap;
    private final List<PiecewiseFit> joinedByCount = new ArrayList<>();
    private final List<PiecewiseFit> byCount = new ArrayList<>();

    Selector(Sample sample, RegimeOptions options) {
        this.sample = sample;
        this.options = options;
        this.y = sample.ys();
        int most = Math.max(1, Math.min(options.maximumSegments(), sample.size() / options.minimumPoints()));
        joined = new JoinedSearch(sample, most, options.minimumPoints());
        jumping = new JumpingSearch(sample, most, options.minimumPoints(), JumpingSearch.Pieces.SLOPED);
        bootstrap = new CountBootstrap(sample, joined, jumping, options.replicates(), 1 - options.level());
        fitAll(most);
    }

    private void fitAll(int most) {
        JoinedSearch.Best meeting = joined.best(y);
        JumpingSearch.Best leaping = jumping.best(y);
        byCount.add(JumpingFit.of(sample, y, new int[] {0}));
        joinedByCount.add(byCount.get(0));
        for (int k = 2; k <= most && meeting.rss()[k - 1] < Double.POSITIVE_INFINITY; k++) {
            PiecewiseFit a = JoinedFit.of(sample, y, meeting.breaks()[k - 1], options.minimumPoints());
            joinedByCount.add(a);
            PiecewiseFit better = a;
            if (leaping.rss()[k - 1] < Double.POSITIVE_INFINITY) {
                PiecewiseFit b = JumpingFit.of(sample, y, leaping.starts()[k - 1]);
                better = b.bic(sample.size()) < a.bic(sample.size()) ? b : a;
            }
            byCount.add(better);
        }
    }

    Selection select() {
        List<CountTest> tests = new ArrayList<>();
        int selected = 1;
        while (selected < byCount.size()) {
            NoiseModel noise = NoiseModel.of(sample, byCount.get(selected), sample.systematic());
            SplittableRandom random = stream(Purpose.COUNT, selected);
            CountTest test = bootstrap.test(y, byCount.get(selected - 1), noise, random);
            tests.add(test);
            if (new SimulatedP(test.pValue(), test.replicates()).rejectsAt(1 - options.level())) {
                selected++;
            } else {
                break;
            }
        }
        int sequential = selected;
        while (selected > 1 && change(byCount.get(selected - 1), byCount.get(selected - 2)) < SMALLEST_CHANGE) {
            selected--;
        }
        Optional<SimulatedP> jumpP = Optional.empty();
        PiecewiseFit fit = byCount.get(selected - 1);
        if (selected > 1) {
            NoiseModel noise = NoiseModel.of(sample, fit, sample.systematic());
            PiecewiseFit meeting = joinedByCount.get(selected - 1);
            SimulatedP p = bootstrap.jumpTest(y, meeting, noise, stream(Purpose.JUMP, selected));
            jumpP = Optional.of(p);
            fit = p.rejectsAt(bootstrap.jumpError())
                    ? JumpingFit.of(sample, y, jumping.best(y).starts()[selected - 1])
                    : meeting;
        }
        return judged(fit, sequential, tests, jumpP);
    }

    /**
     * One law through these points, whatever they say themselves.
     *
     * @param decided by a search in others
     */
    Selection single(Selection decided) {
        Selection one = judged(byCount.get(0), decided.sequential(), decided.tests(), Optional.empty());
        return new Selection(
                one.claim(),
                one.fit(),
                one.noise(),
                List.of(),
                decided.tests(),
                decided.bicByCount(),
                decided.sequential(),
                Optional.empty(),
                one.rivals());
    }

    /** {@return by how much two sets of laws differ at the point where they differ most [1]} */
    private static double change(PiecewiseFit more, PiecewiseFit fewer) {
        return IntStream.range(0, more.fitted().length)
                .mapToDouble(i -> Math.abs(Math.expm1(more.fitted()[i] - fewer.fitted()[i])))
                .max()
                .orElse(0);
    }

    private Selection judged(PiecewiseFit found, int sequential, List<CountTest> tests, Optional<SimulatedP> jumpP) {
        NoiseModel noise = NoiseModel.of(sample, found, sample.systematic());
        double points = noise.effectivePoints();
        Rivals judge = new Rivals(sample, points);
        List<Rivals.Fitted> rivals = found.count() == 1
                ? judge.ofSingleLaw(y)
                : judge.against(
                        y, search(found), noise, options.replicates(), options.level(), stream(Purpose.RIVAL, 0));
        Claim claim = claim(found, rivals, points);
        PiecewiseFit fit = claim == Claim.SMOOTH_CURVE ? byCount.get(0) : found;
        NoiseModel about = claim == Claim.SMOOTH_CURVE ? NoiseModel.of(sample, fit, sample.systematic()) : noise;
        BreakProfile profile = new BreakProfile(sample, jumping, options);
        List<Interval> intervals = IntStream.range(0, fit.count() - 1)
                .mapToObj(j -> profile.interval(y, fit, j, about, stream(Purpose.PROFILE, j)))
                .toList();
        List<Double> criteria = byCount.stream().map(f -> f.bic(points)).toList();
        return new Selection(claim, fit, about, intervals, tests, criteria, sequential, jumpP, rivals);
    }

    private Rivals.Search search(PiecewiseFit fit) {
        int count = fit.count();
        return values -> {
            double[] level = values.clone();
            Line line = Line.through(sample.xs(), level, sample.ws(), 0, level.length);
            for (int i = 0; i < level.length; i++) {
                level[i] -= line.at(sample.x(i));
            }
            return fit.shape() == Shape.JOINED ? joined.rss(level, count) : jumping.pair(level, count)[1];
        };
    }

    private Claim claim(PiecewiseFit found, List<Rivals.Fitted> rivals, double points) {
        if (found.count() == 1) {
            return Claim.SINGLE_LAW;
        }
        List<Rival> smooth =
                rivals.stream().map(Rivals.Fitted::rival).filter(Rival::smooth).toList();
        Rival best = smooth.stream().min(Comparator.comparingDouble(Rival::bic)).orElse(null);
        if (best == null || smooth.stream().allMatch(Rival::beaten)) {
            return Claim.BREAK;
        }
        double twoLaws = Math.min(byCount.get(1).rss(), joinedByCount.get(1).rss());
        boolean better = points * Math.log(twoLaws / best.rss()) > STRONG;
        return better && found.bic(points) - best.bic() > STRONG ? Claim.SMOOTH_CURVE : Claim.BEND;
    }

    private SplittableRandom stream(Purpose purpose, int number) {
        return new SplittableRandom(options.seed() * 1_000_003L + purpose.ordinal() * 7_919L + number);
    }

    /** Fits pieces that may jump, given the first point of each. */
    private static final class JumpingFit {

        private JumpingFit() {}

        /**
         * Each piece through its own points; a break lies in the middle of the gap between its neighbours, in x.
         *
         * @param starts first point of each piece
         */
        static PiecewiseFit of(Sample sample, double[] y, int[] starts) {
            double[] x = sample.xs();
            double[] w = sample.ws();
            int k = starts.length;
            double[] breaks = new double[k - 1];
            double[] slopes = new double[k];
            double[] levels = new double[k];
            double[] fitted = new double[x.length];
            double rss = 0;
            for (int j = 0; j < k; j++) {
                int end = j + 1 < k ? starts[j + 1] : x.length;
                Line line = Line.through(x, y, w, starts[j], end);
                slopes[j] = line.slope();
                levels[j] = line.at(0);
                rss += line.rss();
                for (int i = starts[j]; i < end; i++) {
                    fitted[i] = line.at(x[i]);
                }
                if (j > 0) {
                    breaks[j - 1] = (x[starts[j] - 1] + x[starts[j]]) / 2;
                }
            }
            return new PiecewiseFit(Shape.JUMPING, breaks, starts.clone(), slopes, levels, fitted, rss);
        }
    }

    /**
     * What a search decided, in the terms of x and y.
     *
     * @param claim           what may be said
     * @param fit             the pieces that are kept
     * @param noise           of the points about them
     * @param bicByCount      information criterion by count
     * @param sequential      count by the tests
     * @param jumpPValue      of joined against jumping
     */
    record Selection(
            Claim claim,
            PiecewiseFit fit,
            NoiseModel noise,
            List<Interval> intervals,
            List<CountTest> tests,
            List<Double> bicByCount,
            int sequential,
            Optional<SimulatedP> jumpPValue,
            List<Rivals.Fitted> rivals) {}
}
