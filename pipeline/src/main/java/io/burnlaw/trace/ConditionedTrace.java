package io.burnlaw.trace;

import io.burnlaw.finding.Finding;
import java.util.List;

/**
 * A record with its zero corrected, and the remaining uncertainty. Standard uncertainties are in [Pa], or in [N] where
 * only thrust was recorded.
 *
 * @param trace      zero and drift taken off, spikes replaced, hum subtracted; otherwise unsmoothed
 * @param noiseStd   standard deviation of single samples while the motor works, hum and slow changes left out
 * @param zeroStd    standard uncertainty of the zero while the motor works
 * @param quietUntil end of the quiet part before the first sign of burning [s]; the first sample's time where there is
 *                   no quiet part, the last one's where nothing happens in the whole record
 * @param findings   what was seen and what was done about it
 */
public record ConditionedTrace(
        Trace trace, double noiseStd, double zeroStd, double quietUntil, List<Finding> findings) {

    public ConditionedTrace {
        findings = List.copyOf(findings);
        if (!(noiseStd >= 0) || !(zeroStd >= 0)) {
            throw new IllegalArgumentException(
                    "trace of " + trace.firing() + ": noise " + noiseStd + ", uncertainty of the zero " + zeroStd);
        }
    }
}
