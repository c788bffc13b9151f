package io.burnlaw.publish;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.characterize.CampaignResult;
import io.burnlaw.characterize.FiringResult;
import io.burnlaw.characterize.FormulationResult;
import io.burnlaw.closure.PredictedFiring;
import io.burnlaw.planning.PlanOptions;
import io.burnlaw.quantity.Unit;
import io.burnlaw.reduction.TraceHistory;
import io.burnlaw.report.document.CampaignSummary;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Generator;
import io.burnlaw.report.document.Input;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The published document of a campaign. */
public final class DocumentOf {

    private DocumentOf() {}

    /**
     * Makes the document.
     *
     * @param result    of the campaign
     * @param version   of the program
     * @param created   when, ISO 8601 with zone; empty in reproducible documents
     * @param histories whether thinned traces and rates along the burns go into it
     * @return the document
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
                Stream.concat(
                                result.firings().stream().map(firing -> firing(firing, result, histories)),
                                result.strands().stream().map(strand -> StrandDocument.of(strand, histories)))
                        .toList(),
                ComparisonDocument.of(result.comparisons()),
                ComparisonDocument.ofTrends(result.trends()),
                result.outlooks().stream()
                        .map(outlook -> PlanDocument.of(
                                outlook.plan(),
                                outlook.basis(),
                                PlanOptions.defaults().level()))
                        .toList(),
                Cautions.ALWAYS);
    }

    private static Firing firing(FiringResult firing, CampaignResult result, boolean histories) {
        double exponent = result.formulations().stream()
                .filter(formulation -> formulation.formulation().id().equals(firing.formulation()))
                .mapToDouble(FormulationResult::exponent)
                .findFirst()
                .orElse(1);
        return FiringDocument.of(firing, exponent, simulated(firing, result), histories);
    }

    private static Optional<TraceHistory> simulated(FiringResult firing, CampaignResult result) {
        return result.outlooks().stream()
                .flatMap(outlook -> outlook.closure()
                        .match(predicted -> predicted.firings().stream(), none -> Stream.<PredictedFiring>empty()))
                .filter(each -> each.measured().id().equals(firing.id()))
                .findFirst()
                .map(PredictedFiring::record);
    }

    private static CampaignSummary summary(CampaignResult result) {
        Campaign campaign = result.campaign();
        return new CampaignSummary(
                campaign.title(),
                campaign.preparedBy().orElse(null),
                campaign.licence().orElse(null),
                campaign.note().orElse(null),
                InUnits.of(campaign.ambientPressure(), Unit.MEGAPASCAL),
                campaign.ambientAssumed(),
                InUnits.ofOptional(campaign.referenceTemperature(), Unit.DEGREE_CELSIUS),
                InUnits.ofOptional(campaign.hardware().casePressureLimit(), Unit.MEGAPASCAL),
                safetyFactor(campaign),
                word(campaign.reduction().method()),
                word(campaign.fit().weighting()),
                campaign.fit().confidence(),
                campaign.fit().seed(),
                result.notes());
    }

    private static @Nullable Double safetyFactor(Campaign campaign) {
        return campaign.hardware().casePressureLimit().isPresent()
                ? (Double) campaign.hardware().safetyFactor()
                : null;
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
