package io.burnlaw.reduction;

import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.campaign.Firing;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.grain.Grain;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.events.Events;
import io.burnlaw.reduction.point.PressureDistribution;
import io.burnlaw.reduction.point.PressureError;
import io.burnlaw.reduction.point.RateBudget;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.reduction.point.RatesAlong;
import io.burnlaw.reduction.point.UsualUncertainty;
import io.burnlaw.reduction.screening.BurnTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Reduces a firing that has a burn time and no record: timed by video, by sound or by a stopwatch.
 *
 * <p>The rate is the web over the time. The pressure is the one at which the nozzle passes what the surface gives at that
 * rate, along the burn, with r = a P^m between the pressures of the burn and a such that the web lasts as long as it did:
 *
 * <pre>
 *     S(x) r (rho - P / (Gamma c*)^2) = flow(P),   r = a P^m,   integral of dx / r over the web = t
 * </pre>
 *
 * with the flow of the nozzle choked or not: a motor that smoulders is hardly above the ambient pressure. The
 * exponent m only shapes the pressure along the burn; its uncertainty is one line of the budget.
 *
 * <p>An error of the rate moves the pressure as well, by d ln P / d ln r: about 1 where the flow is choked, nearly 0 close
 * to the ambient pressure. The point carries that number ({@link PressureError}), and the fit uses it.
 *
 * <p><b>Valid</b> where the whole surface burned, steadily. <b>Source.</b> Balance of a quasi-steady motor: Sutton and
 * Biblarz (2001), chapter 11; propagation by trial: JCGM 100:2008, 5.1.3, note 2.
 */
public final class TimedBurn {

    /** How the rate varies with the pressure within one burn, where no law is known yet, and its spread [1]. */
    private static final Measured EXPONENT = Measured.of(0.4, 0.25);

    /** Steps along the web: the mean pressure of a steep grain is then within 1e-4 of that of 1,000 steps. */
    private static final int STEPS = 60;

    /** Where the search for a pressure ends [Pa]: beyond any motor. */
    private static final double HIGHEST = 200e6;

    /** Relative precision of the balance: a hundredth of what the steps leave. */
    private static final double PRECISION = 1e-9;

    private static final int MOST_EVALUATIONS = 200;

    private final Firing firing;
    private final Grain grain;

    private TimedBurn(Firing firing, Grain grain) {
        this.firing = firing;
        this.grain = grain;
    }

    /** All inputs of the balance, in SI, so that the effect of each can be computed. */
    private record Inputs(double time, double density, double velocity, double ratio, double throat, double exponent) {

        Inputs withTime(double other) {
            return new Inputs(other, density, velocity, ratio, throat, exponent);
        }

        Inputs moved(double byDensity, double byVelocity, double byThroat, double byExponent) {
            return new Inputs(
                    time, density + byDensity, velocity + byVelocity, ratio, throat + byThroat, exponent + byExponent);
        }
    }

    /** Result of the balance. */
    private record Balance(PressureDistribution pressures, double highest, double exponent) {
        double pressure() {
            return pressures.powerMean(exponent);
        }
    }

    /**
     * Reduces a firing.
     *
     * @param firing   row of the log, with a burn time and without a record
     * @param density  of the propellant [kg/m3], used where the log gives no mass
     * @param ratio    of specific heats [1]
     * @param velocity c* of the propellant [m/s], measured or stated; empty where it is not known
     * @return one point with a finding that says how it was made, or a rejection
     * @throws IllegalArgumentException if the row has no burn time
     */
    public static Reduction reduce(
            Firing firing, Grain grain, Optional<Measured> density, double ratio, Optional<Measured> velocity) {
        Measured time = firing.burnTime()
                .orElseThrow(() -> new IllegalArgumentException("firing " + firing.id() + " has no burn time"));
        if (firing.pulsed()) {
            return rejected(
                    firing,
                    FindingCode.CHUFFING,
                    Sentence.of(
                            "The log says that it pulsed, so its burn time gives no rate. It pulsed at a ratio of burning"
                                    + " surface to throat area of %.3g; its pressure did not rise by itself there.",
                            grain.surface(0)
                                    / (Math.PI
                                            / 4
                                            * square(firing.throatDiameter().value()))));
        }
        List<Finding> mass = MassReview.impossible(firing, grain);
        if (!mass.isEmpty()) {
            return new Reduction.Rejected(firing.id(), mass, Optional.empty());
        }
        double rate = grain.web().value() / time.value();
        if (!BurnTime.possible(rate)) {
            return rejected(
                    firing,
                    FindingCode.IMPLAUSIBLE_BURN_TIME,
                    Sentence.of(
                            "A web of %.3g mm in %.3g s gives %.3g mm/s; solid propellants burn at %s.",
                            1e3 * grain.web().value(), time.value(), 1e3 * rate, BurnTime.BOUNDS));
        }
        return new TimedBurn(firing, grain).reduced(time, density, ratio, velocity);
    }

