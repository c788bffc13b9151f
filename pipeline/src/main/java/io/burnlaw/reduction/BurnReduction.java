package io.burnlaw.reduction;

import io.burnlaw.ballistics.Motor;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.campaign.ReductionSettings;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.grain.Grain;
import io.burnlaw.quantity.Measured;
import io.burnlaw.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** The reduction of a burn whose events are known: rates, their uncertainty, and the points of the firing. */
final class BurnReduction {

    /** Half the range of a rectangular distribution over its standard deviation; JCGM 100:2008, 4.3.7. */
    private static final double RECTANGULAR = Math.sqrt(3);

    /** What was measured before the motor was fired. */
    record Firing(
            io.burnlaw.campaign.Firing row,
            Formulation formulation,
            ReductionSettings settings,
            Hardware hardware,
            Grain grain) {}

    private final Firing firing;
    private final Trace trace;
    private final QuietPart quiet;
    private final EventFinder.Found found;
    private final BurnInputs inputs;
    private final RateEstimate estimate;
    private final double spread;
    private final Events events;
    private final List<InstantaneousRate> along;

    private BurnReduction(Firing firing, Trace trace, QuietPart quiet, EvenRecord record, EventFinder.Found found) {
        this.firing = firing;
        this.trace = trace;
        this.quiet = quiet;
        this.found = found;
        this.inputs = inputs(firing, record);
        this.estimate = RateEstimate.of(inputs, found.crossing());
        this.spread = estimate.tail().spread();
        this.events = events();
        this.along = Continuity.along(estimate, firing.row.ambientPressure());
    }

    static BurnReduction of(Firing firing, Trace trace, QuietPart quiet, EvenRecord record, EventFinder.Found found) {
        return new BurnReduction(firing, trace, quiet, record, found);
    }

    private static BurnInputs inputs(Firing firing, EvenRecord record) {
        io.burnlaw.campaign.Firing row = firing.row;
        WebTable grain = new WebTable(firing.grain);
        double volume = grain.volume();
        double density = row.propellantMass()
                .map(mass -> mass.value() / volume)
                .or(() -> firing.formulation.density().map(Measured::value))
                .orElse(UsualUncertainty.NOMINAL_DENSITY);
        double before = area(row.throatDiameter().value());
        double after = row.throatDiameterAfter().map(d -> area(d.value())).orElse(before);
        double stated = row.chamberVolume().map(Measured::value).orElse(0.0);
        return new BurnInputs(
                record,
                grain,
                density,
                before,
                after,
                row.ambientPressure(),
                firing.formulation.specificHeatRatio().orElse(Formulation.USUAL_SPECIFIC_HEAT_RATIO),
                Motor.freeVolume(firing.grain, stated) + volume);
    }

    private static double area(double diameter) {
        return Math.PI / 4 * diameter * diameter;
    }

    private Events events() {
        double ignitionStd = Math.abs(found.crossing() - found.tangent()) / 2 / RECTANGULAR;
        double bisector = found.bisector().orElse(found.curvature());
        double opinions = Math.abs(bisector - found.curvature()) / 2 / RECTANGULAR;
        return new Events(
                found.start(),
                found.crossing(),
                Math.hypot(ignitionStd, inputs.record().step() / RECTANGULAR),
                estimate.burnout(),
                Math.hypot(opinions, inputs.record().step() / RECTANGULAR),
                bisector,
                found.curvature(),
                inputs.record().time(inputs.record().size() - 1),
                found.actionStart(),
                found.actionEnd());
    }

