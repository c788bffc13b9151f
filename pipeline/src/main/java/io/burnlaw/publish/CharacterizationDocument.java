package io.burnlaw.publish;

import static io.burnlaw.publish.PublishedQuantities.published;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Choice;
import io.burnlaw.characterize.CampaignResult;
import io.burnlaw.characterize.CampaignResult.FiringResult;
import io.burnlaw.characterize.CampaignResult.StrandResult;
import io.burnlaw.characterize.FormulationResult;
import io.burnlaw.characterize.Guard;
import io.burnlaw.planning.PlanOptions;
import io.burnlaw.prediction.PredictionCheck.PredictedFiring;
import io.burnlaw.publish.FiringDocument.StrandDocument;
import io.burnlaw.quantity.Unit;
import io.burnlaw.reduction.Reduction;
import io.burnlaw.reduction.point.TraceHistory;
import io.burnlaw.reduction.strand.StrandReduction;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Characterization.CampaignSummary;
import io.burnlaw.report.document.Characterization.Generator;
import io.burnlaw.report.document.Characterization.Input;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.MadeOnDemand;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The published document of a campaign. */
public final class CharacterizationDocument {

    /** What must be read beside numbers that somebody could act on; common practice, no source. */
    public static final List<String> CAUTIONS = List.of(
            "These numbers describe the firings that were measured. They replace neither a proof test of the case, nor"
                    + " distance and shelter, nor the local law and a licensed person.",
            "Do not use a law beyond the pressures that it was measured at: the exponent may rise above them, and a"
                    + " motor may burst.",
            "A propellant with cracks, bubbles or a bad bond to the case obeys no law: its surface is not what the"
                    + " geometry says.",
            "A throat that is partly blocked, or smaller than measured, raises the pressure by much more than in"
                    + " proportion; the more so the larger the exponent.",
            "After a misfire or a motor that pulses, keep away for the waiting time of your range, and treat the grain"
                    + " as live.");

    private CharacterizationDocument() {}

    /**
     * Makes the document. Its firings are made anew each time that one is asked for, from what the result keeps.
     *
     * @param created   when, ISO 8601 with zone; empty in reproducible documents
     * @param histories whether thinned traces and rates along the burns go into it
     */
    public static Characterization result(
            CampaignResult result, String version, Optional<String> created, boolean histories) {
        return new Characterization(
                Characterization.FORMAT,
                new Generator("burnlaw", version),
                created.orElse(null),
                summary(result),
                result.inputs().stream()
                        .map(input -> new Input(input.path(), input.sha256(), input.bytes()))
                        .toList(),
                IntStream.range(0, result.formulations().size())
                        .mapToObj(i -> FormulationDocument.of(
                                result.formulations().get(i), result.outlooks().get(i), result))
                        .toList(),
                firings(result, histories),
                ComparisonDocument.of(result.comparisons()),
                ComparisonDocument.ofTrends(result.trends()),
                result.outlooks().stream()
                        .map(outlook -> PlanDocument.of(
                                outlook.plan(),
                                outlook.basis(),
                                PlanOptions.defaults()
                                        .withLevelOf(result.campaign().fit().confidence())
                                        .level()))
                        .toList(),
                CAUTIONS,
                null);
    }

    /** Firings and strands, each made when it is wanted: with their courses they would fill the memory. */
    private static List<Firing> firings(CampaignResult result, boolean histories) {
        Map<String, Double> exponents = result.formulations().stream()
                .collect(Collectors.toMap(each -> each.formulation().id(), FormulationResult::exponent));
        Map<String, TraceHistory> simulated = new HashMap<>();
        result.outlooks().stream()
                .flatMap(outlook -> outlook.closure()
                        .match(predicted -> predicted.firings().stream(), none -> Stream.<PredictedFiring>empty()))
                .forEach(each -> simulated.putIfAbsent(each.measured().id(), each.record()));
        Map<String, io.burnlaw.campaign.Firing> rows = new HashMap<>();
        result.campaign().firings().forEach(row -> rows.putIfAbsent(row.id(), row));
        List<FiringResult> firings = result.firings();
        return new MadeOnDemand<>(firings.size() + result.strands().size(), place -> {
            if (place >= firings.size()) {
                StrandResult strand = result.strands().get(place - firings.size());
                return Guard.around(
                        () -> StrandDocument.of(strand, histories),
                        "the data of strand " + strand.strand().id(),
                        fault -> StrandDocument.of(
                                strand.withReduction(new StrandReduction.Rejected(
                                        strand.strand().id(), List.of(fault), Optional.empty())),
                                histories));
            }
            FiringResult firing = firings.get(place);
            return Guard.around(
                    () -> fired(
                            FiringDocument.of(
                                    firing,
                                    exponents.getOrDefault(firing.formulation(), 1.0),
                                    Optional.ofNullable(simulated.get(firing.id())),
                                    histories),
                            rows.get(firing.id())),
                    "the data of firing " + firing.id(),
                    fault -> FiringDocument.of(
                            firing.withReduction(new Reduction.Rejected(firing.id(), List.of(fault), Optional.empty())),
                            1,
                            Optional.empty(),
                            histories));
        });
    }

    private static Firing fired(Firing firing, io.burnlaw.campaign.@Nullable Firing row) {
        return row == null ? firing : firing.withMotor(FiredMotorDocument.of(row));
    }

    private static CampaignSummary summary(CampaignResult result) {
        Campaign campaign = result.campaign();
        return new CampaignSummary(
                campaign.title(),
                campaign.preparedBy().orElse(null),
                campaign.licence().orElse(null),
                campaign.note().orElse(null),
                published(campaign.ambientPressure(), Unit.MEGAPASCAL),
                campaign.ambientAssumed(),
                published(campaign.referenceTemperature(), Unit.DEGREE_CELSIUS),
                published(campaign.hardware().casePressureLimit(), Unit.MEGAPASCAL),
                safetyFactor(campaign),
                Choice.word(campaign.reduction().method()),
                Choice.word(campaign.fit().weighting()),
                campaign.fit().confidence(),
                campaign.fit().seed(),
                result.notes());
    }

    private static @Nullable Double safetyFactor(Campaign campaign) {
        return campaign.hardware().casePressureLimit().isPresent()
                ? (Double) campaign.hardware().safetyFactor()
                : null;
    }
}
