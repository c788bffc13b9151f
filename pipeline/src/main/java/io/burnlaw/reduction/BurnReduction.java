package io.burnlaw.reduction;

import io.burnlaw.campaign.Campaign.ReductionSettings;
import io.burnlaw.campaign.Campaign.ReductionSettings.Method;
import io.burnlaw.campaign.Firing;
import io.burnlaw.finding.Finding;
import io.burnlaw.quantity.Measured;
import io.burnlaw.reduction.balance.BurnInputs;
import io.burnlaw.reduction.balance.BurnPressures;
import io.burnlaw.reduction.balance.Continuity;
import io.burnlaw.reduction.balance.IgniterGas;
import io.burnlaw.reduction.balance.LocalExponent;
import io.burnlaw.reduction.balance.MassBalance;
import io.burnlaw.reduction.balance.RateEstimate;
import io.burnlaw.reduction.events.Burn;
import io.burnlaw.reduction.events.EventFinder;
import io.burnlaw.reduction.events.Events;
import io.burnlaw.reduction.events.UniformTrace;
import io.burnlaw.reduction.point.InstantaneousRate;
import io.burnlaw.reduction.point.PressureDistribution;
import io.burnlaw.reduction.point.PressureError;
import io.burnlaw.reduction.point.RatesAlong;
import io.burnlaw.reduction.point.TraceHistory;
import io.burnlaw.reduction.point.UsualUncertainty;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The reduction of a burn whose events are known.
 *
 * @param found         events as they were found
 * @param estimate      rates by both definitions
 * @param events        events with their uncertainties, the burnout referred to the mean web
 * @param hump          a start that was faster than its pressure explains, and is left out of the rates
 * @param throatChange  what the course of the rates says of the throat, beyond what was measured of it
 * @param duringEven    how long at which pressure while the mass balance rate holds
 * @param duringWeb     how long at which pressure from ignition to burnout
 * @param againstGrain  where record and grain do not fit each other
 * @param pressureScale how sure the scale of a pressure is that was derived from thrust; empty where it was recorded
 * @param unseen        share of the web that may have burned before the main rise without being seen [1]
 * @param burnedOn      how long something burned on slowly behind the main burn [s]
 */
