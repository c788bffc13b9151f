package io.burnlaw.batch;

import io.burnlaw.batch.MixedModel.Fit;
import io.burnlaw.batch.MixedModel.Group;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * A {@link MixedModel} at given variances: its criterion, the derivatives by which the search steps, and what is inferred
 * where the search ends. The formulas are those that MixedModel names.
 */
final class ModelAtVariances {
    private final int p;
    private final int q;
    private final double[] theta;
    private final List<Solved> solved = new ArrayList<>();
    private final RealMatrix phi;
    private final RealVector beta;
    private final double squares;
    private final double criterion;
    private final RealMatrix[] slope;

    ModelAtVariances(List<Group> groups, double[] theta) {
        this.theta = theta;
        p = groups.get(0).x().getColumnDimension();
        q = groups.get(0).z().length;
        int count = groups.stream().mapToInt(group -> group.y().length).sum();
        slope = new RealMatrix[q + 1];
        RealMatrix xvx = new Array2DRowRealMatrix(p, p);
        RealVector xvy = new ArrayRealVector(p);
        double ln = 0;
        for (Group group : groups) {
            Solved s = new Solved(group, theta);
            solved.add(s);
            xvx = xvx.add(group.x().transpose().multiply(s.vx));
            xvy = xvy.add(new ArrayRealVector(s.vx.preMultiply(group.y()), false));
            ln += s.lnDeterminant;
        }
        LUDecomposition lu = new LUDecomposition(xvx, 0);
        phi = lu.getSolver().getInverse();
        beta = phi.operate(xvy);
        double sum = 0;
        for (Solved s : solved) {
            double[] residual = new ArrayRealVector(s.group.y(), false)
                    .subtract(s.group.x().operate(beta))
                    .toArray();
            s.py = new ArrayRealVector(s.inverse(residual), false);
            sum += weighted(residual, s.py.toArray(), null);
        }
        squares = sum;
        criterion = ln + StrictMath.log(lu.getDeterminant()) + sum + (count - p) * StrictMath.log(2 * StrictMath.PI);
    }

    /** −Φ Xᵀ V⁻¹ V_a V⁻¹ X Φ is the derivative of the inverse information; here with the sign of ∂Φ/∂θ_a. */
    private RealMatrix slope(int a) {
        if (slope[a] == null) {
            RealMatrix sum = new Array2DRowRealMatrix(p, p);
            for (Solved s : solved) {
                sum = sum.add(s.vx.transpose().multiply(moved(s, a)));
            }
            slope[a] = phi.multiply(sum).multiply(phi);
        }
        return slope[a];
    }

    private RealMatrix moved(Solved s, int a) {
        RealMatrix out = new Array2DRowRealMatrix(s.w.length, p);
        for (int c = 0; c < p; c++) {
            out.setColumn(c, s.derivative(a, s.vx.getColumn(c)));
        }
        return out;
    }

    /** Kenward and Roger's Q_ab. */
    private RealMatrix q(int a, int b) {
        RealMatrix sum = new Array2DRowRealMatrix(p, p);
        for (Solved s : solved) {
            RealMatrix right = moved(s, b);
            for (int c = 0; c < p; c++) {
                right.setColumn(c, s.inverse(right.getColumn(c)));
            }
            sum = sum.add(moved(s, a).transpose().multiply(right));
        }
        return sum;
    }

    /** The fixed effects [p]. */
    RealVector beta() {
        return beta;
    }

    /** The weighted sum of squares about the fixed effects, y'Py. */
    double squares() {
        return squares;
    }

    /** Minus twice the restricted log likelihood. */
    double criterion() {
        return criterion;
    }

    /** Derivatives of the criterion by theta. */
    double[] score() {
        double[] out = new double[q + 1];
        RealMatrix xvx = new LUDecomposition(phi, 0).getSolver().getInverse();
        for (int a = 0; a <= q; a++) {
            double sum = -slope(a).multiply(xvx).getTrace();
            for (Solved s : solved) {
                double[] py = s.py.toArray();
                sum += s.trace(a) - weighted(py, s.derivative(a, py), null);
            }
            out[a] = sum;
        }
        return out;
    }

    /** Expected information of theta. */
    RealMatrix information() {
        RealMatrix out = new Array2DRowRealMatrix(q + 1, q + 1);
        RealMatrix xvx = new LUDecomposition(phi, 0).getSolver().getInverse();
        for (int a = 0; a <= q; a++) {
            for (int b = a; b <= q; b++) {
                double sum = 0;
                for (Solved s : solved) {
                    sum += s.trace(a, b);
                }
                sum -= 2 * phi.multiply(q(a, b)).getTrace();
                sum += slope(a).multiply(xvx).multiply(slope(b)).multiply(xvx).getTrace();
                out.setEntry(a, b, sum / 2);
                out.setEntry(b, a, sum / 2);
            }
        }
        return out;
    }

