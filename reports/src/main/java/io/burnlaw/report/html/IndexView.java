package io.burnlaw.report.html;

import io.burnlaw.report.catalogue.CitationFile;
import io.burnlaw.report.catalogue.ResearchCrate;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Characterization.LeftOut;
import io.burnlaw.report.document.Comparison;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Plan;
import io.burnlaw.report.document.Plan.PlannedThroat;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * All that the first page shows.
 *
 * @param carried what the page carries of it
 * @param firings with their small traces
 * @param overview all propellants in one picture; absent where there is one only
 * @param checksum SHA-256 of burnlaw.json
 */
public record IndexView(
        Characterization document,
        Characterization carried,
        List<FormulationView> propellants,
        List<FiringView> firings,
        @Nullable DrawnFigure overview,
        List<Compared> comparisons,
        List<Planned> plans,
        String checksum) {

    /**
     * A comparison and its picture.
     *
     * @param figure absent where there is no ratio
     */
    public record Compared(Comparison comparison, @Nullable DrawnFigure figure) {}

    /**
     * A plan and its picture.
     *
     * @param cautions that the other plans do not have
     * @param figure absent where no throat is planned
     */
    public record Planned(
            Plan plan,
            String title,
            List<String> cautions,
            @Nullable DrawnFigure figure) {

        /** {@return the ladder, and before it the next firing's throat where that is none of its rungs} */
        public List<PlannedThroat> throats() {
            PlannedThroat next = plan.next();
            if (next == null || plan.ladder().stream().anyMatch(this::isNext)) {
                return plan.ladder();
            }
            return Stream.concat(Stream.of(next), plan.ladder().stream()).toList();
        }

        /**
         * Whether a throat is that of the next firing.
         *
         * @param throat one of the throats
         */
        public boolean isNext(PlannedThroat throat) {
            PlannedThroat next = plan.next();
            return next != null && next.throatDiameter().equals(throat.throatDiameter());
        }
    }

    /** {@return what the document of the page does not carry} */
    public List<LeftOut> missing() {
        return carried.leftOut() == null ? List.of() : carried.leftOut();
    }

    /** {@return the name under which the document of the page is saved} */
    public String pageFile() {
        return missing().isEmpty() ? LeftOut.WHOLE : "burnlaw-page.json";
    }

    /** {@return whether a citation is beside the page} */
    public boolean citation() {
        return CitationFile.author(document).isPresent();
    }

    /** {@return whether the folder of the page is described as an RO-Crate} */
    public boolean crate() {
        return ResearchCrate.isPossible(document);
    }

    /** {@return the cautions of the document and those of every plan, each sentence once} */
    public List<String> cautions() {
        Set<String> said = new HashSet<>();
        return Stream.concat(document.cautions().stream(), commonCautions(document.plans()).stream())
                .map(caution -> Arrays.stream(caution.split("(?<=\\.) "))
                        .filter(said::add)
                        .collect(Collectors.joining(" ")))
                .filter(caution -> !caution.isEmpty())
                .toList();
    }

    static List<String> commonCautions(List<Plan> plans) {
        return plans.isEmpty()
                ? List.of()
                : plans.get(0).cautions().stream()
                        .filter(caution ->
                                plans.stream().allMatch(plan -> plan.cautions().contains(caution)))
                        .toList();
    }

    /**
     * How many firings have a status.
     *
     * @param status such as {@code used}
     */
    public long count(String status) {
        return firings.stream()
                .filter(view -> view.firing().status().equals(status))
                .count();
    }

    /** {@return the firings of motors} */
    public List<FiringView> motors() {
        return firings.stream().filter(view -> !view.strand()).toList();
    }

    /** {@return the strands burned in a vessel} */
    public List<FiringView> strands() {
        return firings.stream().filter(FiringView::strand).toList();
    }

    /** {@return what was burned, in words such as {@code 13 firings and 8 strands}} */
    public String burned() {
        return Stream.of(counted(motors().size(), "firing"), counted(strands().size(), "strand"))
                .filter(words -> !words.startsWith("0 "))
                .collect(Collectors.collectingAndThen(
                        Collectors.joining(" and "), words -> words.isEmpty() ? "no firing" : words));
    }

    /** {@return the title of a propellant; its id where the document does not hold it} */
    public String title(String id) {
        return document.formulations().stream()
                .filter(formulation -> formulation.id().equals(id))
                .map(Formulation::title)
                .findFirst()
                .orElse(id);
    }

    /** {@return whether any firing was predicted} */
    public boolean predicted() {
        return document.formulations().stream().anyMatch(formulation -> formulation.closure() != null);
    }

    private static String counted(int count, String word) {
        return count + " " + word + (count == 1 ? "" : "s");
    }
}
