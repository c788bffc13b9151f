package io.burnlaw.report.document;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * All results for one propellant.
 *
 * @param id as in the tables
 * @param title what people read
 * @param baseline whether others are compared with it
 * @param compareWith what it is compared with
 * @param additive its name
 * @param additiveFraction by mass [1]
 * @param density as measured
 * @param characteristicVelocity pooled c* from the firings
 * @param verdict the answer in one sentence
 * @param caution what to watch for when the formulas are used, in one or two sentences; absent where there is nothing
 * @param points in the order of the log
 * @param singleLaw one law over the whole range
 * @param notFitted why there is none
 * @param useLaws the laws to design with, one for each range of pressure, from low to high; the only list that another tool has
 *                to read. Their curves are left out
 * @param otherFits for comparison
 * @param regimes piecewise laws
 * @param batches the law over its batches and the prediction for the next one; absent where points name no batch
 * @param threshold of the slow regime
 * @param faster the pressures needed to burn faster
 * @param temperatureSensitivity where two temperatures were fired
 * @param stability whether a steady pressure exists
 * @param withinBetween two ways to the exponent
 * @param closure how well the law gives back the traces
 * @param validRange where the laws were measured
 * @param notEstimated figures that these firings cannot give
 * @param findings of the law
 * @param without its laws as they would be with one firing less; a firing without which too few are left is not in it
 */
