package io.burnlaw.batch;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * A linear model with independent random effects of groups, fitted by restricted maximum likelihood.
 *
 * <pre>
 *     y_g = X_g β + Z_g b_g + e_g      Var(e_g) = diag( θ₀ k + v )      Var(b_g) = diag( θ₁, θ₂, … )
 * </pre>
 *
 * k and v are known for each observation, θ is estimated, at least zero, by Fisher scoring with the components that zero
 * holds left out of the step. No matrix is larger than a group's observations times a few columns: time and memory grow
 * with the number of observations alone.
 *
 * <p><b>Source.</b> Patterson and Thompson (1971); covariance of β and degrees of freedom: Kenward and Roger (1997),
 * eqs. 5-8 and section 3, where the second derivatives of the covariance are zero.
 */
final class MixedModel {

    private static final int MOST_STEPS = 300;

    /** Of the gain of the criterion that a step promises, minus twice the log likelihood: far below what a digit needs. */
    private static final double SETTLED = 1e-11;

    private static final double LEAST_WITHIN = 1e-30;

    /**
     * Observations of one group.
     *
     * @param x fixed effects, one row an observation, [n][p]
     * @param z random effects, one column each, [q][n]
     * @param y observed, [n]
     * @param k by what θ₀ is multiplied, above zero, [n]
     * @param v known variance, at least zero, [n]
     */
    record Group(RealMatrix x, double[][] z, double[] y, double[] k, double[] v) {}

    /**
     * The fit.
     *
     * @param beta        fixed effects [p]
     * @param theta       variances: within, then of each random effect [1 + q]
     * @param covariance  of beta, as if theta were known, [p][p]
     * @param adjusted    the same after Kenward and Roger
     * @param thetaCovariance of theta, the inverse of its expected information
     * @param slopes      derivatives of covariance by theta
     * @param effects     for each group the predicted random effects [q]
     * @param criterion   minus twice the restricted log likelihood
     * @param settled     whether the search ended by itself
     */
    record Fit(
            RealVector beta,
            double[] theta,
            RealMatrix covariance,
            RealMatrix adjusted,
            RealMatrix thetaCovariance,
            List<RealMatrix> slopes,
            List<double[]> effects,
            double criterion,
            boolean settled) {

        /**
         * Degrees of freedom of the variance of c·β + u, with the variance of u linear in theta (Satterthwaite 1946; for
         * u = 0 and one contrast those of Kenward and Roger).
         *
         * @param contrast c [p]
         * @param extra    derivatives of the variance of u by theta [1 + q]
         * @return [1], above zero
         */
        double freedom(RealVector contrast, double[] extra) {
            double[] gradient = extra.clone();
            double variance = covariance.operate(contrast).dotProduct(contrast);
            for (int a = 0; a < theta.length; a++) {
                gradient[a] += slopes.get(a).operate(contrast).dotProduct(contrast);
                variance += extra[a] * theta[a];
            }
            RealVector g = new ArrayRealVector(gradient, false);
            return 2 * variance * variance / thetaCovariance.operate(g).dotProduct(g);
        }
    }

    private final List<Group> groups;
    private final int p;
    private final int q;
    private final int count;

    private MixedModel(List<Group> groups) {
        this.groups = groups;
        p = groups.get(0).x().getColumnDimension();
        q = groups.get(0).z().length;
        count = groups.stream().mapToInt(g -> g.y().length).sum();
    }

    /**
     * Fits the model.
     *
     * @param groups two or more, with more observations than fixed effects in all
     * @param start  of theta, all above zero [1 + q]
     * @throws org.apache.commons.math3.linear.SingularMatrixException if the fixed effects cannot be told apart
     */
    static Fit fit(List<Group> groups, double[] start) {
        return new MixedModel(groups).solve(start);
    }

    /** The fixed effects at given variances [p]. */
    static RealVector fixedEffects(List<Group> groups, double[] theta) {
        return new MixedModel(groups).at(theta).beta;
    }

    /** The weighted sum of squares about the fixed effects at given variances, y'Py. */
    static double sumOfSquares(List<Group> groups, double[] theta) {
        return new MixedModel(groups).at(theta).squares;
    }

