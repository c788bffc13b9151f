package io.burnlaw.ratelaw;

/** Fitted parameters of a curve, immutable. */
public final class Parameters {

    private final double[] values;

    Parameters(double[] values) {
        this.values = values.clone();
    }

    /**
     * One of them.
     *
     * @param index from 0
     * @return its value, in the unit of the parameter
     */
    public double get(int index) {
        return values[index];
    }

    /** {@return how many there are} */
    public int count() {
        return values.length;
    }

    double[] toArray() {
        return values.clone();
    }
}
