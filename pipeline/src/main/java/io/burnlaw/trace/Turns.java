package io.burnlaw.trace;

/**
 * Cosine and sine of many angles at once, to 1e-15 of the circle's radius, the same on every machine. {@link StrictMath}
 * takes ten times as long, and a record asks for a million of them.
 */
final class Turns {

    /** Adding and taking it off rounds to the nearest integer, for magnitudes below 2^51. */
    private static final double ROUNDER = 0x1.8p52;

    private Turns() {}

    /**
     * Fills two arrays.
     *
     * @param turns  angles as parts of the full circle, magnitudes below 2^51 [1]
     * @param cosine as long as turns
     * @param sine   as long as turns
     */
    static void cosineAndSine(double[] turns, double[] cosine, double[] sine) {
        for (int i = 0; i < turns.length; i++) {
            double part = turns[i] - ((turns[i] + ROUNDER) - ROUNDER);
            // A quarter of the angle lies within an eighth of the circle, where 8 terms are exact to the last bit.
            double x = 0.5 * Math.PI * part;
            double q = x * x;
            double c = 1
                    + q
                            * (-1.0 / 2
                                    + q
                                            * (1.0 / 24
                                                    + q
                                                            * (-1.0 / 720
                                                                    + q
                                                                            * (1.0 / 40_320
                                                                                    + q
                                                                                            * (-1.0 / 3_628_800
                                                                                                    + q
                                                                                                            * (1.0
                                                                                                                            / 479_001_600
                                                                                                                    + q
                                                                                                                            * (-1.0
                                                                                                                                            / 87_178_291_200.0
                                                                                                                                    + q
                                                                                                                                            / 20_922_789_888_000.0)))))));
            double s = x
                    * (1
                            + q
                                    * (-1.0 / 6
                                            + q
                                                    * (1.0 / 120
                                                            + q
                                                                    * (-1.0 / 5_040
                                                                            + q
                                                                                    * (1.0 / 362_880
                                                                                            + q
                                                                                                    * (-1.0 / 39_916_800
                                                                                                            + q
                                                                                                                    * (1.0
                                                                                                                                    / 6_227_020_800.0
                                                                                                                            - q
                                                                                                                                    / 1_307_674_368_000.0)))))));
            double sTwice = 2 * s * c;
            double cTwice = 1 - 2 * s * s;
            cosine[i] = 1 - 2 * sTwice * sTwice;
            sine[i] = 2 * sTwice * cTwice;
        }
    }
}
