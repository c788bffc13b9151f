package io.burnlaw.publish;

import static io.burnlaw.publish.PublishedQuantities.published;

import io.burnlaw.campaign.Hardware;
import io.burnlaw.planning.PlanBasis;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Characterization.CampaignSummary;
import io.burnlaw.report.document.Characterization.Generator;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Formulation.NotFitted;
import io.burnlaw.report.document.Plan;
import java.util.List;
import java.util.Optional;

/** Requested plans, as a document like any other: it can be read, drawn, and planned from again. */
public final class PlannedDocument {

    private PlannedDocument() {}

    /**
     * The document that was planned from, with these plans in the place of its own.
     *
     * @param source   that holds the law
     * @param hardware that they were made for; empty where none was made
     * @return the document, without a time of making
     */
    public static Characterization of(
            Characterization source, List<Plan> plans, Optional<Hardware> hardware, String version) {
        return new Characterization(
                source.format(),
                new Generator("burnlaw", version),
                null,
                hardware.map(of -> with(source.campaign(), of)).orElse(source.campaign()),
                source.inputs(),
                source.formulations(),
                source.firings(),
                source.comparisons(),
                source.doseTrends(),
                plans,
                source.cautions(),
                source.leftOut());
    }

    /**
     * A document of a law that nobody measured: it holds the plan, and no law.
     *
     * @param level of its predictions [1]
     * @return the document, without a time of making
     */
    public static Characterization ofGuess(PlanBasis basis, Plan plan, double level, String version) {
        RateLaw law = basis.law().laws().get(0);
        CampaignSummary summary = new CampaignSummary(
                "A plan from a first guess",
                null,
                null,
                null,
                published(basis.motor().ambientPressure(), Unit.MEGAPASCAL),
                false,
                null,
                null,
                null,
                "none",
                "none",
                level,
                0,
                List.of());
        Formulation guess = new Formulation(
                basis.formulation(),
                "A first guess",
                true,
                null,
                null,
                null,
                null,
                null,
                "Nothing was measured. The guess is %s mm/s at %s MPa, with an exponent of %s."
                        .formatted(
                                NumberFormat.significant(Unit.MILLIMETRE_PER_SECOND.fromSi(law.rateAtReference()), 3),
                                NumberFormat.significant(Unit.MEGAPASCAL.fromSi(law.referencePressure()), 3),
                                NumberFormat.significant(law.exponent(), 2)),
                null,
                List.of(),
                null,
                new NotFitted("The law is a first guess.", "Fire, then plan from the campaign."),
                null,
                List.of(),
                null,
                null,
                null,
                List.of(),
                null,
                null,
                null,
                null,
                null,
                List.of(),
                List.of(),
                null);
        return new Characterization(
                Characterization.FORMAT,
                new Generator("burnlaw", version),
                null,
                with(summary, basis.hardware()),
                List.of(),
                List.of(guess),
                List.of(),
                List.of(),
                List.of(),
                List.of(plan),
                CharacterizationDocument.CAUTIONS,
                null);
    }

    private static CampaignSummary with(CampaignSummary summary, Hardware hardware) {
        boolean limited = hardware.casePressureLimit().isPresent();
        return new CampaignSummary(
                summary.title(),
                summary.preparedBy(),
                summary.licence(),
                summary.note(),
                summary.ambientPressure(),
                summary.ambientAssumed(),
                summary.referenceTemperature(),
                published(hardware.casePressureLimit(), Unit.MEGAPASCAL),
                limited ? (Double) hardware.safetyFactor() : null,
                summary.reductionMethod(),
                summary.weighting(),
                summary.confidence(),
                summary.seed(),
                summary.notes());
    }
}
