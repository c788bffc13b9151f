package io.burnlaw.reduction;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.grain.Grain;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.balance.BurnInputs;
import io.burnlaw.reduction.balance.BurnPressures;
import io.burnlaw.reduction.balance.Continuity;
import io.burnlaw.reduction.balance.LocalExponent;
import io.burnlaw.reduction.balance.MassBalance;
import io.burnlaw.reduction.balance.RateEstimate;
import io.burnlaw.reduction.balance.WebTable;
import io.burnlaw.reduction.events.Burn;
import io.burnlaw.reduction.events.EventFinder;
import io.burnlaw.reduction.point.InstantaneousRate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Whether the record can be that of the grain in the log: both definitions of the rate must agree, and one power law of the
 * pressure must give the rates along the burn.
 *
 * <pre>
 *     misfit^2 = d^2 + s^2 + b^2
 *     d   the two rates at one pressure, ln of their ratio
 *     s   what one law leaves of ln r along the burn: standard deviation, and n beyond what propellants have times that of ln P
 *     b   the mean web's burnout less the bend of the trace, over the burn time, beyond what an uneven web explains
 * </pre>
 *
 * <p>Where they do not agree, what is usually wrong in a log is tried, one thing at a time. What a throat that changed a
 * little explains as well is left to the review of the throat.
 *
 * <p><b>Source.</b> Derived.
 *
 * @param misfit      of the grain in the log [1]
 * @param alternative what fits, where one thing does
 * @param size        standard uncertainty of the rate because of it [1]
 */
record RecordAgainstGrain(double misfit, Optional<Alternative> alternative, double size) {

    /**
     * Another grain.
     *
     * @param words  what would differ from the log
     * @param misfit of it [1]
     * @param rate   mass balance rate with it over that with the log's grain [1]
     */
    record Alternative(String words, double misfit, double rate) {}

    private record Fit(double misfit, double rate) {}

    /** From this misfit on other grains are tried [1]. */
    private static final double TRY = 0.015;

    /** From this one on it is reported even where none of them fits [1]. */
    private static final double TELL = 0.08;

    /** An alternative must leave less than this share of the misfit [1]. */
    private static final double BETTER = 0.4;

    /**
     * A grain that leaves no more than this is right, whatever else explains the course as well [1]. Starts that burned faster and
     * throats that grew leave 0.8 % and more with every other grain, the right grain up to 0.5 % (measured on simulated firings).
     */
    private static final double EXACT = 0.005;

    /** Of a misfit that is larger than all usual ones, an alternative may leave this share [1]. */
    private static final double FAR = 0.25;

    /** A rate that may be off by more than this is no rate [1]. */
    private static final double GROSS = 0.25;

    /** Where nothing explains the misfit, its effect on the rate is unknown: this much is gross then [1]. */
    private static final double UNKNOWN = 0.12;

    /** Exponents beyond these are rather a wrong grain than a propellant [1]: common practice, no source. */
    private static final double LEAST_EXPONENT = -0.3;

    private static final double MOST_EXPONENT = 0.75;

    /** Changes of a throat's area that are usual [1]: common practice, no source. */
    private static final double SLAG = -0.04;

    private static final double EROSION = 0.15;

    /** Below this share of the highest pressure a shrinking surface is a flicker [1]. */
    private static final double FADING = 0.2;

    /** More of the web than this, gone before the main rise, and the record is not asked [1]. */
    static final double LIT_BEFORE = 0.01;

    private static final int CELLS = 1000;

    /** Mass over volume may be this much further from the density than with the log's grain [1]. */
    private static final double DENSITY = 0.1;

