package io.burnlaw.regime;

/**
 * A test of one count of laws against the next.
 *
 * @param fewer      count under the hypothesis
 * @param joinedF    largest F over the positions of a further break, laws joined [1]
 * @param jumpingF   the same, laws jumping [1]; zero where there are too few points for it
 * @param pValue     share of simulated campaigns that look at least as extreme [1]: for one law
 *                   against two joined ones by the likelihood averaged over the places of the break, else by the
 *                   largest F
 * @param replicates campaigns simulated
 */
public record CountTest(int fewer, double joinedF, double jumpingF, double pValue, int replicates) {}
