/**
 * Where the law changes. In go rate-pressure points; out come one to five power laws side by side, the pressures
 * between them with intervals, the evidence for that many, the rival explanations, the threshold of a slow regime, and
 * what it takes to burn so many times faster. Read {@link io.burnlaw.regime.RegimeSearch} first.
 */
package io.burnlaw.regime;
