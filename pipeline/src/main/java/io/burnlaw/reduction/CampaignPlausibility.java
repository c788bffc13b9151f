package io.burnlaw.reduction;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.balance.LocalExponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Compares a firing with the others of its propellant: finds a c* or a rate that differs from theirs.
 *
 * <p>A c* is compared with the median of the others. A rate is compared with every other firing near it in pressure, each brought
 * to its pressure by the usual exponent; it differs only where none of them agrees, so that firings on the two sides of a
 * threshold raise no findings against each other. Firings that burned slowly or smouldered take no part.
 */
public final class CampaignPlausibility {

    /** Fewer others do not show what is usual. */
    private static final int FEWEST = 3;

    /** A c* within this of the median of the others is accepted [1]. */
    private static final double VELOCITY = 0.06;

    /** A rate within this of another firing's is accepted [1]. */
    private static final double RATE = 0.25;

    /** Firings this many times off in pressure are no neighbours [1]. */
    private static final double NEAR = 2;

    private static final double STDS = 4;

    /** Of a firing whose c* already has a finding. */
    private static final int NO_JUDGE = -1;

    private CampaignPlausibility() {}

    /**
     * Reviews the firings of one propellant.
     *
     * @param series their reductions, in any order
     * @return the same reductions in the same order, with what was seen added to their findings
     */
    public static List<Reduction> review(List<Reduction> series) {
        List<Reduction.Reduced> judges = series.stream()
                .flatMap(reduction -> reduction.match(Stream::of, rejected -> Stream.<Reduction.Reduced>empty()))
                .filter(CampaignPlausibility::burnedFast)
                .filter(reduced -> !told(reduced, FindingCode.IMPLAUSIBLE_CSTAR))
                .toList();
        double[] velocities = judges.stream()
                .flatMap(judge -> judge.characteristicVelocity().stream())
                .mapToDouble(Measured::value)
                .sorted()
                .toArray();
        double[] lnPressures = judges.stream()
                .mapToDouble(judge -> StrictMath.log(judge.meanPressure()))
                .toArray();
        double[] lnRates = judges.stream()
                .mapToDouble(judge -> StrictMath.log(judge.thicknessTimeRate()))
                .toArray();
        List<Reduction> reviewed = new ArrayList<>();
        int number = 0;
        for (Reduction reduction : series) {
            if (reduction instanceof Reduction.Reduced reduced && burnedFast(reduced)) {
                boolean judge = number < judges.size() && reduction == judges.get(number);
                List<Finding> seen = new ArrayList<>();
                if (judge) {
                    velocity(reduced, velocities).ifPresent(seen::add);
                }
                rate(reduced, judge ? number : NO_JUDGE, lnPressures, lnRates, !judge || !seen.isEmpty())
                        .ifPresent(seen::add);
                reviewed.add(seen.isEmpty() ? reduced : reduced.withFindings(seen));
                number += judge ? 1 : 0;
            } else {
                reviewed.add(reduction);
            }
        }
        return reviewed;
    }

    private static boolean burnedFast(Reduction.Reduced reduced) {
        return !told(reduced, FindingCode.SLOW_BURNING) && !told(reduced, FindingCode.SMOULDER);
    }

    private static boolean told(Reduction.Reduced reduced, FindingCode code) {
        return reduced.findings().stream().anyMatch(finding -> finding.code() == code);
    }

