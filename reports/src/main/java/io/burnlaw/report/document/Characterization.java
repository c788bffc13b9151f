package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The published document: everything that a report shows and that another tool needs.
 *
 * @param format {@code burnlaw-characterization/1}
 * @param generator what made it
 * @param created when, ISO 8601 with zone; absent in reproducible documents
 * @param campaign what was measured
 * @param inputs files with checksums
 * @param formulations in the order of the campaign
 * @param firings in the order of the log
 * @param comparisons additives against baselines
 * @param doseTrends by additive
 * @param plans by formulation
 * @param cautions that go with the numbers
 * @param leftOut what is not in this document but in a file beside it; absent where nothing is missing
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record Characterization(
        String format,
        Generator generator,
        @Nullable String created,
        CampaignSummary campaign,
        List<Input> inputs,
        List<Formulation> formulations,
        List<Firing> firings,
        List<Comparison> comparisons,
        List<DoseTrend> doseTrends,
        List<Plan> plans,
        List<String> cautions,
        @Nullable List<LeftOut> leftOut) {

    public Characterization {
        inputs = List.copyOf(inputs);
        formulations = List.copyOf(formulations);
        // of many firings only those in use are in the memory
        firings = firings instanceof MadeOnDemand ? firings : List.copyOf(firings);
        comparisons = List.copyOf(comparisons);
        doseTrends = List.copyOf(doseTrends);
        plans = List.copyOf(plans);
        cautions = List.copyOf(cautions);
        leftOut = leftOut == null ? null : List.copyOf(leftOut);
    }

    /**
     * What a page carries: the firings without what only their own pages show, and where those are.
     *
     * @param sha256 of the file with the whole document
     * @return the document; the same one where no firing has any of them
     */
    public Characterization forPage(String sha256) {
        if (firings.stream().noneMatch(Firing::hasMore)) {
            return this;
        }
        List<LeftOut> missing = new ArrayList<>(leftOut == null ? List.of() : leftOut);
        missing.add(new LeftOut(LeftOut.OF_A_PAGE, LeftOut.WHOLE, sha256));
        return new Characterization(
                format,
                generator,
                created,
                campaign,
                inputs,
                formulations,
                new MadeOnDemand<>(firings.size(), i -> firings.get(i).summary()),
                comparisons,
                doseTrends,
                plans,
                cautions,
                missing);
    }

    /** Kind and major version of the document. */
    public static final String FORMAT = "burnlaw-characterization/1";
}