    /**
     * Compares.
     *
     * @param hump   a start that was faster than its pressure explains
     * @param throat what the course of the rates says of the throat
     * @return what does not fit; empty where it does
     */
    static Optional<RecordAgainstGrain> of(
            Burn burn,
            BurnInputs inputs,
            EventFinder.Found found,
            Optional<ErosiveHump> hump,
            Optional<ThroatChange> throat) {
        BurnInputs coarse = inputs.withRecord(inputs.record().coarser(CELLS));
        Fit logged = fit(coarse, found, Double.POSITIVE_INFINITY);
        boolean usualThroat = throat.map(ThroatChange::area)
                .filter(area -> area > SLAG && area < EROSION)
                .isPresent();
        // A start that seems to burn faster, or a throat that seems to grow, is looked at whatever it leaves.
        boolean explained = hump.isPresent() || usualThroat;
        if (!(logged.misfit > (explained ? EXACT : TRY))) {
            return Optional.empty();
        }
        double unexplained = usualThroat
                ? fit(
                                coarse.withThroatAfter(
                                        coarse.throatAfter() * (1 + throat.get().area())),
                                found,
                                Double.POSITIVE_INFINITY)
                        .misfit
                : logged.misfit;
        // What explains the record is accepted unless another grain leaves clearly less than it does.
        boolean byOther = usualThroat && !(unexplained > (hump.isPresent() ? TRY / 2 : TRY));
        double byHump = hump.isPresent() ? Math.max(EXACT, BETTER * hump.get().residual()) : Double.POSITIVE_INFINITY;
        double allowed = byOther ? Math.min(EXACT, byHump) : byHump;
        double enough = Math.max(TELL / 2, FAR * unexplained);
        double most = Math.min(BETTER * unexplained, Math.min(enough, allowed));
        Optional<Alternative> best = LogMistake.of(burn.firing().grain()).stream()
                .filter(candidate -> massAllows(burn, candidate.grain()))
                .map(candidate -> tried(burn, coarse, candidate, found, logged, most))
                .filter(tried -> tried.misfit < most)
                .min(Comparator.comparingDouble(Alternative::misfit));
        if (best.isEmpty() && (hump.isPresent() || !(unexplained > TELL))) {
            return Optional.empty();
        }
        double size = best.map(other -> Math.abs(StrictMath.log(other.rate))).orElse(0.0);
        return Optional.of(new RecordAgainstGrain(logged.misfit, best, Math.max(size, logged.misfit)));
    }

    private static Alternative tried(
            Burn burn, BurnInputs inputs, LogMistake candidate, EventFinder.Found found, Fit logged, double most) {
        Burn other = new Burn(burn.firing(), burn.formulation(), burn.hardware(), candidate.grain(), burn.record());
        Fit fit = fit(BurnInputs.of(other, inputs.record()), found, most);
        return new Alternative(candidate.words(), fit.misfit, fit.rate / logged.rate);
    }

    /** How well a grain fits; a misfit above {@code most} is given without the part of the course. */
    private static Fit fit(BurnInputs inputs, EventFinder.Found found, double most) {
        RateEstimate estimate = RateEstimate.of(
                MassBalance.of(inputs),
                found.crossing(),
                OptionalDouble.empty(),
                RateEstimate.TRANSIENT,
                BurnedBefore.waited(found));
        double ambient = inputs.flow().ambient();
        double rate = estimate.massBalance();
        double burnTime = estimate.burnout() - estimate.ignition();
        if (!(rate > 0) || !(burnTime > 0) || !(estimate.lastEven() > estimate.firstEven())) {
            return new Fit(Double.NaN, rate);
        }
        double exponent = LocalExponent.of(estimate.balance(), estimate.firstEven(), estimate.lastEven());
        double ofMass = BurnPressures.between(inputs.record(), estimate.firstEven(), estimate.lastEven(), ambient)
                .powerMean(exponent);
        double ofThickness = BurnPressures.between(inputs.record(), estimate.ignition(), estimate.burnout(), ambient)
                .powerMean(exponent);
        double definitions =
                StrictMath.log(estimate.thicknessTime() * StrictMath.pow(ofMass / ofThickness, exponent) / rate);
        double uneven =
                1.5 * Math.sqrt(2) * estimate.tail().spread() / inputs.grain().web() + 0.02;
        double knee = Math.min(found.bisector().orElse(found.curvature()), found.curvature());
        double place =
                endsAtOnce(inputs.grain()) ? Math.max(0, Math.abs(estimate.burnout() - knee) / burnTime - uneven) : 0;
        if (Math.hypot(definitions, place) > most) {
            return new Fit(Math.hypot(definitions, place), rate);
        }
        List<InstantaneousRate> whole = Continuity.along(estimate, ambient);
        double highest =
                whole.stream().mapToDouble(InstantaneousRate::pressure).max().orElse(0);
        List<InstantaneousRate> along = whole.stream()
                .filter(at -> at.pressure() - ambient > FADING * (highest - ambient))
                .toList();
        if (along.size() < BurnTrend.INDEPENDENT) {
            return new Fit(Double.NaN, rate);
        }
        double course = course(along);
        return new Fit(Math.sqrt(definitions * definitions + course * course + place * place), rate);
    }