    List<Finding> findings() {
        List<Finding> seen = new ArrayList<>(BurnFindings.of(new BurnRecord(
                firing.row,
                firing.formulation,
                firing.hardware,
                firing.grain,
                trace,
                quiet.noise(),
                events,
                found.dwellStart(),
                found.highest(),
                estimate.balance().characteristicVelocity(),
                firing.row.propellantMass().isPresent(),
                along,
                spread)));
        double web = inputs.grain().web();
        if (spread > TailOff.NOTICEABLE * web) {
            seen.add(Finding.at(
                    FindingCode.UNEVEN_WEB,
                    String.format(
                            Locale.ROOT,
                            "the tail-off is as long as a core %.2g mm off centre in a web of %.3g mm makes it;"
                                    + " the rate is referred to the mean web",
                            1000 * Math.sqrt(2) * spread,
                            1000 * web),
                    events.webBurnout()));
        }
        return seen;
    }

    Reduction.Reduced reduced(List<Finding> findings, Optional<TraceHistory> history) {
        io.burnlaw.campaign.Firing row = firing.row;
        ReductionSettings.Method method = firing.settings.method();
        PressureDistribution pressures = pressures(method);
        List<RatePoint> points = new ArrayList<>();
        RateBudget budget = new BudgetOfFiring(firing, quiet, found, inputs, estimate, events).of(method);
        double mean = pressures(ReductionSettings.Method.THICKNESS_TIME).powerMean(1);
        points.add(new RatePoint(
                row.id(),
                row.id(),
                Optional.of(row.id()),
                row.formulation(),
                RatePoint.Source.FIRING,
                pressures,
                Math.hypot(sensorStd(), quiet.zeroStd()),
                rate(method),
                budget.relativeStd() * rate(method),
                budget.shared() * rate(method),
                row.grainTemperature(),
                method.name().toLowerCase(Locale.ROOT).replace('_', '-'),
                false,
                row.setAside(),
                budget.lines()));
        return new Reduction.Reduced(
                row.id(),
                points,
                events,
                new Measured(
                        inputs.grain().web(),
                        OptionalDouble.of(firing.grain.web().stdOr(UsualUncertainty.WEB))),
                mean,
                found.highest() + row.ambientPressure(),
                gaugeIntegral(),
                estimate.thicknessTime(),
                OptionalDouble.of(estimate.massBalance()),
                characteristicVelocity(),
                row.throatDiameter().value(),
                row.throatDiameterAfter().isPresent()
                        ? OptionalDouble.of(row.throatDiameterAfter().get().value())
                        : OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                along,
                findings,
                history);
    }

    private double rate(ReductionSettings.Method method) {
        return method == ReductionSettings.Method.THICKNESS_TIME ? estimate.thicknessTime() : estimate.massBalance();
    }

    private PressureDistribution pressures(ReductionSettings.Method method) {
        boolean whole = method == ReductionSettings.Method.THICKNESS_TIME;
        return BurnPressures.between(
                inputs.record(),
                whole ? estimate.ignition() : estimate.firstEven(),
                whole ? estimate.burnout() : estimate.lastEven(),
                firing.row.ambientPressure());
    }

    private double sensorStd() {
        return firing.row.settings().pressureUncertainty().orElse(UsualUncertainty.SENSOR * found.highest());
    }

    private double gaugeIntegral() {
        double sum = 0;
        for (int i = 0; i < inputs.record().size(); i++) {
            sum += inputs.record().pressure(i) - firing.row.ambientPressure();
        }
        return sum * inputs.record().step();
    }

    /** c* by the mass, or by density times volume where it was not weighed; empty where neither is known. */
    private Optional<Measured> characteristicVelocity() {
        io.burnlaw.campaign.Firing row = firing.row;
        Optional<Double> massShare = row.propellantMass()
                .map(m -> m.stdOr(UsualUncertainty.MASS * m.value()) / m.value())
                .or(() -> firing.formulation
                        .density()
                        .map(d -> d.stdOr(UsualUncertainty.DENSITY * d.value()) / d.value()));
        double throat = 2
                * row.throatDiameter().stdOr(UsualUncertainty.THROAT)
                / row.throatDiameter().value();
        double gain = sensorStd() / found.highest();
        double velocity = estimate.balance().characteristicVelocity();
        return massShare.map(share -> Measured.of(velocity, velocity * Math.hypot(Math.hypot(share, throat), gain)));
    }
}
