package io.burnlaw.reduction;

import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.Plausible;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.point.PressureError;
import io.burnlaw.reduction.point.UsualUncertainty;
import io.burnlaw.trace.ConditionedTrace;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Chamber pressure of a firing whose thrust alone was recorded.
 *
 * <pre>
 *     F = eta · C_F(P) · P · A_t                       solved for P at every sample            [N]
 *     eta such that   integral of P · A_t dt = c* · m_p   where c* is stated and m_p was weighed
 * </pre>
 * with C_F the ideal coefficient of the nozzle by its expansion ratio, unchoked and separated flow in it. Where the
 * impulse cannot be closed, a usual efficiency is used. A wrong efficiency stretches the pressure axis; rates from
 * web and time, or from shares of the pressure integral, keep their value.
 *
 * <p><b>Valid</b> for a load cell that is stiff against the burn. <b>Source.</b> Sutton and Biblarz (2001), chapter 3;
 * closure on the impulse: derived; docs/methods.md, Thrust only.
 *
 * @param record       with the pressure derived; noise and zero in [Pa]
 * @param efficiency   eta [1]
 * @param scale        how sure the scale of the pressure is
 * @param closed       whether eta was closed on the impulse
 * @param findings     that the pressure was derived, and what is odd about it
 */
public record PressureFromThrust(
        ConditionedTrace record, double efficiency, PressureError scale, boolean closed, List<Finding> findings) {

    /** Of nozzles of small motors whose gas carries condensed matter [1]: common practice, no source. */
    static final double USUAL_EFFICIENCY = 0.92;

    static final double USUAL_EFFICIENCY_STD = 0.04;

    /** Of a stated c* without an uncertainty, theory against delivered [1]: common practice, no source. */
    private static final double USUAL_CSTAR_STD = 0.05;

    /** What the ideal coefficient's shape over pressure may be wrong by [1]: common practice, no source. */
    private static final double SHAPE_STD = 0.01;

    /** Exit area over throat area where no exit diameter is stated, and its bounds [1]: common practice, no source. */
    private static final double USUAL_EXPANSION = 5;

    private static final double LEAST_EXPANSION = 3;
    private static final double MOST_EXPANSION = 8;

    /** By which the coefficient of a nozzle between those differs from that of the usual one, at most [1]: ideal C_F. */
    private static final double UNKNOWN_EXIT = 1.2;

    /** The same without a stated exit diameter [1]: common practice, no source. */
    private static final double UNKNOWN_SHAPE_STD = 0.02;

    private static final double USUAL_THROAT_STD = 0.03e-3;

    public PressureFromThrust {
        findings = List.copyOf(findings);
    }

    /**
     * Works out the pressure.
     *
     * @param conditioned the record, with thrust; a pressure in it is ignored
     * @param firing      throat, exit, mass and ambient pressure are taken from it
     * @param formulation heat ratio and stated c* are taken from it
     * @return the record with a pressure; never fails on data
     */
    public static PressureFromThrust derive(ConditionedTrace conditioned, Firing firing, Formulation formulation) {
        double ratio = formulation.specificHeatRatio().orElse(Formulation.USUAL_SPECIFIC_HEAT_RATIO);
        double cstar = formulation.characteristicVelocity().map(Measured::value).orElse(900.0);
        Gas gas = new Gas(cstar, ratio);
        double before = firing.throatDiameter().value();
        double after = firing.throatDiameterAfter().map(Measured::value).orElse(before);
        OptionalDouble exit = firing.exitDiameter().stream()
                .mapToDouble(Measured::value)
                .filter(diameter -> diameter >= before)
                .findFirst();
        Nozzle nozzle = exit.isPresent() ? new Nozzle(before, after, exit) : expanding(before, after, USUAL_EXPANSION);
        ThrustInversion inversion = inversion(conditioned, nozzle, gas, firing);
        // A nozzle that was not measured is closed on the usual c*: its error is one for all firings, while an exit
        // that
        // stays as it is under other throats would tilt the pressures of a series.
        Optional<Measured> velocity = formulation
                .characteristicVelocity()
                .or(() -> exit.isPresent() ? Optional.empty() : Optional.of(UsualUncertainty.VELOCITY));
        boolean closable = velocity.isPresent() && firing.propellantMass().isPresent();
        double closing = closable
                ? inversion.efficiency(
                        velocity.get().value() * firing.propellantMass().get().value())
                : USUAL_EFFICIENCY;
        double slack = exit.isPresent() ? 1 : UNKNOWN_EXIT;
        boolean closed = closable
                && closing >= Plausible.NOZZLE_EFFICIENCY.low() / slack
                && closing <= Plausible.NOZZLE_EFFICIENCY.high() * slack;
        double efficiency = closed ? closing : USUAL_EFFICIENCY;
        double throatStd = firing.throatDiameter().stdOr(USUAL_THROAT_STD) / before;
        // Bounds are taken as rectangular, JCGM 100:2008, 4.3.7. A closed scale cancels what is the same at all
        // pressures.
        double expansion = exit.isPresent() || closed
                ? 0
                : Math.abs(StrictMath.log(inversion(conditioned, expanding(before, after, LEAST_EXPANSION), gas, firing)
                                        .highest(efficiency)
                                / inversion(conditioned, expanding(before, after, MOST_EXPANSION), gas, firing)
                                        .highest(efficiency)))
                        / 2
                        / Math.sqrt(3);
        double shape = exit.isPresent() ? SHAPE_STD : UNKNOWN_SHAPE_STD;
        PressureError scale = closed
                ? new PressureError(
                        Math.hypot(massStd(firing), 2 * throatStd), Math.hypot(relative(velocity.get()), shape), 0)
                : new PressureError(
                        2 * throatStd,
                        Math.sqrt(square(USUAL_EFFICIENCY_STD / USUAL_EFFICIENCY) + square(shape) + square(expansion)),
                        0);
        double relative = scale.relativeStd();
        List<Finding> findings = new ArrayList<>();
        findings.add(derived(
                inversion,
                efficiency,
                closed,
                relative,
                exit.isPresent(),
                formulation.characteristicVelocity().isPresent(),
                nozzle));
        exitUnknown(firing).ifPresent(findings::add);
        if (closable && !closed) {
            findings.add(notClosing(closing));
        }
        double[] pressure = inversion.pressures(efficiency);
        double perThrust = inversion.pressurePerThrust(efficiency);
        return new PressureFromThrust(
                new ConditionedTrace(
                        conditioned.trace().withPressure(pressure),
                        conditioned.noiseStd() * perThrust,
                        conditioned.zeroStd() * perThrust,
                        conditioned.quietUntil(),
                        conditioned.findings()),
                efficiency,
                scale,
                closed,
                findings);
    }

    private static Nozzle expanding(double before, double after, double ratio) {
        return new Nozzle(before, after, OptionalDouble.of(before * Math.sqrt(ratio)));
    }

    private static ThrustInversion inversion(ConditionedTrace conditioned, Nozzle nozzle, Gas gas, Firing firing) {
        return new ThrustInversion(
                conditioned.trace(), nozzle, nozzle.thrustCoefficient(gas), firing.ambientPressure());
    }

    /** P follows c* m / A_t when the impulse is closed; the mass is each firing's own, c* is not. */
    private static double massStd(Firing firing) {
        Measured mass = firing.propellantMass().orElseThrow();
        return mass.stdOr(0.01 * mass.value()) / mass.value();
    }

    private static double relative(Measured velocity) {
        return velocity.stdOr(USUAL_CSTAR_STD * velocity.value()) / velocity.value();
    }

    private static Finding derived(
            ThrustInversion inversion,
            double efficiency,
            boolean closed,
            double relative,
            boolean exitKnown,
            boolean stated,
            Nozzle nozzle) {
        return Finding.of(
                FindingCode.THRUST_DERIVED,
                Sentence.of(
                        "Pressure from a total impulse of %.4g N s with the ideal thrust coefficient at an expansion"
                                + " ratio of %.3g%s and an efficiency of %.3f (%s): its scale is uncertain by %.1f %%"
                                + " (standard uncertainty).",
                        inversion.impulse(),
                        nozzle.expansionRatio(),
                        exitKnown ? "" : ", a usual one (no exit diameter is stated),",
                        efficiency,
                        closed
                                ? stated ? "closed on mass and the stated c*" : "closed on mass and a usual c*"
                                : "usual value: c* or mass is not known",
                        100 * relative));
    }

    /**
     * What is missing in the log of a firing whose thrust alone was recorded.
     *
     * @return empty where the exit diameter is there
     */
    public static Optional<Finding> exitUnknown(Firing firing) {
        return firing.exitDiameter().isPresent()
                ? Optional.empty()
                : Optional.of(Finding.of(
                        FindingCode.EXIT_UNKNOWN,
                        "Only thrust was recorded, and the log, line " + firing.row() + ", has no exit diameter."));
    }

    private static Finding notClosing(double efficiency) {
        return Finding.of(
                FindingCode.IMPLAUSIBLE_CSTAR,
                String.format(
                        Locale.ROOT,
                        "Impulse, mass and the stated c* would need a nozzle efficiency of %.2f; %.2f to %.2f is"
                                + " possible. Check the unit of the thrust column, the mass, the throat and the exit diameter.",
                        efficiency,
                        Plausible.NOZZLE_EFFICIENCY.low(),
                        Plausible.NOZZLE_EFFICIENCY.high()));
    }

    private static double square(double x) {
        return x * x;
    }
}
