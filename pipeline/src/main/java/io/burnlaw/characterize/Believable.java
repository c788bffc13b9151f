package io.burnlaw.characterize;

import io.burnlaw.campaign.Plausible;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import io.burnlaw.reduction.Reduction;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.reduction.strand.StrandReduction;
import io.burnlaw.trace.Trace;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * Rejects numbers that no firing gives: one of them would spoil the law of all. The bounds are far outside of any
 * propellant's values (own convention), so only a wrong unit or a damaged record passes them.
 */
final class Believable {

    /** [Pa] */
    private static final double UNREADABLE = 1e12;

    /** A standard uncertainty of so many times the value says that nothing was measured. */
    private static final double VAGUEST = 10;

    private Believable() {}

    /**
     * Whether a sensor can have given the readings of a record.
     *
     * @return what is wrong with it
     */
    static Optional<Finding> readings(Trace trace) {
        if (!trace.hasPressure()) {
            return Optional.empty();
        }
        for (int i = 0; i < trace.size(); i++) {
            if (!(Math.abs(trace.pressure(i)) < UNREADABLE)) {
                return Optional.of(Finding.of(
                        FindingCode.UNREADABLE_TRACE,
                        "reading " + (i + 1)
                                + " of the record is more than a million MPa, which no sensor gives: the file"
                                + " is damaged, or its column or unit is wrong"));
            }
        }
        return Optional.empty();
    }

    static Reduction only(Reduction reduction) {
        return reduction.match(
                reduced -> reduced.points().stream()
                        .flatMap(point -> doubt(point).stream())
                        .findFirst()
                        .or(() -> figures(reduced))
                        .<Reduction>map(doubt -> new Reduction.Rejected(
                                reduced.firing(), joined(reduced.findings(), doubt), Optional.empty()))
                        .orElse(reduced),
                rejected -> rejected);
    }

    static StrandReduction only(StrandReduction reduction) {
        return reduction.match(
                reduced -> doubt(reduced.point())
                        .<StrandReduction>map(doubt -> new StrandReduction.Rejected(
                                reduced.strand(), joined(reduced.findings(), doubt), Optional.empty()))
                        .orElse(reduced),
                rejected -> rejected);
    }

    private static Optional<Finding> doubt(RatePoint point) {
        double pressure = point.pressures().powerMean(1);
        if (!Plausible.RATE.holds(point.rate())) {
            return said("a rate of " + NumberFormat.significant(Unit.MILLIMETRE_PER_SECOND.fromSi(point.rate()), 3)
                    + " mm/s");
        }
        if (!Plausible.BURNING_PRESSURE.holds(pressure)) {
            return said("a mean pressure of " + NumberFormat.significant(Unit.MEGAPASCAL.fromSi(pressure), 3) + " MPa");
        }
        if (!(point.rateStd() <= VAGUEST * point.rate()
                && point.rateSystematic() <= VAGUEST * point.rate()
                && point.pressureStd() <= VAGUEST * pressure)) {
            return said("an uncertainty of more than ten times the value");
        }
        return Optional.empty();
    }

    private static Optional<Finding> figures(Reduction.Reduced reduced) {
        boolean finite = DoubleStream.concat(
                        DoubleStream.of(
                                reduced.meanPressure(),
                                reduced.maxPressure(),
                                reduced.pressureIntegral(),
                                reduced.thicknessTimeRate(),
                                reduced.throatBefore(),
                                reduced.web().value(),
                                reduced.web().stdOr(0)),
                        Stream.of(
                                        reduced.massBalanceRate(),
                                        reduced.throatAfter(),
                                        reduced.totalImpulse(),
                                        reduced.specificImpulse(),
                                        reduced.thrustCoefficient())
                                .mapToDouble(each -> each.orElse(0)))
                .allMatch(each -> Math.abs(each) < 1e12);
        boolean velocity =
                reduced.characteristicVelocity().map(Believable::usable).orElse(true);
        return finite && velocity ? Optional.empty() : said("impossible numbers");
    }

    private static boolean usable(Measured velocity) {
        return velocity.value() > 0 && velocity.value() < 1e6 && velocity.stdOr(0) < VAGUEST * velocity.value();
    }

    private static Optional<Finding> said(String what) {
        return Optional.of(Finding.of(
                        FindingCode.IMPLAUSIBLE_BURN_TIME,
                        "The record and the row of the log together give " + what
                                + ": check the units of time, pressure, dimensions and uncertainties.")
                .withSeverity(Severity.REJECTION));
    }

    private static List<Finding> joined(List<Finding> seen, Finding doubt) {
        return Stream.concat(seen.stream(), Stream.of(doubt)).toList();
    }
}
