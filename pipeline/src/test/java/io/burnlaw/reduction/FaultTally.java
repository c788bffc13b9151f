package io.burnlaw.reduction;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.reduction.FaultMatrix.InjectedFault;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.LongStream;

/**
 * How many of a number of firings a finding was told in.
 *
 * @param firings how many there were
 * @param told    in how many of them each code was told
 */
record FaultTally(int firings, Map<FindingCode, Integer> told) {

    /** Codes that were told at least once. */
    Set<FindingCode> codes() {
        return told.keySet();
    }

    /** Share of the firings in which a code was told [1]. */
    double share(FindingCode code) {
        return told.getOrDefault(code, 0) / (double) firings;
    }

    static FaultTally ofClean(int firings, long seed) {
        return of(LongStream.range(seed, seed + firings)
                .mapToObj(CleanFiring::random)
                .map(clean -> FaultMatrix.findings(clean, clean.pressureTrace()))
                .toList());
    }

    private static FaultTally of(List<List<Finding>> firings) {
        Map<FindingCode, Integer> told = new EnumMap<>(FindingCode.class);
        for (List<Finding> findings : firings) {
            for (FindingCode code : findings.stream().map(Finding::code).collect(Collectors.toSet())) {
                told.merge(code, 1, Integer::sum);
            }
        }
        return new FaultTally(firings.size(), told);
    }

    /** Share of firings with a fault in which it is told [1]. */
    static double recall(InjectedFault fault, int strength, int firings, long seed) {
        int told = 0;
        for (int i = 0; i < firings; i++) {
            CleanFiring clean = CleanFiring.random(seed + i);
            List<Finding> findings = fault.inject(clean, strength, new SplittableRandom(seed + i + 1));
            told += findings.stream().anyMatch(finding -> finding.code() == fault.code()) ? 1 : 0;
        }
        return told / (double) firings;
    }
}
