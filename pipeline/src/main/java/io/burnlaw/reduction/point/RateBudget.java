package io.burnlaw.reduction.point;

import java.util.ArrayList;
import java.util.List;

/**
 * Adds the contributions to the uncertainty of a value.
 *
 * <pre>
 *     u(r)/r = sqrt( sum of (c_i u_i / r)^2 )         c_i by trying r at x_i + u_i where there is no formula
 * </pre>
 *
 * <p><b>Source.</b> JCGM 100:2008, equation 10; sensitivities by trial: the same, 5.1.3, note 2. Sources are taken as
 * independent.
 */
public final class RateBudget {

    private record Entry(String source, double std, String unit, double contribution, double shared) {}

    private final List<Entry> entries = new ArrayList<>();

    /**
     * Adds a source.
     *
     * @param unit         UCUM code of the std
     * @param contribution what it adds to the relative standard uncertainty [1]; the sign does not matter
     * @param shared       the part of the contribution that repeated firings share [1]
     */
    public RateBudget add(String source, double std, String unit, double contribution, double shared) {
        entries.add(new Entry(source, std, unit, Math.abs(contribution), Math.abs(shared)));
        return this;
    }

    /** {@return relative standard uncertainty [1]} */
    public double relativeStd() {
        double sum = 0;
        for (Entry entry : entries) {
            sum += entry.contribution * entry.contribution;
        }
        return Math.sqrt(sum);
    }

    /** {@return the part of it that repeated firings share [1]} */
    public double shared() {
        double sum = 0;
        for (Entry entry : entries) {
            sum += entry.shared * entry.shared;
        }
        return Math.sqrt(sum);
    }

    /** {@return the lines, largest first} */
    public List<BudgetLine> lines() {
        double whole = relativeStd();
        double variance = whole * whole;
        return entries.stream()
                .sorted((a, b) -> Double.compare(b.contribution, a.contribution))
                .map(e -> new BudgetLine(
                        e.source,
                        e.std,
                        e.unit,
                        e.contribution,
                        variance > 0 ? e.contribution * e.contribution / variance : 0))
                .toList();
    }
}
