/**
 * Where the law changes. Input: rate-pressure points. Output: one to five power laws, the pressures between them with
 * intervals, the evidence for this number of laws, rival explanations, the threshold of a slow regime, and the pressure
 * needed to burn a given number of times faster. Read {@link io.burnlaw.regime.RegimeSearch} first.
 */
package io.burnlaw.regime;
