package io.burnlaw.report.chart;

import static io.burnlaw.report.document.Unit.MM_PER_S;
import static io.burnlaw.report.document.Unit.MPA;

import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Point;
import java.util.List;
import java.util.Optional;

/**
 * How far a point is from the law at its pressure: that of its regime where there are several.
 *
 * @param share   rate over the law's rate, less one [1]
 * @param scatter relative standard deviation of the points about that law [1]
 */
public record OffLaw(double share, double scatter) {

    /** More than this many times the scatter away, a point is rare enough to be named. */
    static final double NAMED = 2;

    /**
     * For one point.
     *
     * @param formulation whose law or laws
     * @return empty where the point is not used, or no law holds for it
     */
    public static Optional<OffLaw> of(Point point, Formulation formulation) {
        List<Law> laws = LawChart.laws(formulation);
        int number = laws.size() == 1 ? 1 : point.segment() == null ? 0 : point.segment();
        if (!point.used() || number < 1 || number > laws.size()) {
            return Optional.empty();
        }
        Law law = laws.get(number - 1);
        double rate = MM_PER_S.value(law.coefficient())
                * StrictMath.pow(MPA.value(point.pressure()), law.exponent().value());
        return Optional.of(new OffLaw(MM_PER_S.value(point.rate()) / rate - 1, law.residualScatter()));
    }

    boolean named() {
        return Math.abs(share) > NAMED * scatter;
    }
}