public record Formulation(
        String id,
        String title,
        boolean baseline,
        @Nullable String compareWith,
        @Nullable String additive,
        @Nullable Double additiveFraction,
        @Nullable Quantity density,
        @Nullable Quantity characteristicVelocity,
        String verdict,
        @Nullable String caution,
        List<Point> points,
        @Nullable Law singleLaw,
        @Nullable NotFitted notFitted,
        @Nullable List<Law> useLaws,
        List<OtherFit> otherFits,
        @Nullable Regimes regimes,
        @Nullable Batches batches,
        @Nullable Threshold threshold,
        List<FasterAnswer> faster,
        @Nullable TemperatureSensitivity temperatureSensitivity,
        @Nullable Stability stability,
        @Nullable WithinBetween withinBetween,
        @Nullable Closure closure,
        @Nullable ValidRange validRange,
        @Nullable List<NotEstimated> notEstimated,
        List<Finding> findings,
        @Nullable List<LawWithout> without) {

    public Formulation {
        useLaws = List.copyOf(useLaws == null ? toUse(singleLaw, regimes) : useLaws);
        points = List.copyOf(points);
        otherFits = List.copyOf(otherFits);
        faster = List.copyOf(faster);
        notEstimated = notEstimated == null ? List.of() : List.copyOf(notEstimated);
        findings = List.copyOf(findings);
        without = without == null ? null : List.copyOf(without);
    }

    /**
     * The same for one of its batches.
     *
     * @param batch id of the batch
     * @return with the batch's law as its law; empty where the batch has none
     */
    public Optional<Formulation> ofBatch(String batch) {
        return Stream.ofNullable(batches)
                .flatMap(known -> known.members().stream())
                .filter(member -> member.id().equals(batch) && member.law() != null)
                .map(member -> new Formulation(
                        id,
                        title,
                        baseline,
                        compareWith,
                        additive,
                        additiveFraction,
                        density,
                        characteristicVelocity,
                        verdict,
                        caution,
                        points,
                        member.law(),
                        notFitted,
                        null,
                        otherFits,
                        null,
                        null,
                        threshold,
                        faster,
                        temperatureSensitivity,
                        stability,
                        withinBetween,
                        closure,
                        validRange,
                        notEstimated,
                        findings,
                        null))
                .findFirst();
    }

    /** Where regimes were found each has its law, and the one over the whole range would be that of none. */
    private static List<Law> toUse(@Nullable Law singleLaw, @Nullable Regimes regimes) {
        if (regimes != null && regimes.laws().size() > 1) {
            return regimes.laws().stream().map(Law::withoutCurve).toList();
        }
        return singleLaw == null ? List.of() : List.of(singleLaw.withoutCurve());
    }

    /**
     * A figure that these firings cannot give: the reason, and what would help.
     *
     * @param what the figure, such as {@code temperature sensitivity}
     * @param reason a sentence
     * @param mend which firing would change that
     */
    public record NotEstimated(
            String what, String reason, @Nullable String mend) {}

    /**
     * The same points fitted in another way, for comparison.
     *
     * @param name such as {@code huber} or {@code orthogonal-distance}
     * @param coefficient mm/s at 1 MPa
     * @param coefficientLow lower end
     * @param coefficientHigh upper end
     * @param exponent [1]
     * @param exponentLow lower end
     * @param exponentHigh upper end
     * @param sentence how it differs from the published fit
     */
    public record OtherFit(
            String name,
            double coefficient,
            @Nullable Double coefficientLow,
            @Nullable Double coefficientHigh,
            double exponent,
            @Nullable Double exponentLow,
            @Nullable Double exponentHigh,
            String sentence) {}

    /**
     * Whether a steady pressure exists.
     *
     * @param exponent the one that matters [1]
     * @param verdict a sentence
     */
    public record Stability(double exponent, String verdict) {}

    /**
     * How the rate changes with the grain temperature.
     *
     * @param sigmaP at constant pressure, 1/K
     * @param piK of the pressure at constant geometry, 1/K
     * @param referenceTemperature to which rates were referred
     * @param sentence in words
     */
    public record TemperatureSensitivity(
            Quantity sigmaP, @Nullable Quantity piK, Quantity referenceTemperature, String sentence) {}

    /**
     * The pressures at which the laws of a formulation were measured, and the warning for use outside.
     *
     * @param pressureLow lowest pressure that was fired and fitted, absolute
     * @param pressureHigh highest pressure that was fired and fitted, absolute
     * @param warning a sentence for everybody who reads a rate off the laws
     * @param beyond results of this document outside these pressures, in words
     */
    public record ValidRange(Quantity pressureLow, Quantity pressureHigh, String warning, List<String> beyond) {

        public ValidRange {
            beyond = List.copyOf(beyond);
        }
    }

    /**
     * The exponent along single burns against the one between firings.
     *
     * @param within exponent along the burns
     * @param between exponent between firings
     * @param firingScatter relative standard deviation between firings [1]
     * @param pValue that they agree
     * @param sentence in words
     */
    public record WithinBetween(
            Quantity within, Quantity between, double firingScatter, double pValue, String sentence) {}

    /**
     * The pressure needed to burn a given number of times faster.
     *
     * @param factor k [1]
     * @param pressure that k needs; absent where no allowed pressure gives it
     * @param reach what it takes: {@code same-regime}, {@code another-regime}, {@code extrapolated} (above all
     *              pressures that were fired) or {@code out-of-reach}
     * @param sentence the answer in words
     */
    public record FasterAnswer(
            double factor,
            @Nullable Quantity pressure,
            @Nullable String reach,
            String sentence) {}

    /**
     * A law as it would be without the points of one firing.
     *
     * @param cluster of the points that are left out: the firing, or a point by itself
     * @param law place in {@code use_laws} of the law that changes, from 0
     * @param coefficient mm/s at 1 MPa absolute
     * @param exponent n
     * @param rateChange of the rate at the law's reference pressure, relative [1]
     * @param exponentChange of the exponent
     */
    public record LawWithout(
            String cluster, int law, double coefficient, double exponent, double rateChange, double exponentChange) {}

    /**
     * The pressure below which the propellant burns slowly.
     *
     * @param pressure absolute
     * @param rateRatio fast over slow rate across it [1]
     * @param below ids of the points below
     * @param above ids of the points above
     * @param areaRatio smallest ratio of burning surface to throat area that keeps a motor above it [1]
     * @param sentence what it means for the owner of the motor
     */
    public record Threshold(
            Quantity pressure,
            double rateRatio,
            List<String> below,
            List<String> above,
            @Nullable Double areaRatio,
            String sentence) {

        public Threshold {
            below = List.copyOf(below);
            above = List.copyOf(above);
        }
    }

    /**
     * Why there is no law.
     *
     * @param reason a sentence
     * @param mend which firing would change that
     */
    public record NotFitted(String reason, String mend) {}
}
