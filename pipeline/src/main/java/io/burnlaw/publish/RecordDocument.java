package io.burnlaw.publish;

import static io.burnlaw.publish.PublishedQuantities.course;
import static io.burnlaw.publish.PublishedQuantities.published;

import io.burnlaw.characterize.CampaignResult.FiringResult;
import io.burnlaw.characterize.RecordLook;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import io.burnlaw.reduction.events.EventFinder;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Firing.Events;
import io.burnlaw.report.document.Firing.TraceHistory;
import io.burnlaw.report.html.RecordPage.Fact;
import io.burnlaw.report.wording.Numbers;
import io.burnlaw.trace.Trace;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A single record for its page: trace and events as a firing without a rate, and its figures in words. */
public final class RecordDocument {

    private RecordDocument() {}

    /** {@return a record without a grain, as a firing that has no rate} */
    public static Firing firing(RecordLook look, String name) {
        boolean pressure = look.asRead().hasPressure();
        FiringDraft draft = new FiringDraft();
        draft.trace = name;
        look.events().ifPresent(found -> {
            draft.events = events(look, found);
            draft.burnTime = published(burnout(found) - found.crossing(), Unit.SECOND);
        });
        if (pressure) {
            double highest = highest(look.record().trace().pressures());
            draft.maxPressure = published(highest, look.record().noiseStd(), Unit.MEGAPASCAL);
        }
        draft.history = look.history()
                .map(history -> history(history.samples(), pressure))
                .orElse(null);
        return draft.used(name, "", look.findings());
    }

    /** {@return a record whose grain is known, as a report shows a firing} */
    public static Firing firing(FiringResult result) {
        return FiringDocument.of(result, USUAL_EXPONENT, Optional.empty(), true);
    }

    /** For the mean of the pressure alone: it moves by less than a part in a thousand with any usual exponent [1]. */
    private static final double USUAL_EXPONENT = 0.4;

