package io.burnlaw.characterize;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Firing;
import io.burnlaw.characterize.CampaignResult.FiringResult;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.Reduction;
import io.burnlaw.reduction.balance.IgniterGas;
import io.burnlaw.reduction.point.NumberStore;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Igniters of which nobody stated the mass. The firings of a propellant are taken to have been lit alike, so that the median of
 * what their starts leave room for is taken off all of them: one firing by itself would get another share than the next, and
 * where that goes with the pressure it would tilt the law.
 */
final class UnstatedIgniters {

    private UnstatedIgniters() {}

    /**
     * Reduces again what needs an igniter.
     *
     * @param campaign that they belong to
     * @param store    where the courses are kept
     * @param progress told of the firings that are done
     * @return the results, in the same order
     */
    static List<FiringResult> considered(
            Campaign campaign, List<Firing> firings, List<FiringResult> results, NumberStore store, Progress progress) {
        Map<String, Measured> usual = new TreeMap<>();
        firings.stream()
                .map(Firing::formulation)
                .distinct()
                .forEach(formulation -> median(results, formulation)
                        .filter(gas -> gas.value() > 0)
                        .ifPresent(gas -> usual.put(formulation, gas)));
        List<Integer> again = IntStream.range(0, firings.size())
                .filter(i -> firings.get(i).igniterGas().isEmpty()
                        && usual.containsKey(firings.get(i).formulation())
                        && results.get(i).reduction() instanceof Reduction.Reduced)
                .boxed()
                .toList();
        List<FiringResult> considered = new ArrayList<>(results);
        List<FiringResult> lit = again.isEmpty()
                ? List.of()
                : Workers.map(
                        again,
                        i -> {
                            Firing firing = firings.get(i);
                            Measured gas = usual.get(firing.formulation());
                            return told(
                                    FiringWork.of(campaign, firing.withIgniterGas(gas), Optional.empty(), store), gas);
                        },
                        progress,
                        "firings reduced with an igniter");
        for (int k = 0; k < again.size(); k++) {
            considered.set(again.get(k), lit.get(k));
        }
        return considered;
    }

    private static Optional<Measured> median(List<FiringResult> results, String formulation) {
        List<Measured> seen = results.stream()
                .filter(result -> result.formulation().equals(formulation))
                .flatMap(result -> result.reduction()
                        .match(reduced -> reduced.igniterGas().stream(), rejected -> Stream.<Measured>empty()))
                .sorted(Comparator.comparingDouble(Measured::value))
                .toList();
        return seen.isEmpty() ? Optional.empty() : Optional.of(seen.get(seen.size() / 2));
    }

    private static FiringResult told(FiringResult result, Measured gas) {
        Finding finding = Finding.of(
                FindingCode.IGNITER_UNSTATED,
                Sentence.of(
                        "The flame spread slowly, and the log has no igniter_mass. The igniter was assumed to give"
                                + " %.2g g ± %.1g g of gas. If it gave more than %.2g g, the stated rate is too low by more than"
                                + " its interval.",
                        1e3 * gas.value(), 1e3 * gas.stdOr(0), 1e3 * IgniterGas.MOST_OVER_STD * gas.stdOr(0)));
        return result.reduction() instanceof Reduction.Reduced reduced
                ? result.withReduction(reduced.withFindings(List.of(finding)))
                : result;
    }
}
