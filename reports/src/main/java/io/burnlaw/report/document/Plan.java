package io.burnlaw.report.document;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which throat to drill next.
 *
 * @param formulation id
 * @param grain that it was worked out for, in words
 * @param allowedPressure limit for the upper prediction of a peak, absolute
 * @param allowedBecause the reason for this limit, such as the case limit over a safety factor
 * @param next the firing that tells most
 * @param ladder throats that span the range
 * @param smallestThroat smallest throat that keeps the upper prediction of the peak within the limit, mm
 * @param slowRegimeThroat above which the motor falls into the slow regime, mm
 * @param firingsToExponent further firings until the exponent is known to 0.02
 * @param motor that it was worked out for, as numbers, so that another throat can be asked for
 * @param sentence the advice, or why there is none
 * @param cautions to be read before drilling
 * @param answers answers to the questions to this plan, besides the ladder
 * @param throatTable predictions for every allowed throat
 * @param grainTable predictions for other grains; absent where one table is not accurate enough
 */
public record Plan(
        String formulation,
        String grain,
        @Nullable Quantity allowedPressure,
        @Nullable String allowedBecause,
        @Nullable PlannedThroat next,
        List<PlannedThroat> ladder,
        @Nullable Quantity smallestThroat,
        @Nullable Quantity slowRegimeThroat,
        @Nullable Integer firingsToExponent,
        @Nullable PlannedMotor motor,
        String sentence,
        List<String> cautions,
        @Nullable List<PlannedAnswer> answers,
        @Nullable ThroatTable throatTable,
        @Nullable GrainTable grainTable) {

    public Plan {
        ladder = List.copyOf(ladder);
        cautions = List.copyOf(cautions);
        answers = answers == null ? null : List.copyOf(answers);
    }

    /**
     * The same with answers.
     *
     * @param others to what was asked
     * @return the plan
     */
    public Plan with(List<PlannedAnswer> others) {
        return new Plan(
                formulation,
                grain,
                allowedPressure,
                allowedBecause,
                next,
                ladder,
                smallestThroat,
                slowRegimeThroat,
                firingsToExponent,
                motor,
                sentence,
                cautions,
                others,
                throatTable,
                grainTable);
    }

    /**
     * A twist drill near a wanted throat.
     *
     * @param series {@code metric}, {@code number}, {@code letter} or {@code fraction}
     * @param name as stamped
     * @param diameter mm
     */
    public record DrillChoice(String series, String name, double diameter) {}

    /**
     * A question to a plan, with its answer.
     *
     * @param question such as {@code a mean of 3 MPa absolute}
     * @param throat the one that was asked for, or the drill nearest to the pressure that was asked for
     * @param exactDiameter that would give the pressure exactly, mm
     * @param reason why no throat is named
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record PlannedAnswer(
            String question,
            @Nullable PlannedThroat throat,
            @Nullable Quantity exactDiameter,
            @Nullable String reason) {}

    /**
     * The motor of a plan, without its throat.
     *
     * @param web burned, mm, from 0, rising
     * @param surface burning then, mm2, as many
     * @param freeVolume of the chamber around the new grain
     * @param density of the propellant
     * @param characteristicVelocity c*
     * @param specificHeatRatio of the gas [1]
     * @param ambientPressure absolute
     * @param strengthStd relative standard deviation of density times c* from firing to firing [1]
     * @param throatStd standard uncertainty of a throat, mm
     * @param slowBelow pressure below which the propellant may burn slowly, absolute
     * @param fastAbove pressure above which points burn faster than the law, absolute
     * @param highestFired pressure so far, absolute
     * @param ignitionSpike by which ignition stood above the burn: pressure times throat area, mean of the firings, N
     * @param ignitionSpikeStd standard deviation of the next firing about it, N
     * @param remarks cautions for every plan with this formulation
     */
    public record PlannedMotor(
            List<Double> web,
            List<Double> surface,
            Quantity freeVolume,
            Quantity density,
            Quantity characteristicVelocity,
            double specificHeatRatio,
            Quantity ambientPressure,
            double strengthStd,
            double throatStd,
            @Nullable Quantity slowBelow,
            @Nullable Quantity fastAbove,
            @Nullable Quantity highestFired,
            @Nullable Double ignitionSpike,
            @Nullable Double ignitionSpikeStd,
            List<String> remarks) {

        public PlannedMotor {
            web = List.copyOf(web);
            surface = List.copyOf(surface);
            remarks = List.copyOf(remarks);
        }
    }

    /**
     * A remark on some throats of a table.
     *
     * @param from first throat, mm
     * @param to last throat, mm
     * @param text a sentence
     */
    public record ThroatRemark(double from, double to, String text) {}

    /**
     * Predictions for a throat.
     *
     * @param throatDiameter mm
     * @param drills that come next to it
     * @param equilibriumPressure mean over the burn with its prediction, absolute
     * @param maxPressure over the burn with its prediction, absolute
     * @param burnTime s
     * @param allowed below the case limit over the safety factor
     * @param reason why not
     * @param otherEquilibria MPa, absolute
     * @param exponentStdAfter standard uncertainty of the exponent with this firing added [1]
     * @param remark a remark, such as that it is outside of the pressures fired
     */
    public record PlannedThroat(
            Quantity throatDiameter,
            List<DrillChoice> drills,
            Quantity equilibriumPressure,
            Quantity maxPressure,
            @Nullable Quantity burnTime,
            boolean allowed,
            @Nullable String reason,
            List<Double> otherEquilibria,
            @Nullable Double exponentStdAfter,
            @Nullable String remark) {

        public PlannedThroat {
            drills = List.copyOf(drills);
            otherEquilibria = List.copyOf(otherEquilibria);
        }
    }

    /**
     * Predictions for each throat of a range, as columns of equal length. Between two rows interpolate the logarithms
     * of the figures linearly over the logarithm of the throat, which is exact to 0.1 %; do not extrapolate.
     *
     * @param level of the predictions [1]
     * @param throat diameters, rising, mm
     * @param surfaceOverThroat greatest burning surface over the area of the throat [1]
     * @param mean pressure over the burn time, MPa absolute
     * @param meanLow lower prediction of it
     * @param meanHigh upper prediction of it
     * @param max highest pressure, MPa absolute
     * @param maxLow lower prediction of it
     * @param maxHigh upper prediction of it
     * @param burnTime s
     * @param remarks on parts of the range
     * @param smaller why there is no smaller throat
     * @param larger why there is no larger one
     */
    public record ThroatTable(
            double level,
            List<Double> throat,
            List<Double> surfaceOverThroat,
            List<Double> mean,
            List<Double> meanLow,
            List<Double> meanHigh,
            List<Double> max,
            List<Double> maxLow,
            List<Double> maxHigh,
            List<Double> burnTime,
            List<ThroatRemark> remarks,
            String smaller,
            String larger) {

        public ThroatTable {
            remarks = List.copyOf(remarks);
            for (List<Double> column :
                    List.of(throat, surfaceOverThroat, mean, meanLow, meanHigh, max, maxLow, maxHigh, burnTime)) {
                if (column.size() != throat.size() || throat.size() < 2) {
                    throw new IllegalArgumentException(
                            "the columns of a table of throats differ in length, or have no two rows");
                }
            }
            throat = List.copyOf(throat);
            surfaceOverThroat = List.copyOf(surfaceOverThroat);
            mean = List.copyOf(mean);
            meanLow = List.copyOf(meanLow);
            meanHigh = List.copyOf(meanHigh);
            max = List.copyOf(max);
            maxLow = List.copyOf(maxLow);
            maxHigh = List.copyOf(maxHigh);
            burnTime = List.copyOf(burnTime);
        }
    }
}
