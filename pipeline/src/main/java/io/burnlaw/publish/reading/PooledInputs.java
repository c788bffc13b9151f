package io.burnlaw.publish.reading;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.Campaign.FitSettings;
import io.burnlaw.campaign.Campaign.InputFile;
import io.burnlaw.campaign.Campaign.ReductionSettings;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.publish.reading.FormulationChoice.ChosenFormulation;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.report.document.Characterization.CampaignSummary;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Quantity;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What several campaigns of one formulation measured under, as the one campaign that is fitted. */
record PooledInputs(List<ChosenFormulation> all) {

    Campaign campaign(Map<String, String> batches) {
        CampaignSummary first = all.get(0).source().document().campaign();
        Formulation formulation = all.get(0).formulation();
        return new Campaign(
                Path.of(""),
                Sentence.of("%s, %d campaigns pooled", formulation.title(), all.size()),
                agreed(CampaignSummary::preparedBy),
                agreed(CampaignSummary::licence),
                Optional.empty(),
                PublishedFormulation.si(first.ambientPressure()),
                first.ambientAssumed(),
                OptionalDouble.empty(),
                List.of(new io.burnlaw.campaign.Formulation(
                        formulation.id(),
                        formulation.title(),
                        mean(all.stream()
                                .flatMap(each -> density(each.formulation()).stream())
                                .toList()),
                        true,
                        Optional.empty(),
                        Optional.ofNullable(formulation.additive()),
                        formulation.additiveFraction() == null
                                ? OptionalDouble.empty()
                                : OptionalDouble.of(formulation.additiveFraction()),
                        OptionalDouble.empty(),
                        mean(all.stream()
                                .flatMap(each ->
                                        Stream.ofNullable(each.formulation().characteristicVelocity()))
                                .map(PooledInputs::measured)
                                .toList()))),
                hardware(),
                ReductionSettings.defaults(),
                new FitSettings(
                        first.confidence(),
                        first.seed(),
                        FitSettings.defaults().weighting(),
                        FitSettings.defaults().pressure(),
                        false),
                List.of(),
                List.of(),
                List.of(),
                batches,
                List.of(),
                all.stream()
                        .map(each -> each.source().file())
                        .map(file -> new InputFile(file.path(), file.sha256(), file.bytes()))
                        .toList(),
                notes());
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>();
        for (ChosenFormulation each : all) {
            notes.add(Sentence.of(
                    "%s is the document of the campaign '%s', made by burnlaw %s; %d of its points are pooled.",
                    each.source().file().path(),
                    each.source().document().campaign().title(),
                    each.source().document().generator().version(),
                    each.formulation().points().stream().filter(Point::used).count()));
        }
        notes.add(
                "Points that name no batch count as one batch of their campaign, so differences between stands and castings are"
                        + " then one scatter.");
        notes.addAll(Caveats.betweenThem(all));
        return notes;
    }

    /** The lowest limit of all, with its factor; none where one document states none. */
    private Hardware hardware() {
        Hardware none = new Hardware(OptionalDouble.empty(), 1);
        Hardware least = none;
        for (ChosenFormulation each : all) {
            CampaignSummary campaign = each.source().document().campaign();
            if (campaign.casePressureLimit() == null || campaign.safetyFactor() == null) {
                return none;
            }
            double limit = PublishedFormulation.si(campaign.casePressureLimit());
            if (least.casePressureLimit().isEmpty()
                    || limit / campaign.safetyFactor()
                            < least.casePressureLimit().getAsDouble() / least.safetyFactor()) {
                least = new Hardware(OptionalDouble.of(limit), campaign.safetyFactor());
            }
        }
        return least;
    }

    /** Mean of the campaigns' values; its uncertainty is theirs, which their instruments may share, and their scatter. */
    private static Optional<Measured> mean(List<Measured> values) {
        if (values.isEmpty()) {
            return Optional.empty();
        }
        double mean = values.stream().mapToDouble(Measured::value).average().orElseThrow();
        double own =
                values.stream().mapToDouble(each -> each.stdOr(0)).average().orElseThrow();
        double squares = values.stream()
                .mapToDouble(each -> (each.value() - mean) * (each.value() - mean))
                .sum();
        double scatter = values.size() < 2 ? 0 : Math.sqrt(squares / (values.size() - 1) / values.size());
        double std = Math.hypot(own, scatter);
        return Optional.of(std > 0 ? Measured.of(mean, std) : Measured.of(mean));
    }

    private Optional<String> agreed(Function<CampaignSummary, @Nullable String> what) {
        return Optional.ofNullable(PublishedSource.agreed(
                all.stream().map(ChosenFormulation::source).toList(), what));
    }

    /** {@return [kg/m3], as published} */
    static Optional<Measured> density(Formulation formulation) {
        return Optional.ofNullable(formulation.density()).map(PooledInputs::measured);
    }

    static Measured measured(Quantity quantity) {
        double value = PublishedFormulation.si(quantity);
        return quantity.std() == null
                ? Measured.of(value)
                : Measured.of(value, PublishedFormulation.si(Quantity.of(quantity.std(), quantity.unit())));
    }
}
