package io.burnlaw.planning;

import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.PiecewiseLaw;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * What a further firing would tell of the pressure at which two laws meet. About the break, with u = ln(P / P_break),
 *
 * <pre>
 *     ln r = L + n1 · min(u, 0) + n2 · max(u, 0)
 *     gradient over (L, n1, n2, ln P_break) = ( 1, min(u, 0), max(u, 0), -n1 below, -n2 above )
 * </pre>
 *
 * <p>Where the rate jumps instead, nothing but a firing in the gap between the neighbouring points tells more, and its
 * geometric middle halves the gap.
 */
final class BreakInformation {

    private final PiecewiseLaw law;
    private final List<FitPoint> points;
    private final int index;

    BreakInformation(PiecewiseLaw law, List<FitPoint> points, int index) {
        this.law = law;
        this.points = points;
        this.index = index;
    }

    double pressure() {
        return law.breaks().get(index);
    }

    boolean jumps() {
        return law.jumps(index);
    }

    /** The middle of the gap between the points on both sides of a jump; empty where one side has none. */
    Optional<Double> middleOfGap() {
        double below = points.stream()
                .mapToDouble(FitPoint::pressure)
                .filter(each -> each < pressure())
                .max()
                .orElse(0);
        double above = points.stream()
                .mapToDouble(FitPoint::pressure)
                .filter(each -> each >= pressure())
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        return below > 0 && Double.isFinite(above) ? Optional.of(Math.sqrt(below * above)) : Optional.empty();
    }

    /** Standard uncertainty of ln of the break with one more firing; empty where the points do not determine it. */
    Optional<Double> lnStdWith(double pressure) {
        return std(information().add(share(pressure, 1)));
    }

    /** Standard uncertainty of ln of the break now. */
    Optional<Double> lnStd() {
        return std(information());
    }

    private RealMatrix information() {
        Map<String, Integer> clusters = new HashMap<>();
        points.forEach(each -> clusters.merge(each.cluster(), 1, Integer::sum));
        RealMatrix sum = new Array2DRowRealMatrix(4, 4);
        for (FitPoint each : points) {
            int piece = law.indexAt(each.pressure());
            if (piece == index || piece == index + 1) {
                sum = sum.add(share(each.pressure(), 1.0 / clusters.get(each.cluster())));
            }
        }
        return sum;
    }

    private RealMatrix share(double pressure, double weight) {
        double u = StrictMath.log(pressure / pressure());
        double scatter = Math.max(1e-3, law.at(pressure).scatterAt(pressure));
        RealVector gradient = new ArrayRealVector(new double[] {
            1,
            Math.min(u, 0),
            Math.max(u, 0),
            -law.laws().get(u < 0 ? index : index + 1).exponent()
        });
        return gradient.outerProduct(gradient).scalarMultiply(weight / (scatter * scatter));
    }

    private static Optional<Double> std(RealMatrix information) {
        LUDecomposition decomposition = new LUDecomposition(information);
        if (!decomposition.getSolver().isNonSingular()) {
            return Optional.empty();
        }
        double variance = decomposition.getSolver().getInverse().getEntry(3, 3);
        return variance > 0 && Double.isFinite(variance) ? Optional.of(Math.sqrt(variance)) : Optional.empty();
    }
}
