package io.burnlaw.regime;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.regime.Evidence.EvidenceSentence;
import io.burnlaw.regime.Evidence.Rival;
import io.burnlaw.regime.Regimes.Break;
import io.burnlaw.regime.Regimes.Claim;
import io.burnlaw.regime.Regimes.Regime;
import io.burnlaw.regime.Regimes.RegimeKind;
import io.burnlaw.regime.Regimes.Shape;
import io.burnlaw.regime.Regimes.UnsettledRegime;
import io.burnlaw.regime.Selector.Selection;
import io.burnlaw.regime.Thresholds.SlowSide;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Turns a decision in logarithms into laws, pressures, words and findings. */
final class RegimeReport {

    private final Sample sample;
    private final RegimeOptions options;
    private final Selection selection;
    private final PiecewiseFit fit;
    private final DecidingPoints deciding;
    private final RegimeSearch.Circumstances about;
    private Optional<Finding> ofPulses = Optional.empty();

    private RegimeReport(
            Sample sample,
            RegimeOptions options,
            Selection selection,
            DecidingPoints deciding,
            RegimeSearch.Circumstances about) {
        this.sample = sample;
        this.options = options;
        this.selection = selection;
        this.fit = selection.fit();
        this.deciding = deciding;
        this.about = about;
    }

    static Regimes of(
            Sample sample,
            RegimeOptions options,
            Selection selection,
            Optional<UnsettledRegime> unsettled,
            DecidingPoints deciding,
            RegimeSearch.Circumstances about) {
        return new RegimeReport(sample, options, selection, deciding, about).regimes(unsettled);
    }

    private Regimes regimes(Optional<UnsettledRegime> unsettled) {
        List<RateLaw> laws = SegmentLaws.of(sample, fit, selection.noise(), options.weighting());
        RegimeBreaks between = new RegimeBreaks(sample, selection, about.spans(), options.level());
        List<Break> breaks = between.of(laws);
        int slowest = SlowSide.lawsBelow(laws, breaks, options.level());
        if (slowest > 0 && fit.shape() == Shape.JUMPING) {
            PulsedFiring.above(about.pulsed(), laws.get(slowest - 1), options.level())
                    .ifPresent(bound ->
                            breaks.set(slowest - 1, bounded(between, laws, breaks.get(slowest - 1), slowest, bound)));
        }
        boolean allSlow = unsettled
                .map(u -> u.side() == UnsettledRegime.Side.ABOVE && !u.mayBeBadFirings())
                .orElse(false);
        List<Regime> regimes = new ArrayList<>();
        for (int j = 0; j < laws.size(); j++) {
            regimes.add(regime(laws, breaks, j, j < slowest || allSlow));
        }
        Evidence evidence = evidence();
        return new Regimes(
                selection.claim(),
                fit.count() == 1 ? Shape.JOINED : fit.shape(),
                regimes,
                breaks,
                evidence,
                unsettled,
                deciding.off().stream().filter(id -> !fitted(id)).toList(),
                findings(regimes, breaks, slowest, unsettled));
    }

    /**
     * The threshold of the slow regime with what firings that pulsed say: it is above the bound. A bound above a point that
     * burned fast is no news of the threshold but of the firing.
     */
    private Break bounded(RegimeBreaks between, List<RateLaw> laws, Break at, int slowest, PulsedFiring.Bound bound) {
        Regimes.Span gap = between.narrowed(slowest - 1)
                .orElse(new Regimes.Span(
                        laws.get(slowest - 1).pressureHigh(), laws.get(slowest).pressureLow()));
        Optional<Interval.Estimated> known = at.interval().estimated();
        double low = known.map(Interval.Estimated::low).orElse(gap.low());
        if (bound.pressure() <= low) {
            return at;
        }
        boolean held = bound.pressure() < gap.high();
        ofPulses = Optional.of(bound.finding(held));
        if (!held) {
            return at;
        }
        Interval interval = known.<Interval>map(
                        found -> new Interval.Estimated(bound.pressure(), found.high(), found.level(), found.method()))
                .orElse(at.interval());
        return between.jump(
                laws.get(slowest - 1),
                laws.get(slowest),
                Math.sqrt(Math.max(bound.pressure(), gap.low()) * gap.high()),
                interval);
    }

    private boolean fitted(String id) {
        return IntStream.range(0, sample.size())
                .anyMatch(i -> sample.point(i).id().equals(id));
    }

    private Regime regime(List<RateLaw> laws, List<Break> breaks, int j, boolean slow) {
        RateLaw law = laws.get(j);
        Interval exponent = law.exponentInterval(options.level());
        RegimeNames.Name name = RegimeNames.of(law.exponent(), exponent);
        RegimeKind kind = slow && name.kind() != RegimeKind.UNSTABLE ? RegimeKind.SLOW_BURNING : name.kind();
        double low = j == 0 ? law.pressureLow() : breaks.get(j - 1).pressure();
        double high = j == breaks.size() ? law.pressureHigh() : breaks.get(j).pressure();
        List<String> ids = IntStream.range(fit.starts()[j], fit.end(j))
                .mapToObj(i -> sample.point(i).id())
                .toList();
        String word = switch (kind) {
            case ORDINARY -> "";
            case PLATEAU -> ", a plateau";
            case MESA -> ", a mesa: the rate falls as the pressure rises";
            case UNSTABLE -> ", no steady pressure in a motor";
            case SLOW_BURNING -> ", slow burning";
        };
        String doubt = name.settled() || kind == RegimeKind.ORDINARY || kind == RegimeKind.SLOW_BURNING
                ? ""
                : " by the best estimate only: the interval allows others";
        String sentence = "From " + Words.pressure(low) + " to " + Words.pressure(high) + " the exponent is "
                + Words.number(law.exponent(), exponent) + word + doubt + "; " + Words.rate(law.rate(low)) + " to "
                + Words.rate(law.rate(high)) + ", " + ids.size() + " points"
                + (ids.size() == options.minimumPoints() && fit.count() > 1
                        ? ", the fewest that are allowed for a law."
                        : ".");
        return new Regime(law, kind, name.settled(), exponent, low, high, ids, sentence);
    }

