package io.burnlaw.comparison;

import io.burnlaw.comparison.Comparison.FTest;

/** Two laws fitted together, the second against the first, in ln r over ln P. */
interface TwoLaws {

    /** {@return degrees of freedom of the scatter} */
    double degrees();

    /** {@return relative standard deviation of a firing about its law [1]} */
    double scatter();

    /** {@return second exponent less the first [1]} */
    double slopeDifference();

    /** {@return its standard uncertainty [1]} */
    double slopeDifferenceStd();

    /** {@return the test of one exponent} */
    FTest parallel();

    /** {@return the test of one law} */
    FTest coincident();

    /**
     * Second less first.
     *
     * @param x natural logarithm of the pressure in Pa
     * @return difference in ln r [1]
     */
    double differenceAt(double x);

    /**
     * Its standard uncertainty.
     *
     * @param x natural logarithm of the pressure in Pa
     * @return [1]
     */
    double differenceStdAt(double x);

    /** {@return standard uncertainty of a shift between two laws of one exponent [1]} */
    double levelStd();
}
