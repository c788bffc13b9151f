package io.burnlaw.ratelaw;

/**
 * How a point lies about the law.
 *
 * @param id                    of the point
 * @param pressure              [Pa, absolute]
 * @param rate                  measured [m/s]
 * @param fitted                by the law [m/s]
 * @param lnResidual            natural logarithm of measured over fitted [1]
 * @param leverage              how much the point pulls the law towards itself [1], 0 to 1
 * @param studentized           residual over its own standard deviation [1], internally studentized
 * @param externallyStudentized the same with the scatter judged by the other points [1]; where fewer than two degrees
 *                              of freedom are left, the internally studentized one
 * @param pValue                of so large a residual among so many points [1], Bonferroni
 * @param influence             Cook's distance [1]
 */
public record Residual(
        String id,
        double pressure,
        double rate,
        double fitted,
        double lnResidual,
        double leverage,
        double studentized,
        double externallyStudentized,
        double pValue,
        double influence) {}
