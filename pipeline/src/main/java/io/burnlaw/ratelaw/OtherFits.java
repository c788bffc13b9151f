package io.burnlaw.ratelaw;

import static io.burnlaw.ratelaw.RateLawFit.say;

import io.burnlaw.campaign.Choice;
import io.burnlaw.campaign.PressureErrors;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.FitResult.OtherFit;
import io.burnlaw.ratelaw.LeastSquares.Covariance;
import io.burnlaw.ratelaw.LeastSquares.Parameters;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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
                again("weighting-" + Choice.word(weighting), law, points, options.with(weighting))
                        .ifPresent(others::add);
            }
        }
        if (points.stream().anyMatch(p -> p.pressureStd() > 0)) {
            for (PressureErrors errors :
                    List.of(PressureErrors.EFFECTIVE_VARIANCE, PressureErrors.ORTHOGONAL_DISTANCE)) {
                if (errors != options.pressureErrors()) {
                    again(Choice.word(errors), law, points, options.with(errors))
                            .ifPresent(others::add);
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
                        ? " All points have full weight."
                        : " Points with less than full weight: " + String.join(", ", held) + "."));
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

    /**
     * Huber's robust fit of a curve: residuals beyond {@value #BEND} scatters count with their first power instead of
     * their second. Iteratively reweighted least squares; the scatter is the median of the absolute residuals over
     * 0.6745 (the normal one), taken anew each round.
     *
     * <pre>
     *     weight(u) = min( 1, k/|u| )        u = residual / scatter        k = 1.345
     *     cov = (XᵀX)⁻¹ · [ sum (ψ·s)² / (N - p) ] · (κ/m)²     m = mean ψ',  κ = 1 + p·var(ψ')/(N·m²)
     * </pre>
     *
     * <p><b>Source.</b> Huber (1981), sections 7.6 and 7.8; Venables and Ripley (2002), section 6.5.
     */
    static final class HuberFit {

        /** 95 % efficiency where the scatter is normal. */
        static final double BEND = 1.345;

        /** Median of the absolute value of a standard normal variable. */
        private static final double NORMAL_MAD = 0.6744897501960817;

        private static final int MOST_ROUNDS = 500;

        /**
         * The result.
         *
         * @param scatter    robust, in the unit of the residuals divided by their standard deviations
         * @param settled    whether the rounds ended by agreeing
         */
        record Robust(Parameters parameters, Covariance covariance, double scatter, boolean settled) {}

        private HuberFit() {}

        /** Null where a round finds no minimum, or where half of the points lie on the curve. */
        static Robust fit(Curve curve, double[] x, double[] y, double[] std, double[] start) {
            double[] parameters = start;
            double[] weights = new double[x.length];
            Arrays.fill(weights, 1);
            double scatter = Double.NaN;
            for (int round = 0; round < MOST_ROUNDS; round++) {
                if (!(LeastSquares.minimize(curve, x, y, divided(std, weights), parameters)
                        instanceof LeastSquares.Minimum minimum)) {
                    return null;
                }
                double[] found = minimum.parameters().toArray();
                double[] residuals = residuals(curve, x, y, std, found);
                scatter = medianOfSizes(residuals) / NORMAL_MAD;
                if (!(scatter > 0)) {
                    return null;
                }
                double moved = 0;
                for (int k = 0; k < found.length; k++) {
                    moved = Math.max(moved, Math.abs(found[k] - parameters[k]) / Math.max(1e-300, Math.abs(found[k])));
                }
                for (int i = 0; i < weights.length; i++) {
                    weights[i] = Math.min(1, BEND * scatter / Math.abs(residuals[i]));
                }
                parameters = found;
                if (round > 0 && moved < 1e-12) {
                    return new Robust(
                            new Parameters(parameters),
                            covariance(curve, x, std, parameters, residuals, scatter),
                            scatter,
                            true);
                }
            }
            return new Robust(
                    new Parameters(parameters),
                    covariance(curve, x, std, parameters, residuals(curve, x, y, std, parameters), scatter),
                    scatter,
                    false);
        }

        static double[] residuals(Curve curve, double[] x, double[] y, double[] std, double[] parameters) {
            double[] residuals = new double[x.length];
            for (int i = 0; i < x.length; i++) {
                residuals[i] = (y[i] - curve.value(x[i], parameters)) / std[i];
            }
            return residuals;
        }

        private static Covariance covariance(
                Curve curve, double[] x, double[] std, double[] parameters, double[] residuals, double scatter) {
            int count = x.length;
            int p = parameters.length;
            double inside = 0;
            double square = 0;
            for (double residual : residuals) {
                double size = Math.abs(residual) / scatter;
                inside += size <= BEND ? 1 : 0;
                double kept = Math.min(size, BEND) * scatter;
                square += kept * kept;
            }
            double mean = inside / count;
            double variance = count * mean * (1 - mean) / (count - 1);
            double kappa = 1 + p * variance / (count * mean * mean);
            double factor = square / (count - p) * (kappa / mean) * (kappa / mean);
            return LeastSquares.covariance(curve, x, std, parameters).times(factor);
        }

        private static double[] divided(double[] std, double[] weights) {
            double[] divided = new double[std.length];
            for (int i = 0; i < std.length; i++) {
                divided[i] = std[i] / Math.sqrt(weights[i]);
            }
            return divided;
        }

        private static double medianOfSizes(double[] values) {
            double[] sorted = Arrays.stream(values).map(Math::abs).sorted().toArray();
            int middle = sorted.length / 2;
            return sorted.length % 2 == 1 ? sorted[middle] : 0.5 * (sorted[middle - 1] + sorted[middle]);
        }
    }
}
