package io.burnlaw.reduction;

import io.burnlaw.campaign.Campaign.ReductionSettings;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;

/**
 * Clean firings of one propellant whose c* nobody stated, and one firing more that may have something wrong.
 *
 * @param clean     their reductions
 * @param candidate the one firing more
 */
record CleanSeries(List<Reduction> clean, CleanFiring candidate) {

    static CleanSeries of(int firings, long seed) {
        List<Reduction> clean = LongStream.range(0, firings)
                .mapToObj(i -> CleanFiring.random(seed + i, seed))
                .map(firing -> reduced(firing, firing.firing(), firing.pressureTrace()))
                .toList();
        return new CleanSeries(clean, CleanFiring.random(seed + firings, seed));
    }

    /** Codes that are told of the candidate only beside the others. */
    List<FindingCode> told(Firing row, Trace trace) {
        List<Reduction> all = new ArrayList<>(clean);
        Reduction alone = reduced(candidate, row, trace);
        all.add(alone);
        List<Reduction> reviewed = CampaignPlausibility.review(all);
        Reduction beside = reviewed.get(reviewed.size() - 1);
        return beside.findings().stream()
                .skip(alone.findings().size())
                .map(finding -> finding.code())
                .toList();
    }

    /** Codes that are told of the clean ones beside each other. */
    List<FindingCode> toldOfClean() {
        return CampaignPlausibility.review(clean).stream()
                .flatMap(reduction -> reduction.findings().stream())
                .map(finding -> finding.code())
                .toList();
    }

    static Reduction reduced(CleanFiring firing, Firing row, Trace trace) {
        Formulation stated = firing.formulation();
        Formulation unstated = new Formulation(
                stated.id(),
                stated.title(),
                stated.density(),
                stated.baseline(),
                stated.compareWith(),
                stated.additive(),
                stated.additiveFraction(),
                stated.specificHeatRatio(),
                Optional.empty());
        Hardware hardware = CleanFiring.NO_LIMIT;
        return FiringReducer.reduce(
                row, unstated, ReductionSettings.defaults(), hardware, firing.grain(), trace, List.of());
    }

    /** The candidate's record by a clock that ran at another speed. */
    Trace clock(double factor) {
        Trace trace = candidate.pressureTrace();
        double[] time = trace.times();
        for (int i = 0; i < time.length; i++) {
            time[i] *= factor;
        }
        return Trace.of("F1", time, Optional.of(trace.pressures()), Optional.empty());
    }
}
