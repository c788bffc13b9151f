package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * All that is known of one propellant.
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
 * @param caution what to mind beside the formulas, in one or two sentences; absent where it is nothing
 * @param points in the order of the log
 * @param singleLaw one law over the whole range
 * @param notFitted why there is none
 * @param useLaws the laws to design with, one for each range of pressure, from low to high; the only list that another tool has
 *                to read. Their curves are left out
 * @param otherFits for comparison
 * @param regimes piecewise laws
 * @param batches what its castings say of the next one; absent where points carry no batch
 * @param threshold of the slow regime
 * @param faster what it takes to burn faster
 * @param temperatureSensitivity where two temperatures were fired
 * @param stability whether a steady pressure exists
 * @param withinBetween two ways to the exponent
 * @param closure how well the law gives back the traces
 * @param validRange where the laws were measured
 * @param notEstimated figures that these firings cannot give
 * @param findings of the law
 * @param without its laws as they would be with one firing less; a firing without which too few are left is not in it
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
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
}
