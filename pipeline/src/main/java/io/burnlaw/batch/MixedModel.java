package io.burnlaw.batch;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
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
    private final int q;

    private MixedModel(List<Group> groups) {
        this.groups = groups;
        q = groups.get(0).z().length;
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
        return new MixedModel(groups).at(theta).beta();
    }

    /** The weighted sum of squares about the fixed effects at given variances, y'Py. */
    static double sumOfSquares(List<Group> groups, double[] theta) {
        return new MixedModel(groups).at(theta).squares();
    }

    private Fit solve(double[] start) {
        double[] theta = start.clone();
        ModelAtVariances now = at(theta);
        boolean settled = false;
        for (int step = 0; step < MOST_STEPS && !settled; step++) {
            RealMatrix information = now.information();
            double[] score = now.score();
            double[] move = scoring(theta, information, score);
            double promise = 0;
            for (int a = 0; a < theta.length; a++) {
                promise -= score[a] * move[a];
            }
            ModelAtVariances next = null;
            double[] to = theta;
            double scale = 1;
            for (int halving = 0; halving < 40 && next == null; halving++, scale /= 2) {
                to = new double[theta.length];
                for (int a = 0; a < theta.length; a++) {
                    to[a] = Math.max(a == 0 ? LEAST_WITHIN : 0, theta[a] + scale * move[a]);
                }
                ModelAtVariances tried = at(to);
                if (tried.criterion() <= now.criterion()) {
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

    private ModelAtVariances at(double[] theta) {
        return new ModelAtVariances(groups, theta);
    }
}