record BurnReduction(
        Burn burn,
        ReductionSettings settings,
        EventFinder.Found found,
        BurnInputs inputs,
        RateEstimate estimate,
        Events events,
        List<InstantaneousRate> along,
        Optional<ErosiveHump> hump,
        Optional<ThroatChange> throatChange,
        PressureDistribution duringEven,
        PressureDistribution duringWeb,
        Optional<RecordAgainstGrain> againstGrain,
        Optional<PressureError> pressureScale,
        double unseen,
        double burnedOn) {

    static BurnReduction of(
            Burn burn,
            ReductionSettings settings,
            MassBalance balance,
            EventFinder.Found found,
            Optional<PressureError> pressureScale) {
        BurnInputs inputs = balance.inputs();
        OptionalDouble burnout = found.burnout(settings.burnoutEvent());
        double ambient = burn.firing().ambientPressure();
        boolean waited = BurnedBefore.waited(found);
        RateEstimate whole = RateEstimate.of(balance, found.crossing(), burnout, RateEstimate.TRANSIENT, waited);
        List<InstantaneousRate> wholeAlong = Continuity.along(whole, ambient);
        // After a dwell in another regime the burn has two laws, and neither trend could be distinguished from the
        // other law.
        boolean one = found.dwellStart().isEmpty();
        // A few samples show no course, neither at the start nor along the burn: a stand that swings does as well.
        boolean fine = (whole.burnout() - whole.ignition())
                        / inputs.record().step()
                        * inputs.record().samplesPerCell()
                > FEW_SAMPLES;
        Optional<ErosiveHump> hump =
                one && fine ? ErosiveHump.of(wholeAlong, inputs.grain().web()) : Optional.empty();
        RateEstimate estimate = hump.isPresent()
                ? RateEstimate.of(balance, found.crossing(), burnout, ErosiveHump.SETTLED, waited)
                : whole;
        Optional<ThroatChange> throat =
                one && fine ? ThroatChange.of(wholeAlong, inputs.grain().web()) : Optional.empty();
        Optional<RecordAgainstGrain> against =
                one ? RecordAgainstGrain.of(burn, inputs, found, hump, throat) : Optional.empty();
        double unseen =
                BurnedBefore.unseen(found, inputs, estimate, burn.record().zeroStd());
        double burnedOn = UnevenWeb.burnedOn(inputs.record(), ambient, estimate, found.highest());
        return new BurnReduction(
                burn,
                settings,
                found,
                inputs,
                estimate,
                events(inputs.record(), found, estimate, unseen, burnedOn),
                hump.isPresent() ? Continuity.along(estimate, ambient) : wholeAlong,
                hump,
                throat.filter(change -> against.isEmpty()),
                BurnPressures.between(inputs.record(), estimate.firstEven(), estimate.lastEven(), ambient),
                BurnPressures.between(inputs.record(), estimate.ignition(), estimate.burnout(), ambient),
                against,
                pressureScale,
                unseen,
                burnedOn);
    }

    private static Events events(
            UniformTrace record, EventFinder.Found found, RateEstimate estimate, double unseen, double burnedOn) {
        double ofStep = record.step() / RECTANGULAR;
        // A part that burned before is gone before the mean web, and the record ends with the rest; where that burns on
        // in
        // a slow regime, the mean web was gone at any time until its end.
        double ofPart = Math.hypot(unseen * (estimate.burnout() - estimate.ignition()), burnedOn) / RECTANGULAR;
        return new Events(
                found.start(),
                found.crossing(),
                Math.hypot(found.ignitionSpread() / 2 / RECTANGULAR, ofStep),
                estimate.burnout(),
                Math.hypot(Math.hypot(found.burnoutSpread() / 2 / RECTANGULAR, ofStep), ofPart),
                found.bisector().orElse(found.curvature()),
                found.curvature(),
                record.time(record.size() - 1),
                found.actionStart(),
                found.actionEnd());
    }

    /** Fewer samples in the burn are coarse [1]: common practice, no source. */
    private static final double FEW_SAMPLES = 100;

    /** Half the range of a rectangular distribution over its standard deviation; JCGM 100:2008, 4.3.7. */
    static final double RECTANGULAR = Math.sqrt(3);

    Reduction.Reduced reduced(List<Finding> findings, Optional<TraceHistory> history) {
        Firing row = burn.firing();
        Optional<ThrustFigures> thrust = burn.record().trace().hasThrust()
                ? Optional.of(ThrustFigures.of(
                        burn.record().trace(), pressureScale.isEmpty(), row, events.start(), events.end()))
                : Optional.empty();
        return new Reduction.Reduced(
                row.id(),
                FiringPoints.of(this),
                events,
                Measured.of(inputs.grain().web(), webStd()),
                pressures(Method.THICKNESS_TIME).powerMean(1),
                found.highest() + row.ambientPressure(),
                gaugeIntegral(),
                estimate.thicknessTime(),
                OptionalDouble.of(estimate.massBalance()),
                characteristicVelocity(),
                row.throatDiameter().value(),
                row.throatDiameterAfter().stream().mapToDouble(Measured::value).findFirst(),
                thrust.stream().mapToDouble(ThrustFigures::totalImpulse).findFirst(),
                thrust.flatMap(t -> boxed(t.specificImpulse())).stream()
                        .mapToDouble(x -> x)
                        .findFirst(),
                thrust.flatMap(t -> boxed(t.thrustCoefficient())).stream()
                        .mapToDouble(x -> x)
                        .findFirst(),
                RatesAlong.of(along),
                igniterGas(),
                findings,
                history);
    }

    /** What an igniter is expected to have given where none is stated [kg]; empty where it is stated or cannot be seen. */
    private Optional<Measured> igniterGas() {
        boolean plain = found.dwellStart().isEmpty() && hump.isEmpty() && BurnedBefore.share(this) == 0;
        return plain && burn.firing().igniterGas().isEmpty()
                ? IgniterGas.expected(estimate, found.start())
                : Optional.empty();
    }

    private static Optional<Double> boxed(OptionalDouble value) {
        return value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.empty();
    }

    double webStd() {
        return burn.grain().web().stdOr(UsualUncertainty.WEB);
    }

    double rate(Method method) {
        return method == Method.THICKNESS_TIME ? estimate.thicknessTime() : estimate.massBalance();
    }

    /** By how much the two definitions disagree at one pressure, relative [1]. */
    double definitions() {
        double exponent = LocalExponent.of(estimate.balance(), estimate.firstEven(), estimate.lastEven());
        double ofMass = pressures(Method.MASS_BALANCE).powerMean(exponent);
        double ofThickness = pressures(Method.THICKNESS_TIME).powerMean(exponent);
        double brought = estimate.thicknessTime() * StrictMath.pow(ofMass / ofThickness, exponent);
        return Math.abs(brought / estimate.massBalance() - 1);
    }

    PressureDistribution pressures(Method method) {
        return method == Method.THICKNESS_TIME ? duringWeb : duringEven;
    }

    /**
     * Rise and tail-off fall anywhere between two samples, and their integrals with them: rectangular, at both ends. A stand
     * swings at both ends too, and a swing in a few samples sums to as much again (measured: "Stands that differ from the
     * model" in docs/validation.md).
     *
     * @return standard uncertainty of a stretch of time [s]
     */
    double samplingStd() {
        boolean swings = pressureScale.isPresent() && events.burnTime() < FEW_SAMPLES * interval();
        return interval() / Math.sqrt(swings ? 3 : 6);
    }

    /** {@return mean time from sample to sample [s]} */
    double interval() {
        return inputs.record().step() / inputs.record().samplesPerCell();
    }

    /** Standard uncertainty of a mean pressure [Pa]: the sensor's gain and its zero. */
    double pressureStd(double gauge) {
        return Math.hypot(gaugeStd(gauge), burn.record().zeroStd());
    }

    /** What one reading is off by because of the gauge, or of the thrust's scale [Pa]. */
    private double gaugeStd(double gauge) {
        return pressureScale
                .map(scale -> scale.relativeStd() * gauge)
                .orElseGet(() -> burn.firing()
                        .settings()
                        .pressureUncertainty()
                        .orElse(UsualUncertainty.SENSOR * found.highest()));
    }

    /**
     * The uncertainty of a mean pressure in its parts. All firings have the same gauge, so that its error is shared.
     *
     * @param mean [Pa, absolute]
     */
    PressureError pressureError(double mean) {
        double gauge = mean - burn.firing().ambientPressure();
        double zero = burn.record().zeroStd() / mean;
        return pressureScale
                .map(scale -> new PressureError(
                        Math.hypot(scale.ownStd() * gauge / mean, zero), scale.sharedStd() * gauge / mean, 0))
                .orElseGet(() -> new PressureError(zero, gaugeStd(gauge) / mean, 0));
    }

    private double gaugeIntegral() {
        double sum = 0;
        for (int i = 0; i < inputs.record().size(); i++) {
            sum += inputs.record().pressure(i) - burn.firing().ambientPressure();
        }
        return sum * inputs.record().step();
    }

    /** c* by the mass, or by density times volume where it was not weighed; empty where neither is known. */
    Optional<Measured> characteristicVelocity() {
        Firing row = burn.firing();
        Optional<Double> ofMass = row.propellantMass()
                .map(m -> m.stdOr(UsualUncertainty.MASS * m.value()) / m.value())
                .or(() -> burn.formulation()
                        .density()
                        .map(d -> d.stdOr(UsualUncertainty.DENSITY * d.value()) / d.value()));
        double ofThroat = 2
                * row.throatDiameter().stdOr(UsualUncertainty.THROAT)
                / row.throatDiameter().value();
        double ofPressure = pressureStd(found.highest()) / found.highest();
        double velocity = estimate.balance().characteristicVelocity();
        double ofIgniter = row.igniterGas().isPresent()
                ? row.igniterGas().get().stdOr(0) / inputs.mass()
                : UsualUncertainty.IGNITER;
        List<Double> parts = new ArrayList<>(List.of(ofThroat, ofPressure, ofIgniter));
        return ofMass.map(share -> {
            parts.add(share);
            double sum = parts.stream().mapToDouble(x -> x * x).sum();
            return Measured.of(velocity, velocity * Math.sqrt(sum));
        });
    }
}