    /** {@return the figures of a record, each with its unit, in the order in which people look for them} */
    public static List<Fact> facts(RecordLook look) {
        Trace raw = look.asRead();
        boolean pressure = raw.hasPressure();
        double[] read = pressure ? raw.pressures() : raw.thrusts();
        double[] zeroed = pressure
                ? look.record().trace().pressures()
                : look.record().trace().thrusts();
        Unit unit = pressure ? Unit.MEGAPASCAL : Unit.NEWTON;
        Unit small = pressure ? Unit.KILOPASCAL : Unit.NEWTON;
        String absolute = pressure ? " absolute" : "";
        int n = raw.size();
        double span = raw.time(n - 1) - raw.time(0);
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact(
                "samples",
                "%d in %s s, one each %s ms"
                        .formatted(n, figure(span, 4), figure(1e3 * span / Math.max(1, n - 1), 4))));
        facts.add(new Fact(
                pressure ? "pressure" : "thrust",
                "from %s to %s %s%s"
                        .formatted(in(unit, lowest(read)), in(unit, highest(read)), unit.symbol(), absolute)));
        double range = highest(zeroed) - lowest(zeroed);
        facts.add(new Fact(
                "noise",
                "%s %s, %s %% of the range"
                        .formatted(
                                in(small, look.record().noiseStd()),
                                small.symbol(),
                                figure(100 * look.record().noiseStd() / Math.max(range, 1e-12), 2))));
        double offset = quiet(look, read) - (pressure ? look.ambient() : 0);
        facts.add(new Fact(
                "zero",
                "reads %s %s%s before the burn, ± %s %s"
                        .formatted(
                                in(small, offset),
                                small.symbol(),
                                pressure ? " over ambient" : "",
                                in(small, look.record().zeroStd()),
                                small.symbol())));
        look.events()
                .ifPresentOrElse(
                        found -> {
                            facts.add(new Fact("ignition", "at " + figure(found.crossing(), 5) + " s"));
                            facts.add(new Fact(
                                    "burnout",
                                    "at %s s, %s s after ignition"
                                            .formatted(
                                                    figure(burnout(found), 5),
                                                    figure(burnout(found) - found.crossing(), 4))));
                        },
                        () -> facts.add(new Fact(
                                "events",
                                look.operation().isEmpty()
                                        ? "nothing rises clearly above the noise"
                                        : "no ignition followed by a burnout was found")));
        facts.add(new Fact(
                pressure ? "pressure over time" : "total impulse",
                figure(impulse(look, zeroed, pressure ? look.ambient() : 0) / (pressure ? 1e6 : 1), 4)
                        + (pressure ? " MPa s over ambient" : " N s")));
        return facts;
    }

    /**
     * The same in a line.
     *
     * @param look what a record shows
     * @return such as {@code 2000 samples in 1.999 s, 3.4 MPa absolute, burned 1.39 s}
     */
    public static String summary(RecordLook look) {
        Trace raw = look.asRead();
        boolean pressure = raw.hasPressure();
        Unit unit = pressure ? Unit.MEGAPASCAL : Unit.NEWTON;
        return "%d samples in %s s, %s %s, %s"
                .formatted(
                        raw.size(),
                        figure(raw.time(raw.size() - 1) - raw.time(0), 4),
                        in(unit, highest(pressure ? raw.pressures() : raw.thrusts())),
                        unit.symbol() + (pressure ? " absolute" : ""),
                        look.events()
                                .map(found -> "burned " + figure(burnout(found) - found.crossing(), 3) + " s")
                                .orElse("no burn found"));
    }

    /** {@return what the grain adds: rate and c*; nothing where the record was rejected} */
    public static List<Fact> facts(FiringResult result) {
        return result.reduction()
                .match(
                        reduced -> {
                            RatePoint point = reduced.points().get(0);
                            List<Fact> facts = new ArrayList<>();
                            facts.add(new Fact(
                                    "rate",
                                    Numbers.withStd(published(
                                                    point.rate(), point.rateStd(), Unit.MILLIMETRE_PER_SECOND))
                                            + " at "
                                            + Numbers.withStd(published(
                                                    point.pressures().powerMean(USUAL_EXPONENT),
                                                    point.pressureStd(),
                                                    Unit.MEGAPASCAL))
                                            + " absolute"));
                            reduced.characteristicVelocity()
                                    .map(velocity -> published(velocity, Unit.METRE_PER_SECOND))
                                    .ifPresent(velocity -> facts.add(new Fact("c*", Numbers.withStd(velocity))));
                            return facts;
                        },
                        rejected -> List.of());
    }

    private static double burnout(EventFinder.Found found) {
        return found.bisector().orElse(found.curvature());
    }

    private static Events events(RecordLook look, EventFinder.Found found) {
        double end = look.operation().orElseThrow().to();
        return new Events(
                published(found.start(), Unit.SECOND),
                published(found.crossing(), found.ignitionSpread(), Unit.SECOND),
                published(burnout(found), found.burnoutSpread(), Unit.SECOND),
                published(burnout(found), Unit.SECOND),
                published(found.curvature(), Unit.SECOND),
                published(end, Unit.SECOND),
                published(found.actionStart(), Unit.SECOND),
                published(found.actionEnd(), Unit.SECOND));
    }

    private static TraceHistory history(io.burnlaw.reduction.point.TraceHistory.Samples samples, boolean pressure) {
        return new TraceHistory(
                course(samples.time(), Unit.SECOND),
                pressure ? course(samples.pressure(), Unit.MEGAPASCAL) : List.of(),
                thrust(samples, pressure),
                null,
                null);
    }

    private static @Nullable List<Double> thrust(
            io.burnlaw.reduction.point.TraceHistory.Samples samples, boolean pressure) {
        return pressure ? null : course(samples.pressure(), Unit.NEWTON);
    }

    /** Mean of what was read before anything burned. */
    private static double quiet(RecordLook look, double[] read) {
        double sum = 0;
        int count = 0;
        for (int i = 0;
                i < read.length
                        && (count == 0 || look.asRead().time(i) <= look.record().quietUntil());
                i++) {
            sum += read[i];
            count++;
        }
        return sum / count;
    }

    private static double impulse(RecordLook look, double[] values, double ambient) {
        Trace trace = look.asRead();
        double sum = 0;
        for (int i = 1; i < Math.min(values.length, trace.size()); i++) {
            sum += (trace.time(i) - trace.time(i - 1)) * ((values[i] + values[i - 1]) / 2 - ambient);
        }
        return sum;
    }

    private static double highest(double[] values) {
        return Arrays.stream(values).max().orElse(0);
    }

    private static double lowest(double[] values) {
        return Arrays.stream(values).min().orElse(0);
    }

    private static String in(Unit unit, double si) {
        return figure(unit.fromSi(si), 3);
    }

    private static String figure(double value, int significant) {
        return NumberFormat.plain(value, significant);
    }
}
