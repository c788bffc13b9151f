package io.burnlaw.ratelaw;

import static io.burnlaw.ratelaw.RateLawFit.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The same points fitted in other ways: how much of the published law is a matter of choice. */
final class OtherFits {

    /** A difference of this many standard uncertainties would not show in the digits that are printed. */
    private static final double SAME = 0.05;

    private OtherFits() {}

    static List<OtherFit> of(WeightedSolution solution, RateLaw law, List<FitPoint> points, FitOptions options) {
        List<OtherFit> others = new ArrayList<>();
        if (options.robust()) {
            huber(solution, law, points, options).ifPresent(others::add);
        }
        for (Weighting weighting : List.of(Weighting.PROPORTIONAL, Weighting.CONSTANT)) {
            if (weighting != options.weighting()) {
                again("weighting-" + name(weighting), law, points, options.with(weighting))
                        .ifPresent(others::add);
            }
        }
        if (points.stream().anyMatch(p -> p.pressureStd() > 0)) {
            for (PressureErrors errors :
                    List.of(PressureErrors.EFFECTIVE_VARIANCE, PressureErrors.ORTHOGONAL_DISTANCE)) {
                if (errors != options.pressureErrors()) {
                    again(name(errors), law, points, options.with(errors)).ifPresent(others::add);
                }
            }
        }
        return others;
    }

    private static Optional<OtherFit> again(String name, RateLaw law, List<FitPoint> points, FitOptions options) {
        if (!(WeightedFit.fit(points, options.weighting(), options.pressureErrors())
                instanceof WeightedSolution solution)) {
            return Optional.empty();
        }
        RateLaw other = Laws.of(solution, points, options.weighting());
        return Optional.of(fit(name, law, other, options.level(), ""));
    }

    private static Optional<OtherFit> huber(
            WeightedSolution s, RateLaw law, List<FitPoint> points, FitOptions options) {
        double[] std = new double[s.x.length];
        for (int i = 0; i < std.length; i++) {
            std[i] = 1 / Math.sqrt(s.weight(i));
        }
        HuberFit.Robust robust = HuberFit.fit(s.curve, s.x, s.y, std, s.parameters);
        if (robust == null) {
            return Optional.empty();
        }
        double[] residuals =
                HuberFit.residuals(s.curve, s.x, s.y, std, robust.parameters().toArray());
        List<String> held = new ArrayList<>();
        for (int i = 0; i < residuals.length; i++) {
            double weight = Math.min(1, HuberFit.BEND * robust.scatter() / Math.abs(residuals[i]));
            if (weight < 0.999) {
                held.add(say("%s (%.2f)", points.get(i).id(), weight));
            }
        }
        double x = StrictMath.log(law.referencePressure()) - s.lnPressureUnit;
        Covariance c = robust.covariance();
        RateLaw other = new RateLaw(
                s.lnRateUnit
                        + robust.parameters().get(0)
                        + x * robust.parameters().get(1),
                robust.parameters().get(1),
                law.referencePressure(),
                c.get(0, 0) + 2 * x * c.get(0, 1) + x * x * c.get(1, 1),
                c.get(0, 1) + x * c.get(1, 1),
                c.get(1, 1),
                law.degreesOfFreedom(),
                law.residualScatter() * robust.scatter(),
                law.pressureLow(),
                law.pressureHigh(),
                law.points(),
                law.weighting(),
                law.commonError());
        return Optional.of(fit(
                "huber",
                law,
                other,
                options.level(),
                held.isEmpty()
                        ? " No point was held back."
                        : " Points that count less than fully: " + String.join(", ", held) + "."));
    }

    private static String said(RateLaw law, RateLaw other, double shift, double percent) {
        double sigmas = Math.abs(shift) / law.exponentStd();
        if (sigmas < SAME && Math.abs(percent) < 100 * SAME * law.lnStd(other.referencePressure())) {
            return say("The exponent is %.3f, and nothing differs from the published law.", other.exponent());
        }
        return say(
                "The exponent is %.3f, %+.3f (%.1f standard uncertainties) from the published one; the rate at %.2g MPa"
                        + " differs by %+.2f %%.",
                other.exponent(), shift, sigmas, other.referencePressure() / RateLaw.COEFFICIENT_PRESSURE, percent);
    }

    private static OtherFit fit(String name, RateLaw law, RateLaw other, double level, String more) {
        double shift = other.exponent() - law.exponent();
        double percent =
                100 * StrictMath.expm1(other.lnRateAtReference() - StrictMath.log(law.rate(other.referencePressure())));
        return new OtherFit(
                name,
                other,
                other.interval(RateLaw.COEFFICIENT_PRESSURE, level),
                other.exponentInterval(level),
                said(law, other, shift, percent) + more);
    }

    private static String name(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
