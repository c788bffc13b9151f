package io.burnlaw.characterize;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import io.burnlaw.reduction.Reduction;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.regime.Regime;
import io.burnlaw.regime.RegimeKind;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Tells of every firing that burned wholly in a slow regime, once the laws have shown that there is one. */
final class SlowFirings {

    private SlowFirings() {}

    static List<FiringResult> told(List<FiringResult> firings, List<FormulationResult> formulations) {
        Map<String, Regime> slow = new HashMap<>();
        for (FormulationResult result : formulations) {
            result.regimes().stream()
                    .filter(found -> found.selected() > 1)
                    .flatMap(found -> found.regimes().stream())
                    .filter(regime -> regime.kind() == RegimeKind.SLOW_BURNING)
                    .forEach(regime -> result.points().stream()
                            .map(PointResult::point)
                            .filter(point -> point.source() == RatePoint.Source.FIRING)
                            .filter(point -> regime.ids().contains(point.id()))
                            .forEach(point -> slow.put(point.cluster(), regime)));
        }
        return firings.stream()
                .map(firing -> slow.containsKey(firing.id()) ? told(firing, slow.get(firing.id())) : firing)
                .toList();
    }

    private static FiringResult told(FiringResult firing, Regime regime) {
        if (!(firing.reduction() instanceof Reduction.Reduced reduced)
                || reduced.findings().stream().anyMatch(each -> each.code() == FindingCode.SLOW_BURNING)) {
            return firing;
        }
        String message = "The whole burn, at "
                + NumberFormat.significant(Unit.MEGAPASCAL.fromSi(reduced.meanPressure()), 3)
                + " MPa on average, followed the slow law of this propellant, which holds up to "
                + NumberFormat.significant(Unit.MEGAPASCAL.fromSi(regime.high()), 3) + " MPa.";
        return firing.withReduction(reduced.withFindings(List.of(
                Finding.at(FindingCode.SLOW_BURNING, message, reduced.events().ignition()))));
    }
}
