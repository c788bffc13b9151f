package io.burnlaw.publish.reading;

import io.burnlaw.comparison.Comparison;
import io.burnlaw.comparison.DoseTrends.DoseTrend;
import io.burnlaw.publish.CharacterizationDocument;
import io.burnlaw.publish.ComparisonDocument;
import io.burnlaw.publish.reading.FormulationChoice.ChosenFormulation;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Characterization.CampaignSummary;
import io.burnlaw.report.document.Characterization.Generator;
import io.burnlaw.report.document.Characterization.LeftOut;
import io.burnlaw.report.document.Closure;
import io.burnlaw.report.document.Closure.ClosureRow;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Formulation.LawWithout;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Quantity;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The chosen formulations of several documents, with their firings, as one document. */
final class MergedDocument {

    private final List<ChosenFormulation> formulations;
    private final List<PublishedSource> sources;
    private final Map<PublishedSource, Function<String, String>> ids;
    private final double level;
    private final String version;
    private final Optional<String> created;

    MergedDocument(List<ChosenFormulation> formulations, double level, String version, Optional<String> created) {
        this.formulations = formulations;
        this.sources =
                formulations.stream().map(ChosenFormulation::source).distinct().toList();
        this.ids = UniqueIds.of(sources, MergedDocument::idsOf);
        this.level = level;
        this.version = version;
        this.created = created;
    }

    Characterization with(List<Comparison> comparisons, List<DoseTrend> trends, List<String> caveats) {
        return new Characterization(
                Characterization.FORMAT,
                new Generator("burnlaw", version),
                created.orElse(null),
                summary(caveats),
                sources.stream().map(PublishedSource::file).toList(),
                formulations.stream().map(this::formulation).toList(),
                formulations.stream().flatMap(this::firings).toList(),
                ComparisonDocument.of(comparisons),
                ComparisonDocument.ofTrends(trends),
                List.of(),
                CharacterizationDocument.CAUTIONS,
                leftOut());
    }

    /** What the documents leave out, and where it is as seen from where they were read. */
    private @Nullable List<LeftOut> leftOut() {
        List<LeftOut> all = sources.stream()
                .flatMap(source -> Stream.ofNullable(source.document().leftOut())
                        .flatMap(List::stream)
                        .map(each -> each.from(Path.of(source.file().path()))))
                .toList();
        return all.isEmpty() ? null : all;
    }

    static Set<String> idsOf(PublishedSource source) {
        Set<String> ids = new HashSet<>();
        source.document().firings().forEach(firing -> ids.add(firing.id()));
        source.document()
                .formulations()
                .forEach(each -> each.points().forEach(point -> ids.addAll(List.of(point.id(), point.cluster()))));
        return ids;
    }

    private CampaignSummary summary(List<String> caveats) {
        CampaignSummary first = sources.get(0).document().campaign();
        String candidates =
                formulations.stream().skip(1).map(ChosenFormulation::id).collect(Collectors.joining(", "));
        return new CampaignSummary(
                candidates + " against " + formulations.get(0).id(),
                PublishedSource.agreed(sources, CampaignSummary::preparedBy),
                PublishedSource.agreed(sources, CampaignSummary::licence),
                null,
                first.ambientPressure(),
                first.ambientAssumed(),
                PublishedSource.<Quantity>agreed(sources, CampaignSummary::referenceTemperature),
                null,
                null,
                first.reductionMethod(),
                first.weighting(),
                level,
                first.seed(),
                notes(caveats));
    }

    private List<String> notes(List<String> caveats) {
        List<String> notes = new ArrayList<>();
        sources.forEach(source -> notes.add(source.file().path() + " is the document of the campaign '"
                + source.document().campaign().title() + "', made by burnlaw "
                + source.document().generator().version() + "."));
        if (sources.size() > 1) {
            notes.add("Ambient pressure, method and weighting are stated here for "
                    + sources.get(0).file().path() + "; for the others they are in their own documents.");
        }
        notes.addAll(caveats);
        return notes;
    }

    private Formulation formulation(ChosenFormulation chosen) {
        Formulation it = chosen.formulation();
        boolean base = chosen.equals(formulations.get(0));
        Function<String, String> own = ids.get(chosen.source());
        return new Formulation(
                chosen.id(),
                it.title(),
                base,
                base ? null : formulations.get(0).id(),
                it.additive(),
                it.additiveFraction(),
                it.density(),
                it.characteristicVelocity(),
                it.verdict(),
                it.caution(),
                it.points().stream().map(point -> point(point, own)).toList(),
                it.singleLaw(),
                it.notFitted(),
                it.useLaws(),
                it.otherFits(),
                it.regimes(),
                it.batches(),
                it.threshold(),
                it.faster(),
                it.temperatureSensitivity(),
                it.stability(),
                it.withinBetween(),
                closure(it.closure(), own),
                it.validRange(),
                it.notEstimated(),
                it.findings(),
                it.without() == null
                        ? null
                        : it.without().stream()
                                .map(each -> new LawWithout(
                                        own.apply(each.cluster()),
                                        each.law(),
                                        each.coefficient(),
                                        each.exponent(),
                                        each.rateChange(),
                                        each.exponentChange()))
                                .toList());
    }

    private static Point point(Point point, Function<String, String> own) {
        return new Point(
                own.apply(point.id()),
                own.apply(point.cluster()),
                point.firing() == null ? null : own.apply(point.firing()),
                point.batch(),
                point.source(),
                point.pressure(),
                point.meanPressure(),
                point.rate(),
                point.temperature(),
                point.method(),
                point.lowerGrade(),
                point.used(),
                point.reason(),
                point.standardizedResidual(),
                point.segment());
    }

    private static @Nullable Closure closure(@Nullable Closure closure, Function<String, String> own) {
        return closure == null
                ? null
                : new Closure(
                        closure.rows().stream()
                                .map(row -> new ClosureRow(
                                        own.apply(row.firing()),
                                        row.maxPressureMeasured(),
                                        row.maxPressurePredicted(),
                                        row.meanPressureMeasured(),
                                        row.meanPressurePredicted(),
                                        row.burnTimeMeasured(),
                                        row.burnTimePredicted()))
                                .toList(),
                        closure.medianMaxPressureError(),
                        closure.medianMeanPressureError(),
                        closure.medianBurnTimeError(),
                        closure.good(),
                        closure.sentence());
    }

    private Stream<Firing> firings(ChosenFormulation chosen) {
        Function<String, String> own = ids.get(chosen.source());
        return chosen.source().document().firings().stream()
                .filter(firing ->
                        firing.formulation().equals(chosen.formulation().id()))
                .map(firing -> firing.called(own.apply(firing.id()), chosen.id()));
    }
}