    private static Optional<Finding> velocity(Reduction.Reduced firing, double[] velocities) {
        if (firing.characteristicVelocity().isEmpty() || velocities.length - 1 < FEWEST) {
            return Optional.empty();
        }
        Measured own = firing.characteristicVelocity().get();
        double median = medianWithout(velocities, own.value());
        double ratio = own.value() / median;
        if (!(Math.abs(ratio - 1) > VELOCITY)) {
            return Optional.empty();
        }
        double[] theirs = without(velocities, own.value());
        double scatter = 1.4826
                * median(Arrays.stream(theirs)
                        .map(v -> Math.abs(v - median))
                        .sorted()
                        .toArray());
        double std = Math.hypot(own.stdOr(0), scatter);
        if (!(Math.abs(ratio - 1) > STDS * std / median)) {
            return Optional.empty();
        }
        double throat = firing.throatBefore();
        return Optional.of(Finding.of(
                FindingCode.IMPLAUSIBLE_CSTAR,
                Sentence.of(
                        "c* from the pressure integral is %.4g m/s, %.3g times the median %.4g m/s of the other %d"
                                + " firings. What would explain it: a propellant mass %.3g times as large as written, or a"
                                + " throat of %.4g mm instead of %.4g mm, or a pressure %.3g times what was read.",
                        own.value(),
                        ratio,
                        median,
                        theirs.length,
                        ratio,
                        1e3 * throat / Math.sqrt(ratio),
                        1e3 * throat,
                        1 / ratio)));
    }

    private static double medianWithout(double[] sorted, double value) {
        int at = Arrays.binarySearch(sorted, value);
        int n = sorted.length - 1;
        double upper = sorted[n / 2 < at ? n / 2 : n / 2 + 1];
        int below = (n - 1) / 2;
        return n % 2 == 1 ? upper : 0.5 * (sorted[below < at ? below : below + 1] + upper);
    }

    private static double[] without(double[] sorted, double value) {
        int at = Arrays.binarySearch(sorted, value);
        double[] others = new double[sorted.length - 1];
        System.arraycopy(sorted, 0, others, 0, at);
        System.arraycopy(sorted, at + 1, others, at, others.length - at);
        return others;
    }

    private static Optional<Finding> rate(
            Reduction.Reduced firing, int number, double[] lnPressures, double[] lnRates, boolean velocityApart) {
        double near = StrictMath.log(NEAR);
        double allowed = StrictMath.log1p(RATE);
        double lnPressure = StrictMath.log(firing.meanPressure());
        double lnRate = StrictMath.log(firing.thicknessTimeRate());
        double[] lnRatios = new double[FEWEST];
        int count = 0;
        for (int i = 0; i < lnRates.length; i++) {
            double away = lnPressures[i] - lnPressure;
            if (i == number || !(Math.abs(away) < near)) {
                continue;
            }
            double lnRatio = lnRate - lnRates[i] + LocalExponent.USUAL * away;
            if (!(Math.abs(lnRatio) > allowed)) {
                return Optional.empty();
            }
            if (count == lnRatios.length) {
                // Grown as needed: nearly all firings have a neighbour that agrees among the first.
                lnRatios = Arrays.copyOf(lnRatios, 2 * count);
            }
            lnRatios[count++] = lnRatio;
        }
        if (count < FEWEST) {
            return Optional.empty();
        }
        double[] ratios =
                Arrays.stream(lnRatios, 0, count).map(StrictMath::exp).sorted().toArray();
        double ratio = median(ratios);
        double web = firing.web().value();
        return Optional.of(Finding.at(
                FindingCode.IMPLAUSIBLE_BURN_TIME,
                Sentence.of(
                        "A web of %.3g mm in %.4g s gives a rate %.2f times that of the %d firings at similar pressures"
                                + " (within a factor of %.0f). What would explain it: a web of %.3g mm, or a clock that ran %.2f"
                                + " times as fast%s.",
                        1e3 * web,
                        firing.events().burnTime(),
                        ratio,
                        ratios.length,
                        NEAR,
                        1e3 * web / ratio,
                        1 / ratio,
                        velocityApart
                                ? ". Its c* differs as well, as a wrong clock would make it"
                                : ". Its c* agrees with theirs, so the clock is right: check the grain's dimensions,"
                                        + " the batch and the temperature"),
                firing.events().ignition()));
    }

    private static double median(double[] sorted) {
        int n = sorted.length;
        return n % 2 == 1 ? sorted[n / 2] : 0.5 * (sorted[n / 2 - 1] + sorted[n / 2]);
    }
}
