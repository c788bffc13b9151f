package io.burnlaw.report;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Characterization.CampaignSummary;
import io.burnlaw.report.document.Characterization.Generator;
import io.burnlaw.report.document.Characterization.Input;
import io.burnlaw.report.document.Finding;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Firing.BudgetLine;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Formulation.NotEstimated;
import io.burnlaw.report.document.Point;
import java.util.ArrayList;
import java.util.List;

/** The invented document with hostile words wherever words may stand. */
public final class HostileDocument {

    private HostileDocument() {}

    /** {@return the document} */
    public static Characterization document() {
        String evil =
                "</script><script>alert(1)</script><img src=x onerror=alert(1)> \u202Eevil\u202C & \"quoted\" 'single' =1+1";
        Characterization plain = SampleDocument.rich();
        Firing first = plain.firings().get(0);
        Firing bad = new Firing(
                "../../" + evil,
                first.formulation(),
                null,
                "flagged",
                evil,
                evil,
                List.of(new Finding("spikes", "note", evil, evil, evil, null)),
                first.events(),
                first.burnTime(),
                first.actionTime(),
                first.web(),
                first.meanPressure(),
                first.maxPressure(),
                first.rateMeanPressure(),
                first.rate(),
                first.characteristicVelocity(),
                first.throat(),
                null,
                null,
                null,
                List.of(new BudgetLine(evil, 1, evil, 0.01, 1)),
                first.along(),
                first.traceHistory(),
                first.timed(),
                first.motor());
        Formulation f = plain.formulations().get(0);
        List<Point> points = new ArrayList<>(f.points());
        Point p = points.get(0);
        points.set(
                0,
                new Point(
                        "=cmd|' /C calc'!A0",
                        evil,
                        bad.id(),
                        evil,
                        "firing",
                        p.pressure(),
                        p.meanPressure(),
                        p.rate(),
                        null,
                        evil,
                        false,
                        false,
                        evil,
                        null,
                        null));
        Formulation badFormulation = new Formulation(
                "orchard",
                evil,
                true,
                null,
                null,
                null,
                f.density(),
                f.characteristicVelocity(),
                evil,
                evil,
                points,
                f.singleLaw(),
                null,
                null,
                f.otherFits(),
                f.regimes(),
                null,
                f.threshold(),
                f.faster(),
                null,
                f.stability(),
                null,
                f.closure(),
                f.validRange(),
                List.of(new NotEstimated(evil, evil, evil)),
                f.findings(),
                f.without());
        CampaignSummary c = plain.campaign();
        return new Characterization(
                plain.format(),
                new Generator("burnlaw", evil),
                evil,
                new CampaignSummary(
                        evil,
                        evil,
                        evil,
                        evil,
                        c.ambientPressure(),
                        true,
                        null,
                        null,
                        null,
                        evil,
                        evil,
                        0.95,
                        1,
                        List.of(evil)),
                List.of(new Input(evil, evil, 1)),
                List.of(badFormulation),
                List.of(bad),
                List.of(),
                List.of(),
                List.of(),
                List.of(evil),
                null);
    }
}
