package io.burnlaw.ballistics;

/**
 * One step of the embedded Runge-Kutta pair of order 5(4), with its continuous extension.
 *
 * <p>Own code, since the library's integrators stop with an exception at a jump of the right-hand side, which laws with
 * regimes have. <b>Source.</b> Dormand and Prince (1980); continuous extension: Hairer, Norsett and Wanner (1993),
 * section II.6; coefficients from memory, held by a test of order and of the closed forms.
 */
final class DormandPrince {

    /** A right-hand side. */
    interface Derivative {
        /**
         * The derivative of the state.
         *
         * @param time  [s]
         * @param state not to be changed
         * @param slope filled by the method
         */
        void at(double time, double[] state, double[] slope);
    }

    private static final double[] NODE = {0, 1. / 5, 3. / 10, 4. / 5, 8. / 9, 1, 1};
    private static final double[][] STAGE = {
        {},
        {1. / 5},
        {3. / 40, 9. / 40},
        {44. / 45, -56. / 15, 32. / 9},
        {19372. / 6561, -25360. / 2187, 64448. / 6561, -212. / 729},
        {9017. / 3168, -355. / 33, 46732. / 5247, 49. / 176, -5103. / 18656},
        {35. / 384, 0, 500. / 1113, 125. / 192, -2187. / 6784, 11. / 84}
    };
    private static final double[] ERROR = {
        71. / 57600, 0, -71. / 16695, 71. / 1920, -17253. / 339200, 22. / 525, -1. / 40
    };
    private static final double[] DENSE = {
        -12715105075. / 11282082432.,
        0,
        87487479700. / 32700410799.,
        -10690763975. / 1880347072.,
        701980252875. / 199316789632.,
        -1453857185. / 822651844.,
        69997945. / 29380423.
    };

    private final Derivative derivative;
    private final double[][] slopes;
    private final double[] work;

    /** The state at the end of the last step tried. */
    final double[] next;

    /** Error of each component in the last step tried. */
    final double[] error;

    DormandPrince(Derivative derivative, int size) {
        this.derivative = derivative;
        this.slopes = new double[NODE.length][size];
        this.work = new double[size];
        this.next = new double[size];
        this.error = new double[size];
    }

    /** The slope at the start of the next step; to be called at the start and after the right-hand side changed. */
    void begin(double time, double[] state) {
        derivative.at(time, state, slopes[0]);
    }

    /** Tries a step; the start's slope must be there. */
    void step(double time, double[] state, double length) {
        for (int stage = 1; stage < NODE.length; stage++) {
            double[] into = stage == NODE.length - 1 ? next : work;
            for (int i = 0; i < into.length; i++) {
                double sum = 0;
                for (int j = 0; j < stage; j++) {
                    sum += STAGE[stage][j] * slopes[j][i];
                }
                into[i] = state[i] + length * sum;
            }
            derivative.at(time + NODE[stage] * length, into, slopes[stage]);
        }
        for (int i = 0; i < error.length; i++) {
            double sum = 0;
            for (int j = 0; j < NODE.length; j++) {
                sum += ERROR[j] * slopes[j][i];
            }
            error[i] = length * sum;
        }
    }

    /** Takes the step just tried: its last slope is the first of the next one. */
    void accept() {
        double[] first = slopes[0];
        slopes[0] = slopes[NODE.length - 1];
        slopes[NODE.length - 1] = first;
    }

    /** A component within the step just tried, before it is accepted; share from 0 to 1. */
    double within(int component, double[] state, double length, double share) {
        double difference = next[component] - state[component];
        double third = length * slopes[0][component] - difference;
        double fourth = difference - length * slopes[NODE.length - 1][component] - third;
        double fifth = 0;
        for (int j = 0; j < NODE.length; j++) {
            fifth += DENSE[j] * slopes[j][component];
        }
        double rest = 1 - share;
        return state[component] + share * (difference + rest * (third + share * (fourth + rest * length * fifth)));
    }

    /** A slope at the start of the step. */
    double slope(int component) {
        return slopes[0][component];
    }
}
