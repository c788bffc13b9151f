package io.burnlaw.planning;

import static io.burnlaw.quantity.NumberFormat.megapascal;

import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.PiecewiseLaw;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * The mean pressure at which a firing tells most, and why there.
 *
 * @param pressure [Pa, absolute]; empty where none within the range tells anything
 */
record NextFiring(OptionalDouble pressure, String why) {

    /** Pressures among which it is chosen. */
    private static final int CANDIDATES = 25;

    /** More firings than this are no plan. */
    private static final int MOST_FIRINGS = 200;

    /** A firing must tell by so much more to be taken instead of one at a lower pressure. */
    private static final double WORTH = 0.98;

    static NextFiring of(PlanBasis basis, PlanOptions options, PressureRange range) {
        Optional<NextFiring> forBreak =
                options.goal() == PlanOptions.Goal.EXPONENT ? Optional.empty() : forBreak(basis, range);
        if (options.goal() == PlanOptions.Goal.BREAK) {
            return forBreak.orElse(new NextFiring(
                    OptionalDouble.empty(), "No firing within the allowed pressures can narrow a break"));
        }
        return forBreak.orElseGet(() -> forExponent(basis.law(), range));
    }

    private static NextFiring forExponent(PiecewiseLaw law, PressureRange range) {
        double best = range.low();
        double least = Double.POSITIVE_INFINITY;
        for (double pressure : range.steps(CANDIDATES)) {
            double after =
                    ExponentInformation.of(law.at(pressure)).with(pressure).exponentStd();
            if (after < WORTH * least) {
                least = after;
                best = pressure;
            }
        }
        double now = ExponentInformation.of(law.at(best)).exponentStd();
        return new NextFiring(
                OptionalDouble.of(best),
                "It narrows the exponent most: its standard uncertainty falls from %s to %s"
                        .formatted(NumberFormat.significant(now, 2), NumberFormat.significant(least, 2)));
    }

    private static Optional<NextFiring> forBreak(PlanBasis basis, PressureRange range) {
        for (int i = 0; i < basis.law().breaks().size(); i++) {
            BreakInformation information = new BreakInformation(basis.law(), basis.points(), i);
            Optional<Double> wanted = information.jumps() ? information.middleOfGap() : sharpest(information, range);
            if (wanted.filter(range::holds).isPresent()) {
                return Optional.of(new NextFiring(
                        OptionalDouble.of(wanted.get()),
                        "It narrows the break at %s MPa most".formatted(megapascal(information.pressure()))));
            }
        }
        return Optional.empty();
    }

    private static Optional<Double> sharpest(BreakInformation information, PressureRange range) {
        Optional<Double> now = information.lnStd();
        if (now.isEmpty()) {
            return Optional.empty();
        }
        double least = now.get();
        Optional<Double> best = Optional.empty();
        for (double pressure : range.steps(CANDIDATES)) {
            double after = information.lnStdWith(pressure).orElse(Double.POSITIVE_INFINITY);
            if (after < WORTH * least) {
                least = after;
                best = Optional.of(pressure);
            }
        }
        return best;
    }

    /**
     * How many more firings, each where it tells most, until the exponent in the middle of the range is known as well as
     * wanted; empty where even many would not reach it.
     */
    static OptionalInt toExponent(PlanBasis basis, PlanOptions options, PressureRange range) {
        PiecewiseLaw law = basis.law();
        int piece = law.indexAt(range.middle());
        double from =
                piece == 0 ? range.low() : Math.max(range.low(), law.breaks().get(piece - 1));
        double to = piece == law.breaks().size()
                ? range.high()
                : Math.min(range.high(), law.breaks().get(piece));
        ExponentInformation information = ExponentInformation.of(law.laws().get(piece));
        for (int count = 0; count <= MOST_FIRINGS; count++) {
            if (information.halfWidth(0.95) <= options.exponentHalfWidth()) {
                return OptionalInt.of(count);
            }
            ExponentInformation atLow = information.with(from);
            ExponentInformation atHigh = information.with(to);
            information = atLow.exponentStd() <= atHigh.exponentStd() ? atLow : atHigh;
        }
        return OptionalInt.empty();
    }

    /**
     * What a further firing would tell of the pressure at which two laws meet. About the break, with u = ln(P /
     * P_break),
     *
     * <pre>
     *     ln r = L + n1 · min(u, 0) + n2 · max(u, 0)
     *     gradient over (L, n1, n2, ln P_break) = ( 1, min(u, 0), max(u, 0), -n1 below, -n2 above )
     * </pre>
     *
     * <p>Where the rate jumps instead, nothing but a firing in the gap between the neighbouring points tells more, and
     * its geometric middle halves the gap.
     */
    private record BreakInformation(PiecewiseLaw law, List<FitPoint> points, int index) {

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
}