    Fit fit(boolean settled) {
        RealMatrix w = new LUDecomposition(information(), 0).getSolver().getInverse();
        RealMatrix inner = new Array2DRowRealMatrix(p, p);
        List<RealMatrix> slopes = new ArrayList<>();
        RealMatrix xvx = new LUDecomposition(phi, 0).getSolver().getInverse();
        for (int a = 0; a <= q; a++) {
            slopes.add(slope(a));
            for (int b = 0; b <= q; b++) {
                RealMatrix minus =
                        xvx.multiply(slope(a)).multiply(xvx).multiply(slope(b)).multiply(xvx);
                inner = inner.add(q(a, b).subtract(minus).scalarMultiply(w.getEntry(a, b)));
            }
        }
        RealMatrix adjusted = phi.add(phi.multiply(inner).multiply(phi).scalarMultiply(2));
        return new Fit(beta, theta, phi, adjusted, w, slopes, criterion, settled);
    }

    /** A group at given variances: V⁻¹ = W − W Z H Zᵀ W with H = G (I + Zᵀ W Z G)⁻¹. */
    private static final class Solved {
        private final int q;
        private final Group group;
        private final double[] w;
        private final RealMatrix h;
        private final double lnDeterminant;
        private final RealMatrix vx;
        private RealVector py;

        Solved(Group group, double[] theta) {
            this.group = group;
            q = group.z().length;
            int p = group.x().getColumnDimension();
            int n = group.y().length;
            w = new double[n];
            double ln = 0;
            for (int i = 0; i < n; i++) {
                double variance = theta[0] * group.k()[i] + group.v()[i];
                w[i] = 1 / variance;
                ln += StrictMath.log(variance);
            }
            RealMatrix inner = MatrixUtils.createRealIdentityMatrix(q);
            RealMatrix g = new Array2DRowRealMatrix(q, q);
            for (int b = 0; b < q; b++) {
                g.setEntry(b, b, theta[b + 1]);
                for (int a = 0; a < q; a++) {
                    inner.addToEntry(a, b, weighted(group.z()[a], group.z()[b], w) * theta[b + 1]);
                }
            }
            LUDecomposition lu = new LUDecomposition(inner, 0);
            h = g.multiply(lu.getSolver().getInverse());
            lnDeterminant = ln + StrictMath.log(lu.getDeterminant());
            vx = new Array2DRowRealMatrix(n, p);
            for (int c = 0; c < p; c++) {
                vx.setColumn(c, inverse(group.x().getColumn(c)));
            }
        }

        double[] inverse(double[] u) {
            double[] out = new double[u.length];
            double[] zwu = new double[q];
            for (int a = 0; a < q; a++) {
                zwu[a] = weighted(group.z()[a], u, w);
            }
            double[] back = h.operate(zwu);
            for (int i = 0; i < u.length; i++) {
                double sum = u[i];
                for (int a = 0; a < q; a++) {
                    sum -= group.z()[a][i] * back[a];
                }
                out[i] = w[i] * sum;
            }
            return out;
        }

        /** ∂V/∂θ_a times u. */
        double[] derivative(int a, double[] u) {
            double[] out = new double[u.length];
            double along = a == 0 ? 0 : weighted(group.z()[a - 1], u, null);
            for (int i = 0; i < u.length; i++) {
                out[i] = a == 0 ? group.k()[i] * u[i] : group.z()[a - 1][i] * along;
            }
            return out;
        }

        /** tr( V⁻¹ V_a V⁻¹ V_b ), a ≤ b. */
        double trace(int a, int b) {
            if (b > 0) {
                double[] vb = inverse(group.z()[b - 1]);
                if (a > 0) {
                    double both = weighted(group.z()[a - 1], vb, null);
                    return both * both;
                }
                return weighted(vb, vb, group.k());
            }
            double sum = 0;
            RealMatrix t = new Array2DRowRealMatrix(Math.max(q, 1), Math.max(q, 1));
            for (int i = 0; i < w.length; i++) {
                double kw = group.k()[i] * w[i];
                double zhz = 0;
                for (int c = 0; c < q; c++) {
                    for (int d = 0; d < q; d++) {
                        zhz += group.z()[c][i] * h.getEntry(c, d) * group.z()[d][i];
                        t.addToEntry(c, d, group.z()[c][i] * group.z()[d][i] * kw * w[i]);
                    }
                }
                sum += kw * kw * (1 - 2 * w[i] * zhz);
            }
            RealMatrix ht = h.multiply(t);
            return sum + ht.multiply(ht).getTrace();
        }

        /** tr( V⁻¹ V_a ). */
        double trace(int a) {
            if (a > 0) {
                return weighted(group.z()[a - 1], inverse(group.z()[a - 1]), null);
            }
            double sum = 0;
            for (int i = 0; i < w.length; i++) {
                double zhz = 0;
                for (int c = 0; c < q; c++) {
                    for (int d = 0; d < q; d++) {
                        zhz += group.z()[c][i] * h.getEntry(c, d) * group.z()[d][i];
                    }
                }
                sum += group.k()[i] * w[i] * (1 - w[i] * zhz);
            }
            return sum;
        }
    }

    private static double weighted(double[] a, double[] b, double[] w) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i] * (w == null ? 1 : w[i]);
        }
        return sum;
    }
}