    private static Reduction rejected(Firing firing, FindingCode code, String text) {
        return new Reduction.Rejected(
                firing.id(), List.of(Finding.of(code, text).withSeverity(Severity.REJECTION)), Optional.empty());
    }

    private Reduction reduced(
            Measured time, Optional<Measured> statedDensity, double ratio, Optional<Measured> statedVelocity) {
        double timeStd = time.stdOr(UsualUncertainty.timing(time.value()));
        double volume = grain.volume(0);
        Measured density = firing.propellantMass()
                .map(mass ->
                        Measured.of(mass.value() / volume, mass.stdOr(UsualUncertainty.MASS * mass.value()) / volume))
                .or(() -> statedDensity)
                .orElse(Measured.of(UsualUncertainty.NOMINAL_DENSITY, UsualUncertainty.NOMINAL_DENSITY_STD));
        Measured velocity = statedVelocity.orElse(UsualUncertainty.VELOCITY);
        Measured throat = firing.throatDiameter();
        Inputs inputs =
                new Inputs(time.value(), density.value(), velocity.value(), ratio, throat.value(), EXPONENT.value());
        Optional<Balance> found = balance(inputs);
        if (found.isEmpty()) {
            return rejected(
                    firing,
                    FindingCode.UNUSABLE_ROW,
                    Sentence.of(
                            "No pressure up to 200 MPa passes the gas of this grain in %.4g s through a throat of"
                                    + " %.4g mm. Check the units of burn_time and throat_diameter.",
                            time.value(), 1e3 * throat.value()));
        }
        Balance balance = found.get();
        double web = grain.web().value();
        double rate = web / time.value();
        double webStd = grain.web().stdOr(UsualUncertainty.WEB);
        RateBudget budget = new RateBudget()
                .add("burn time", timeStd, "s", timeStd / time.value(), 0)
                .add(
                        "first and last flame",
                        UsualUncertainty.FLAME * time.value(),
                        "s",
                        UsualUncertainty.FLAME,
                        UsualUncertainty.FLAME)
                .add("web", webStd, "m", webStd / web, Math.min(webStd, UsualUncertainty.CALIPER) / web);
        // A longer web at the same time is a faster burn of the same surface, as a shorter time is.
        double gain = Math.max(0, -effect(balance, inputs.withTime(inputs.time() * 1.01)) / StrictMath.log(1.01));
        double velocityStd = velocity.stdOr(UsualUncertainty.VELOCITY.stdOr(0));
        double shared = effect(balance, inputs.moved(0, velocityStd, 0, 0));
        double densityStd = density.stdOr(UsualUncertainty.DENSITY * density.value());
        double ofDensity = effect(balance, inputs.moved(densityStd, 0, 0, 0));
        double throatStd = Math.hypot(
                throat.stdOr(UsualUncertainty.THROAT),
                firing.throatDiameterAfter().isPresent() ? 0 : UsualUncertainty.UNMEASURED_THROAT * throat.value());
        double ofThroat = effect(balance, inputs.moved(0, 0, throatStd, 0));
        double ofExponent = effect(balance, inputs.moved(0, 0, 0, EXPONENT.stdOr(0)));
        double own = Math.sqrt(ofDensity * ofDensity + ofThroat * ofThroat + ofExponent * ofExponent);
        RatePoint point = new RatePoint(
                firing.id(),
                firing.id(),
                Optional.of(firing.id()),
                firing.formulation(),
                RatePoint.Source.TIMED,
                balance.pressures(),
                Math.sqrt(own * own + shared * shared + square(gain * budget.relativeStd())) * balance.pressure(),
                rate,
                budget.relativeStd() * rate,
                budget.shared() * rate,
                firing.grainTemperature(),
                "timed",
                true,
                firing.setAside(),
                budget.lines(),
                new PressureError(own, Math.abs(shared), gain));
        return new Reduction.Reduced(
                firing.id(),
                List.of(point),
                Events.timed(time.value(), timeStd),
                Measured.of(web, webStd),
                balance.pressures().powerMean(1),
                balance.highest(),
                (balance.pressures().powerMean(1) - firing.ambientPressure()) * time.value(),
                rate,
                OptionalDouble.empty(),
                Optional.empty(),
                throat.value(),
                firing.throatDiameterAfter().stream()
                        .mapToDouble(Measured::value)
                        .findFirst(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                RatesAlong.of(List.of()),
                Optional.empty(),
                List.of(finding(balance, velocity, statedVelocity.isPresent())),
                Optional.empty());
    }

    private Finding finding(Balance balance, Measured velocity, boolean known) {
        return Finding.of(
                FindingCode.TIMED_ONLY,
                Sentence.of(
                        "No record: the mean pressure, %.3g MPa, follows from the burn time with a c* of %.3g m/s%s.",
                        balance.pressures().powerMean(1) / 1e6,
                        velocity.value(),
                        known ? "" : " ± %.2g m/s (usual for sugar propellants)".formatted(velocity.stdOr(0))));
    }

    private static double square(double x) {
        return x * x;
    }

    /** Change of ln P when an input is another; 0 where the other has no balance. */
    private double effect(Balance base, Inputs other) {
        return balance(other)
                .map(found -> StrictMath.log(found.pressures().powerMean(base.exponent()) / base.pressure()))
                .orElse(0.0);
    }

    /** The burn whose web lasts as long as it did; empty where no pressure does. */
    private Optional<Balance> balance(Inputs in) {
        double step = grain.burnout() / STEPS;
        double[] pressures = new double[STEPS];
        double[] durations = new double[STEPS];
        UnivariateFunction tooLong = lnRate -> {
            double total = 0;
            for (int i = 0; i < STEPS; i++) {
                pressures[i] = pressure((i + 0.5) * step, lnRate, in);
                durations[i] = step / rate(lnRate, pressures[i], in);
                total += durations[i];
            }
            return StrictMath.log(total / in.time());
        };
        // ln of the rate at the ambient pressure: between a creep and more than any propellant
        double middle = StrictMath.log(grain.web().value() / in.time());
        double low = middle - 8;
        double high = middle + 1;
        if (!(tooLong.value(low) > 0 && tooLong.value(high) < 0)) {
            return Optional.empty();
        }
        tooLong.value(root(tooLong, low, high));
        double highest = 0;
        for (double pressure : pressures) {
            highest = Math.max(highest, pressure);
        }
        return highest < 0.99 * HIGHEST
                ? Optional.of(new Balance(PressureDistribution.of(pressures, durations), highest, in.exponent()))
                : Optional.empty();
    }

    /** A solver keeps state while it runs, and here one runs within another. */
    private static double root(UnivariateFunction function, double low, double high) {
        return new BrentSolver(PRECISION, PRECISION).solve(MOST_EVALUATIONS, function, low, high);
    }

    private double rate(double lnRate, double pressure, Inputs in) {
        return StrictMath.exp(lnRate + in.exponent() * StrictMath.log(pressure / firing.ambientPressure()));
    }

    /** At which the nozzle passes what the surface gives [Pa, absolute]. */
    private double pressure(double burned, double lnRate, Inputs in) {
        Gas gas = new Gas(in.velocity(), in.ratio());
        double surface = grain.surface(burned);
        double area = area(burned, in.throat());
        double ambient = firing.ambientPressure();
        UnivariateFunction surplus = lnPressure -> {
            double pressure = StrictMath.exp(lnPressure);
            return surface * rate(lnRate, pressure, in) * (in.density() - gas.density(pressure))
                    - Nozzle.massFlow(pressure, ambient, area, gas);
        };
        double from = StrictMath.log(ambient);
        double to = StrictMath.log(HIGHEST);
        if (!(surplus.value(from) > 0)) {
            return ambient;
        }
        return surplus.value(to) >= 0 ? HIGHEST : StrictMath.exp(root(surplus, from, to));
    }

    /** The throat goes evenly with the web from what it was to what it is. */
    private double area(double burned, double before) {
        double after = firing.throatDiameterAfter()
                        .map(Measured::value)
                        .orElse(firing.throatDiameter().value())
                + before
                - firing.throatDiameter().value();
        double diameter = before + burned / grain.burnout() * (after - before);
        return Math.PI / 4 * diameter * diameter;
    }
}
