package io.burnlaw.ratelaw;

/** A curve y = f(x; parameters) with its derivatives: a pure function, without data and without a method of fitting. */
public interface Curve {

    /** The curve. */
    double value(double x, double[] parameters);

    /**
     * The derivatives by the parameters.
     *
     * @return one derivative for each parameter
     */
    double[] gradient(double x, double[] parameters);

    /** The derivative by x, which carries an error of x into y. */
    double slope(double x, double[] parameters);

    /** The straight line y = p0 + p1·x; a power law between logarithms. */
    Curve LINE = new Curve() {
        @Override
        public double value(double x, double[] p) {
            return p[0] + p[1] * x;
        }

        @Override
        public double[] gradient(double x, double[] p) {
            return new double[] {1, x};
        }

        @Override
        public double slope(double x, double[] p) {
            return p[1];
        }
    };

    /** The power law y = exp(p0 + p1·x) over x, the logarithm of a pressure. */
    Curve POWER = new Curve() {
        @Override
        public double value(double x, double[] p) {
            return StrictMath.exp(p[0] + p[1] * x);
        }

        @Override
        public double[] gradient(double x, double[] p) {
            double y = value(x, p);
            return new double[] {y, x * y};
        }

        @Override
        public double slope(double x, double[] p) {
            return p[1] * value(x, p);
        }
    };
}
