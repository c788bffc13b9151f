package io.burnlaw.characterize;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Campaign.UnusableRow;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.characterize.CampaignResult.FiringResult;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.grain.Grain;
import io.burnlaw.grain.Grains;
import io.burnlaw.quantity.Measured;
import io.burnlaw.reduction.FiringReducer;
import io.burnlaw.reduction.Reduction;
import io.burnlaw.reduction.TimedBurn;
import io.burnlaw.reduction.point.NumberStore;
import io.burnlaw.trace.reading.TraceReader;
import io.burnlaw.trace.reading.TraceReading;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** One firing from its row to its result. The record is not kept in memory. */
final class FiringWork {

    private FiringWork() {}

    /**
     * Reads and reduces one firing. Whatever is wrong with it becomes a rejection of this firing alone.
     *
     * @param pooled c* of its propellant from the firings with records [m/s], where there are any; a firing that was
     *               only timed needs it
     * @param store  where the courses of its pressure and rate are kept
     */
    static FiringResult of(Campaign campaign, Firing firing, Optional<Measured> pooled, NumberStore store) {
        if (firing.setAside().isPresent()) {
            return rejected(
                    firing,
                    Finding.of(
                            FindingCode.SET_ASIDE,
                            "the log, line " + firing.row() + ", excludes it: "
                                    + firing.setAside().get()));
        }
        return Guard.around(
                () -> guarded(campaign, firing, pooled, store),
                "firing " + firing.id(),
                fault -> rejected(firing, fault));
    }

    private static FiringResult guarded(
            Campaign campaign, Firing firing, Optional<Measured> pooled, NumberStore store) {
        return Grains.of(firing.grain())
                .match(
                        built -> firing.trace()
                                .map(trace -> reduced(campaign, firing, trace, built, store))
                                .orElseGet(() -> result(firing, timed(campaign, firing, built, pooled))),
                        impossible -> rejected(
                                firing,
                                Finding.of(
                                        FindingCode.UNUSABLE_ROW,
                                        "the log, line " + firing.row() + ": " + String.join("; ", impossible))));
    }

    /** {@return the result of a row that describes no firing: a rejection with all that is wrong with it} */
    static FiringResult of(UnusableRow row) {
        List<Finding> findings = row.problems().stream()
                .map(problem -> Finding.of(FindingCode.UNUSABLE_ROW, problem.sentence()))
                .toList();
        return new FiringResult(
                row.id(),
                row.formulation(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                new Reduction.Rejected(row.id(), findings, Optional.empty()));
    }

    private static Reduction timed(Campaign campaign, Firing firing, Grain grain, Optional<Measured> pooled) {
        Formulation formulation = formulation(campaign, firing);
        return Believable.only(TimedBurn.reduce(
                firing,
                grain,
                formulation.density(),
                formulation.specificHeatRatio().orElse(Formulation.USUAL_SPECIFIC_HEAT_RATIO),
                pooled.or(formulation::characteristicVelocity)));
    }

    private static Formulation formulation(Campaign campaign, Firing firing) {
        return campaign.formulations().stream()
                .filter(candidate -> candidate.id().equals(firing.formulation()))
                .findFirst()
                .orElseThrow();
    }

    private static FiringResult reduced(
            Campaign campaign, Firing firing, String trace, Grain grain, NumberStore store) {
        TraceReading reading =
                TraceReader.read(campaign.folder(), firing.id(), trace, firing.settings(), firing.ambientPressure());
        return reading.match(
                read -> new FiringResult(
                        firing.id(),
                        firing.formulation(),
                        firing.trace(),
                        firing.note(),
                        Optional.of(read.input()),
                        read.notes(),
                        reduction(campaign, firing, grain, read).keptIn(store)),
                unreadable -> rejected(firing, unreadable.findings()));
    }

    /** The reduction of a record that could be read. */
    static Reduction reduction(Campaign campaign, Firing firing, Grain grain, TraceReading.Read read) {
        Optional<Finding> unreadable = Believable.readings(read.trace());
        if (unreadable.isPresent()) {
            return new Reduction.Rejected(firing.id(), joined(read.findings(), unreadable.get()), Optional.empty());
        }
        return Guard.around(
                () -> Believable.only(FiringReducer.reduce(
                        firing,
                        formulation(campaign, firing),
                        campaign.reduction(),
                        campaign.hardware(),
                        grain,
                        read.trace(),
                        read.findings())),
                "firing " + firing.id(),
                fault -> new Reduction.Rejected(firing.id(), joined(read.findings(), fault), Optional.empty()));
    }

    private static List<Finding> joined(List<Finding> seen, Finding fault) {
        return Stream.concat(seen.stream(), Stream.of(fault)).toList();
    }

    private static FiringResult rejected(Firing firing, Finding finding) {
        return rejected(firing, List.of(finding));
    }

    private static FiringResult rejected(Firing firing, List<Finding> findings) {
        return result(firing, new Reduction.Rejected(firing.id(), findings, Optional.empty()));
    }

    private static FiringResult result(Firing firing, Reduction withoutRecord) {
        return new FiringResult(
                firing.id(),
                firing.formulation(),
                firing.trace(),
                firing.note(),
                Optional.empty(),
                List.of(),
                withoutRecord);
    }
}