    /** A surface that shrinks to nothing leaves no bend in the trace. */
    private static boolean endsAtOnce(WebTable grain) {
        return grain.surface(0.97 * grain.web()) > 0.3 * grain.volume() / grain.web();
    }

    private static double course(List<InstantaneousRate> along) {
        double meanP = along.stream()
                .mapToDouble(at -> StrictMath.log(at.pressure()))
                .average()
                .orElseThrow();
        double meanR = along.stream()
                .mapToDouble(at -> StrictMath.log(at.rate()))
                .average()
                .orElseThrow();
        double pp = 0;
        double pr = 0;
        for (InstantaneousRate at : along) {
            double p = StrictMath.log(at.pressure()) - meanP;
            pp += p * p;
            pr += p * (StrictMath.log(at.rate()) - meanR);
        }
        // A burn whose pressure hardly varies shows no exponent: then that of most propellants holds.
        double prior = along.size() * square(0.01 / 0.25);
        double free = (pr + prior * LocalExponent.USUAL) / (pp + prior);
        double exponent = Math.max(LEAST_EXPONENT, Math.min(MOST_EXPONENT, free));
        double sum = 0;
        for (InstantaneousRate at : along) {
            sum += square(StrictMath.log(at.rate()) - meanR - exponent * (StrictMath.log(at.pressure()) - meanP));
        }
        return Math.sqrt(sum / along.size());
    }

    private static double square(double x) {
        return x * x;
    }

    private static boolean massAllows(Burn burn, Grain grain) {
        Optional<Double> logged = MassReview.ratio(burn);
        return logged.map(ratio -> Math.abs(StrictMath.log(ratio * burn.grain().volume(0) / grain.volume(0)))
                        < Math.abs(StrictMath.log(ratio)) + DENSITY)
                .orElse(true);
    }

    /** {@return the finding; none where record and grain fit} */
    static List<Finding> look(BurnReduction reduction) {
        return reduction.againstGrain().map(seen -> seen.told(reduction)).stream()
                .toList();
    }

    private Finding told(BurnReduction reduction) {
        boolean gross = size > (alternative.isPresent() ? GROSS : UNKNOWN);
        return Finding.at(
                        FindingCode.RECORD_AGAINST_GRAIN,
                        Sentence.of(
                                "%sThe record does not fit the grain in the log: the rate is %.3g mm/s by thickness and time and"
                                        + " %.3g mm/s by the mass balance, and with one pressure law record and grain still differ by %.2g"
                                        + " %%. %s %s",
                                alternative
                                        .map(other -> "Most likely " + other.words + ". ")
                                        .orElse(""),
                                1e3 * reduction.estimate().thicknessTime(),
                                1e3 * reduction.estimate().massBalance(),
                                100 * misfit,
                                alternative
                                        .map(other -> Sentence.of(
                                                "They agree within %.2g %% if %s; the rate would then be %.3g mm/s.",
                                                100 * other.misfit,
                                                other.words,
                                                1e3
                                                        * other.rate
                                                        * reduction.estimate().massBalance()))
                                        .orElse("None of the usual mistakes in a log explains this."),
                                gross
                                        ? "The firing gives no rate until the log is corrected."
                                        : Sentence.of(
                                                "The uncertainty of the rate includes all of this, %.2g %%.",
                                                100 * size)),
                        reduction.events().webBurnout())
                .withSeverity(gross ? Severity.REJECTION : Severity.CAUTION);
    }
}
