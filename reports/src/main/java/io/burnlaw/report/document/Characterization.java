package io.burnlaw.report.document;

import java.nio.file.Path;
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
 * @param leftOut members that are not in this document but in another file; absent where nothing is missing
 */
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

    /**
     * The program that made the document.
     *
     * @param name always {@code burnlaw}
     * @param version of the tool
     */
    public record Generator(String name, String version) {}

    /**
     * A file that the document was made from.
     *
     * @param path below the campaign folder
     * @param sha256 of its bytes
     * @param bytes its size
     */
    public record Input(String path, String sha256, long bytes) {}

    /**
     * The members that a document leaves out, and the file that has them.
     *
     * @param members as paths, such as {@code firings[].along}
     * @param file    beside the document
     * @param sha256  of that file
     */
    public record LeftOut(List<String> members, String file, String sha256) {

        /** The whole document of a report, as its page names it. */
        public static final String WHOLE = "burnlaw.json";

        /**
         * What only the page of a firing shows: what goes over time, most of the bytes of a document, and the budget.
         */
        static final List<String> OF_A_PAGE = List.of("firings[].along", "firings[].trace_history", "firings[].budget");

        public LeftOut {
            members = List.copyOf(members);
        }

        /**
         * The same as seen from elsewhere.
         *
         * @param document path of the document that leaves it out
         * @return with the path of the file beside that document
         */
        public LeftOut from(Path document) {
            return new LeftOut(members, document.resolveSibling(file).toString().replace('\\', '/'), sha256);
        }
    }

    /**
     * The campaign: what was measured, by whom, and how.
     *
     * @param title what people read
     * @param preparedBy who made it
     * @param licence SPDX identifier of the data licence
     * @param note the campaign's remark
     * @param ambientPressure absolute
     * @param ambientAssumed whether nobody stated it
     * @param referenceTemperature to which rates are referred
     * @param casePressureLimit of the case, gauge
     * @param safetyFactor by which planned pressures stay below it [1]
     * @param reductionMethod such as {@code mass-balance}
     * @param weighting of the fits
     * @param confidence level of all intervals [1]
     * @param seed of every random number
     * @param notes what was guessed or assumed when the files were read, as sentences
     */
    public record CampaignSummary(
            String title,
            @Nullable String preparedBy,
            @Nullable String licence,
            @Nullable String note,
            Quantity ambientPressure,
            boolean ambientAssumed,
            @Nullable Quantity referenceTemperature,
            @Nullable Quantity casePressureLimit,
            @Nullable Double safetyFactor,
            String reductionMethod,
            String weighting,
            double confidence,
            long seed,
            List<String> notes) {

        public CampaignSummary {
            notes = List.copyOf(notes);
        }
    }

    /**
     * How the rate follows the fraction of an additive.
     *
     * @param additive its name
     * @param baseline id
     * @param formulations ids, by rising fraction
     * @param slope change of ln rate per per cent by mass
     * @param pValue that there is none
     * @param sentence in words
     */
    public record DoseTrend(
            String additive,
            String baseline,
            List<String> formulations,
            Quantity slope,
            double pValue,
            String sentence) {

        public DoseTrend {
            formulations = List.copyOf(formulations);
        }
    }
}