    private Fit solve(double[] start) {
        double[] theta = start.clone();
        At now = at(theta);
        boolean settled = false;
        for (int step = 0; step < MOST_STEPS && !settled; step++) {
            RealMatrix information = now.information();
            double[] score = now.score();
            double[] move = scoring(theta, information, score);
            double promise = 0;
            for (int a = 0; a < theta.length; a++) {
                promise -= score[a] * move[a];
            }
            At next = null;
            double[] to = theta;
            double scale = 1;
            for (int halving = 0; halving < 40 && next == null; halving++, scale /= 2) {
                to = new double[theta.length];
                for (int a = 0; a < theta.length; a++) {
                    to[a] = Math.max(a == 0 ? LEAST_WITHIN : 0, theta[a] + scale * move[a]);
                }
                At tried = at(to);
                if (tried.criterion <= now.criterion) {
                    next = tried;
                }
            }
            settled = promise < SETTLED || next == null;
            if (next != null) {
                theta = to;
                now = next;
            }
        }
        return now.fit(settled);
    }

    /** A step of Fisher scoring; a variance that is zero and would fall stays there, one that would fall below stops at zero. */
    private double[] scoring(double[] theta, RealMatrix information, double[] score) {
        List<Integer> free = new ArrayList<>();
        for (int a = 0; a <= q; a++) {
            if (theta[a] > 0 || score[a] < 0) {
                free.add(a);
            }
        }
        double[] move = new double[q + 1];
        while (!free.isEmpty()) {
            int[] index = free.stream().mapToInt(Integer::intValue).toArray();
            double[] right = new double[index.length];
            for (int a = 0; a < index.length; a++) {
                right[a] = -score[index[a]] / 2;
            }
            double[] step = new LUDecomposition(information.getSubMatrix(index, index), 0)
                    .getSolver()
                    .solve(new ArrayRealVector(right, false))
                    .toArray();
            Arrays.fill(move, 0);
            Integer blocked = null;
            for (int a = 0; a < index.length; a++) {
                move[index[a]] = step[a];
                if (theta[index[a]] == 0 && step[a] < 0) {
                    blocked = index[a];
                }
            }
            if (blocked == null) {
                return move;
            }
            free.remove(blocked);
            Arrays.fill(move, 0);
        }
        return move;
    }

    private At at(double[] theta) {
        return new At(theta);
    }

    /** A group at given variances: V⁻¹ = W − W Z H Zᵀ W with H = G (I + Zᵀ W Z G)⁻¹. */
    private final class Solved {
        private final Group group;
        private final double[] w;
        private final RealMatrix h;
        private final double lnDeterminant;
        private final RealMatrix vx;
        private RealVector py;

        Solved(Group group, double[] theta) {
            this.group = group;
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

    /** All groups at given variances. */
    private final class At {
        private final double[] theta;
        private final List<Solved> solved = new ArrayList<>();
        private final RealMatrix phi;
        private final RealVector beta;
        private final double squares;
        private final double criterion;
        private final RealMatrix[] slope = new RealMatrix[q + 1];

        At(double[] theta) {
            this.theta = theta;
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
            criterion =
                    ln + StrictMath.log(lu.getDeterminant()) + sum + (count - p) * StrictMath.log(2 * StrictMath.PI);
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
                    sum += slope(a).multiply(xvx)
                            .multiply(slope(b))
                            .multiply(xvx)
                            .getTrace();
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
                    RealMatrix minus = xvx.multiply(slope(a))
                            .multiply(xvx)
                            .multiply(slope(b))
                            .multiply(xvx);
                    inner = inner.add(q(a, b).subtract(minus).scalarMultiply(w.getEntry(a, b)));
                }
            }
            RealMatrix adjusted = phi.add(phi.multiply(inner).multiply(phi).scalarMultiply(2));
            List<double[]> effects = new ArrayList<>();
            for (Solved s : solved) {
                double[] b = new double[q];
                for (int a = 0; a < q; a++) {
                    b[a] = theta[a + 1] * weighted(s.group.z()[a], s.py.toArray(), null);
                }
                effects.add(b);
            }
            return new Fit(beta, theta, phi, adjusted, w, slopes, effects, criterion, settled);
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
