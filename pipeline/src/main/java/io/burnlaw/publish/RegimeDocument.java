package io.burnlaw.publish;

import static io.burnlaw.publish.PublishedQuantities.published;

import io.burnlaw.campaign.Choice;
import io.burnlaw.quantity.Unit;
import io.burnlaw.regime.Evidence;
import io.burnlaw.regime.Evidence.CountTest;
import io.burnlaw.regime.Evidence.Rival;
import io.burnlaw.regime.PressureForRate.FasterAnswer;
import io.burnlaw.regime.Regimes;
import io.burnlaw.regime.Regimes.Break;
import io.burnlaw.regime.Regimes.Regime;
import io.burnlaw.regime.Stability;
import io.burnlaw.regime.Thresholds.Threshold;
import io.burnlaw.report.document.Regimes.RegimeEvidence;
import java.util.List;
import java.util.OptionalDouble;

/** Regimes, threshold and answers as they stand in the document. */
final class RegimeDocument {

    private RegimeDocument() {}

    /**
     * The regimes.
     *
     * @param level   of the intervals [1]
     * @return the same in the document's units
     */
    static io.burnlaw.report.document.Regimes of(Regimes regimes, double level) {
        return new io.burnlaw.report.document.Regimes(
                Choice.word(regimes.claim()),
                regimes.selected(),
                regimes.selected() > 1 ? Choice.word(regimes.shape()) : null,
                regimes.regimes().stream()
                        .map(regime -> LawDocument.of(regime.law(), Choice.word(regime.kind()), range(regime), level))
                        .toList(),
                regimes.breaks().stream().map(RegimeDocument::of).toList(),
                of(regimes.evidence()));
    }

    /** {@return the threshold in the document's units} */
    static io.burnlaw.report.document.Formulation.Threshold of(Threshold threshold) {
        return new io.burnlaw.report.document.Formulation.Threshold(
                published(threshold.pressure(), threshold.interval(), OptionalDouble.empty(), Unit.MEGAPASCAL),
                threshold.rateRatio(),
                threshold.below(),
                threshold.above(),
                threshold.stayRatio().isPresent()
                        ? (Double) threshold.stayRatio().getAsDouble()
                        : null,
                threshold.sentence());
    }

    /** {@return the pressures needed to burn faster, in the document's units} */
    static io.burnlaw.report.document.Formulation.FasterAnswer of(FasterAnswer answer) {
        return new io.burnlaw.report.document.Formulation.FasterAnswer(
                answer.factor(),
                answer.pressure().isPresent()
                        ? published(
                                answer.pressure().getAsDouble(),
                                answer.interval(),
                                OptionalDouble.empty(),
                                Unit.MEGAPASCAL)
                        : null,
                Choice.word(answer.reach()),
                answer.sentence());
    }

    /** Whether a steady pressure exists. */
    static io.burnlaw.report.document.Formulation.Stability stability(Regimes regimes) {
        Stability stability = Stability.of(regimes);
        return new io.burnlaw.report.document.Formulation.Stability(stability.exponent(), stability.sentence());
    }

    private static LawDocument.Range range(Regime regime) {
        return new LawDocument.Range(regime.low(), regime.high());
    }

    private static io.burnlaw.report.document.Regimes.Break of(Break change) {
        return new io.burnlaw.report.document.Regimes.Break(
                published(change.pressure(), change.interval(), OptionalDouble.empty(), Unit.MEGAPASCAL),
                Choice.word(change.kind()),
                change.rateRatio(),
                change.exponentBelow(),
                change.exponentAbove());
    }

    /** The test that decided: of the last count that was preferred to one less, or else of one law against two. */
    private static RegimeEvidence of(Evidence evidence) {
        List<CountTest> tests = evidence.tests();
        CountTest decisive = tests.isEmpty()
                ? null
                : tests.get(Math.max(0, Math.min(evidence.sequentialAnswer() - 2, tests.size() - 1)));
        return new RegimeEvidence(
                decisive == null ? null : (Double) decisive.pValue(),
                decisive == null ? null : (Double) Math.max(decisive.joinedF(), decisive.jumpingF()),
                evidence.bicByCount(),
                evidence.sequentialAnswer(),
                evidence.criterionAnswer(),
                decisive == null ? 0 : decisive.replicates(),
                evidence.rivals().stream().map(RegimeDocument::of).toList(),
                evidence.sentence());
    }

    private static io.burnlaw.report.document.Regimes.Rival of(Rival rival) {
        return new io.burnlaw.report.document.Regimes.Rival(
                Choice.word(rival.kind()), rival.bic(), rival.beaten(), rival.sentence());
    }
}
