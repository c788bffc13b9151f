package io.burnlaw.regime;

import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.regime.Evidence.Rival;
import io.burnlaw.regime.SequentialMonteCarlo.Ranks;
import io.burnlaw.regime.SequentialMonteCarlo.SimulatedP;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;

/**
 * Compares other explanations with the breaks: a quadratic in ln P, the two-term law of composite propellants
 * (Summerfield and others 1960), and one law seen by a sensor with a zero offset.
 *
 * <p>A rival is beaten when campaigns simulated from it rarely favour the breaks as much as the data do: a parametric
 * bootstrap of the likelihood ratio of models that do not contain each other (Cox 1961, Williams 1970).
 */
record Rivals(Sample sample, double effectivePoints) {

    /** A rival and the curve that it is. */
    record Fitted(Rival rival, RivalCurves.Fit fit) {}

    /** One campaign's sum of squares with breaks. */
    interface Search {
        double rss(double[] y);
    }

    /** The rivals of one law, for the record: no break is in question. */
    List<Fitted> ofSingleLaw(double[] y) {
        List<Fitted> rivals = new ArrayList<>();
        for (Rival.Kind kind : kinds()) {
            RivalCurves curves = new RivalCurves(sample, kind);
            RivalCurves.Fit fit = curves.fit(y);
            rivals.add(described(kind, curves, fit, OptionalDouble.empty(), false, "There is no break to explain."));
        }
        return rivals;
    }

    /**
     * The rivals of breaks.
     *
     * @param breaks     the same search on the data and on simulated campaigns
     * @param noise      of the points about the laws with breaks
     * @param replicates campaigns to simulate from each rival
     * @param level      at one less which a rival is rejected [1]
     * @param random     the stream for this
     */
    List<Fitted> against(
            double[] y, Search breaks, NoiseModel noise, int replicates, double level, RandomGenerator random) {
        List<Fitted> rivals = new ArrayList<>();
        double with = breaks.rss(y);
        for (Rival.Kind kind : kinds()) {
            RivalCurves curves = new RivalCurves(sample, kind);
            RivalCurves.Fit fit = curves.fit(y);
            double[] gain = new double[replicates + 1];
            gain[0] = Math.log(curves.rss(y) / with);
            SimulatedP p = SequentialMonteCarlo.run(
                    replicates,
                    1 - level,
                    b -> {
                        double[] values = fit.fitted().clone();
                        noise.addTo(values, random);
                        gain[b] = Math.log(curves.rss(values) / breaks.rss(values));
                    },
                    b -> Ranks.upperTail(Arrays.copyOf(gain, b + 1))[0]);
            boolean beaten = p.rejectsAt(1 - level);
            String verdict = (beaten ? "The breaks explain more (" : "It explains the points about as well as breaks (")
                    + p.words() + ").";
            rivals.add(described(kind, curves, fit, OptionalDouble.of(p.value()), beaten, verdict));
        }
        return rivals;
    }

    private List<Rival.Kind> kinds() {
        return sample.steps().length < 3 ? List.of() : List.of(Rival.Kind.values());
    }

    private Fitted described(
            Rival.Kind kind,
            RivalCurves curves,
            RivalCurves.Fit fit,
            OptionalDouble p,
            boolean beaten,
            String verdict) {
        double[] ends = curves.endSlopes(fit.fitted());
        double parameter = switch (kind) {
            case QUADRATIC -> fit.curvature();
            case TWO_TERM -> StrictMath.exp(1.5 * fit.parameter());
            case ZERO_OFFSET -> fit.parameter();
        };
        String what = switch (kind) {
            case QUADRATIC, TWO_TERM ->
                (kind == Rival.Kind.QUADRATIC ? "A quadratic in ln P" : "The two-term law 1/r = A/P + B/P^(1/3)")
                        + " bends from an exponent of " + NumberFormat.significant(ends[0], 2)
                        + " at the lowest pressure to "
                        + NumberFormat.significant(ends[1], 2) + " at the highest. ";
            case ZERO_OFFSET ->
                "One law, measured by a sensor that reads "
                        + Words.pressure(Math.abs(parameter)) + (parameter >= 0 ? " too high" : " too low")
                        + " at every pressure, would bend the low end in the same way. ";
        };
        double bic = effectivePoints * Math.log(Math.max(fit.rss(), Double.MIN_NORMAL) / sample.size())
                + fit.free() * Math.log(effectivePoints);
        return new Fitted(new Rival(kind, fit.rss(), bic, parameter, p, beaten, what + verdict), fit);
    }
}