    private Evidence evidence() {
        List<Double> criteria = selection.bicByCount();
        int criterion = IntStream.range(0, criteria.size())
                        .boxed()
                        .min((a, b) -> Double.compare(criteria.get(a), criteria.get(b)))
                        .orElse(0)
                + 1;
        return new Evidence(
                selection.tests(),
                criteria,
                selection.sequential(),
                criterion,
                sample.systematic(),
                sample.clusters(),
                selection.rivals().stream().map(Rivals.Fitted::rival).toList(),
                EvidenceSentence.of(sample, options, selection, criterion) + deciding.words());
    }

    private List<Finding> findings(
            List<Regime> regimes, List<Break> breaks, int slowest, Optional<UnsettledRegime> unsettled) {
        List<Finding> findings = new ArrayList<>();
        unsettled.ifPresent(u -> findings.add(Finding.of(
                u.mayBeBadFirings() ? FindingCode.FEW_FIRINGS_DECIDE : FindingCode.SLOW_REGIME, u.sentence())));
        findings.addAll(deciding.findings());
        if (slowest > 0) {
            Break at = breaks.get(slowest - 1);
            findings.add(Finding.of(
                    FindingCode.SLOW_REGIME,
                    "Below " + Words.pressure(at.pressure(), at.interval()) + " the propellant burns slowly: "
                            + Words.rate(regimes.get(slowest - 1)
                                    .law()
                                    .rate(regimes.get(slowest - 1).high())) + " just below it, "
                            + Words.rate(regimes.get(slowest).law().rate(at.pressure())) + " just above."));
        }
        ofPulses.ifPresent(findings::add);
        selection.rivals().stream()
                .map(Rivals.Fitted::rival)
                .filter(rival -> rival.kind() == Rival.Kind.ZERO_OFFSET && fit.count() > 1 && !rival.beaten())
                .findFirst()
                .ifPresent(rival -> findings.add(Finding.of(FindingCode.ZERO_OFFSET_RIVAL, rival.sentence())));
        if (selection.claim() == Claim.SMOOTH_CURVE || selection.claim() == Claim.BEND) {
            findings.add(Finding.of(FindingCode.CURVED_LAW, EvidenceSentence.curved(selection)));
        }
        for (Regime regime : regimes) {
            unstable(regime).ifPresent(findings::add);
        }
        return findings;
    }

    private static Optional<Finding> unstable(Regime regime) {
        double high = regime.exponentInterval()
                .estimated()
                .map(Interval.Estimated::high)
                .orElse(regime.law().exponent());
        if (high < 1) {
            return Optional.empty();
        }
        boolean certain = regime.law().exponent() >= 1;
        Finding finding = Finding.of(
                FindingCode.UNSTABLE_EXPONENT,
                "From " + Words.pressure(regime.low()) + " to " + Words.pressure(regime.high()) + " the exponent is "
                        + Words.number(regime.law().exponent(), regime.exponentInterval())
                        + (certain ? ", 1 or more." : ": its upper limit reaches 1.")
                        + " A motor has no steady pressure where the exponent is "
                        + NumberFormat.significant(1, 1) + " or more.");
        return Optional.of(certain ? finding : finding.withSeverity(Severity.NOTE));
    }

    /**
     * The trade's words for exponents. The figures are a convention of this project (no source draws the lines): mesa
     * n &lt; −0.05, plateau up to 0.1, unstable n ≥ 1. The word is that of the best estimate; it is settled where the whole
     * interval of the exponent supports what the word says: that the rate falls, hardly changes, or runs away.
     */
    static final class RegimeNames {

        private static final double PLATEAU = 0.1;
        private static final double FALLING = -0.05;

        /** How far the interval of a plateau may reach before the word is only a best estimate. */
        private static final double PLATEAU_WIDEST = 0.2;

        private RegimeNames() {}

        /** A word, and whether the whole interval supports it. */
        record Name(RegimeKind kind, boolean settled) {}

        static Name of(double exponent, Interval interval) {
            double low = interval.estimated().map(Interval.Estimated::low).orElse(Double.NEGATIVE_INFINITY);
            double high = interval.estimated().map(Interval.Estimated::high).orElse(Double.POSITIVE_INFINITY);
            if (exponent >= 1) {
                return new Name(RegimeKind.UNSTABLE, low >= 1);
            }
            if (exponent < FALLING) {
                return new Name(RegimeKind.MESA, high < 0);
            }
            if (exponent < PLATEAU) {
                return new Name(RegimeKind.PLATEAU, low > -PLATEAU_WIDEST && high < PLATEAU_WIDEST);
            }
            return new Name(RegimeKind.ORDINARY, low > 0 && high < 1);
        }
    }
}
