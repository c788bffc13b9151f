package io.burnlaw.publish;

import io.burnlaw.batch.BatchResult;
import io.burnlaw.batch.BatchResult.BatchLaw;
import io.burnlaw.characterize.FormulationResult;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.regime.Regimes;
import io.burnlaw.report.document.Batches;
import io.burnlaw.report.document.Batches.BatchMember;
import io.burnlaw.report.document.Batches.NextRate;
import io.burnlaw.report.document.Formulation.NotFitted;
import io.burnlaw.report.document.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Batches as they stand in the document. */
final class BatchDocument {

    private static final int BAND_POINTS = 11;

    private BatchDocument() {}

    /**
     * What the castings say.
     *
     * @param level  of the intervals [1]
     * @return empty where points carry no batch
     */
    static Optional<Batches> of(FormulationResult result, double level) {
        int count = (int) result.points().stream()
                .flatMap(point -> point.batch().stream())
                .distinct()
                .count();
        boolean several = result.regimes().map(Regimes::selected).orElse(1) > 1;
        return result.batches().map(found -> of(found, count, several, level));
    }

    /**
     * What castings say.
     *
     * @param found law over them, or why there is none
     * @param count how many they are
     * @param several whether there are several regimes: the law over batches is then none of theirs
     * @param level of the intervals [1]
     */
    static Batches of(BatchResult found, int count, boolean several, double level) {
        return found instanceof BatchLaw law
                ? estimated(law, several, level)
                : missing((BatchResult.NotFitted) found, count);
    }

    private static Batches missing(BatchResult.NotFitted none, int count) {
        return new Batches(
                count,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                List.of(),
                List.of(),
                "What the next batch will do is not known. " + none.reason(),
                new NotFitted(none.reason(), none.advice()));
    }

    private static Batches estimated(BatchLaw law, boolean several, double level) {
        return new Batches(
                law.members().size(),
                law.withinStd(),
                new Quantity(law.betweenStd(), null, law.betweenLow(), law.betweenHigh(), law.level(), null),
                law.differ(),
                law.pValue(),
                law.slopeStd() > 0 ? (Double) law.slopeStd() : null,
                law.moreBatches().isPresent() ? (Integer) law.moreBatches().getAsInt() : null,
                several ? null : LawDocument.of(law.law(), level),
                several ? null : LawDocument.of(law.next(), level),
                several ? List.of() : band(law.next(), level),
                law.members().stream()
                        .map(each -> new BatchMember(
                                each.id(),
                                each.points(),
                                new Quantity(each.ratio(), null, each.low(), each.high(), level, null),
                                several
                                        ? null
                                        : LawDocument.of(each.law(), level).withoutCurve()))
                        .toList(),
                sentence(law, several, level),
                null);
    }

    private static List<NextRate> band(RateLaw next, double level) {
        List<NextRate> band = new ArrayList<>();
        for (int i = 0; i < BAND_POINTS; i++) {
            double pressure = i == BAND_POINTS - 1
                    ? next.pressureHigh()
                    : next.pressureLow()
                            * StrictMath.pow(next.pressureHigh() / next.pressureLow(), (double) i / (BAND_POINTS - 1));
            next.predict(pressure, level)
                    .estimated()
                    .ifPresent(firing -> band.add(new NextRate(
                            Unit.MEGAPASCAL.fromSi(pressure),
                            Unit.MILLIMETRE_PER_SECOND.fromSi(next.rate(pressure)),
                            Unit.MILLIMETRE_PER_SECOND.fromSi(firing.low()),
                            Unit.MILLIMETRE_PER_SECOND.fromSi(firing.high()))));
        }
        return band;
    }

    private static String sentence(BatchLaw law, boolean several, double level) {
        double pressure = law.law().referencePressure();
        int count = law.members().size();
        String scatter = Sentence.of(
                "Rates scatter by %s %% between batches and by %s %% within a batch.",
                NumberFormat.withInterval(100 * law.betweenStd(), 100 * law.betweenLow(), 100 * law.betweenHigh()),
                NumberFormat.significant(100 * law.withinStd(), 2));
        Interval.Estimated next =
                law.next().predict(pressure, level).estimated().orElseThrow();
        return (law.differ()
                        ? Sentence.of("The %d batches differ (%s). ", count, NumberFormat.probability(law.pValue()))
                        : Sentence.of(
                                "No difference between the %d batches is shown (%s). ",
                                count, NumberFormat.probability(law.pValue())))
                + scatter
                + (several
                        ? ""
                        : Sentence.of(
                                " At %s MPa, one firing of a batch not yet cast burns at %s (%s to %s) mm/s, with %s %% confidence.",
                                NumberFormat.megapascal(pressure),
                                millimetres(law.next().rate(pressure)),
                                millimetres(next.low()),
                                millimetres(next.high()),
                                NumberFormat.plain(100 * level, 4)))
                + more(law);
    }

    private static String more(BatchLaw law) {
        if (law.moreBatches().isEmpty() || law.moreBatches().getAsInt() == 0) {
            return law.members().size() == 2 ? " Two batches show little about the next one: cast a third." : "";
        }
        int more = law.moreBatches().getAsInt();
        return Sentence.of(
                " %s would make the scatter between batches known to a factor of two.",
                more == 1 ? "One more batch" : more + " more batches");
    }

    private static String millimetres(double rate) {
        return NumberFormat.significant(Unit.MILLIMETRE_PER_SECOND.fromSi(rate), 3);
    }
}
