package io.burnlaw.report;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Characterization.CampaignSummary;
import io.burnlaw.report.document.Characterization.DoseTrend;
import io.burnlaw.report.document.Characterization.Generator;
import io.burnlaw.report.document.Characterization.Input;
import io.burnlaw.report.document.Closure.ClosureRow;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Point;
import io.burnlaw.report.document.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** An invented document that has something in every member: three propellants, firings, a strand, a plan. */
public final class SampleDocument {

    private SampleDocument() {}

    /** {@return the document} */
    public static Characterization rich() {
        List<Firing> firings = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(7);
        List<Point> base = new ArrayList<>();
        List<ClosureRow> rows = new ArrayList<>();
        double[] pressures = {0.62, 0.8, 1.9, 2.3, 2.9, 3.4, 4.2, 5.1};
        for (int i = 0; i < pressures.length; i++) {
            String id = String.format(java.util.Locale.ROOT, "OR-%02d", i + 1);
            double p = pressures[i];
            double r = SampleFirings.rate(p) * (1 + 0.015 * (random.nextDouble() - 0.5) * 2);
            base.add(SampleFirings.point(id, p, r, i < 2 ? 1 : 2, random));
            firings.add(SampleFirings.firing(id, "orchard", p, r, i));
            rows.add(SampleFirings.row(id, p, r, random));
        }
        List<Point> candidate = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            String id = "OA-" + (i + 1);
            double p = 1.7 + 0.8 * i;
            double r = SampleFirings.rate(p) * 1.12 * (1 + 0.02 * (random.nextDouble() - 0.5));
            candidate.add(SampleFirings.point(id, p, r, 1, random));
            firings.add(SampleFirings.firing(id, "orchard-x1", p, r, i + 20));
        }
        firings.add(SampleFirings.rejected());
        firings.add(SampleFirings.strand());
        return new Characterization(
                Characterization.FORMAT,
                new Generator("burnlaw", "0.1.0"),
                null,
                campaign(),
                List.of(
                        new Input("campaign.yaml", "a".repeat(64), 1432),
                        new Input("firings.csv", "0123456789abcdef".repeat(4), 2210),
                        new Input("traces/OR-01.csv", "b".repeat(64), 48211)),
                List.of(
                        SampleFormulations.orchard(base, rows),
                        SampleFormulations.additive(candidate),
                        SampleFormulations.unfitted()),
                firings,
                List.of(SamplePlans.comparison(), SamplePlans.notCompared()),
                List.of(new DoseTrend(
                        "copper oxide",
                        "orchard",
                        List.of("orchard", "orchard-x1"),
                        new Quantity(0.11, null, 0.08, 0.14, 0.95, 0.014),
                        0.0004,
                        "Each per cent of copper oxide raises the rate by 12 % (95 %: 8 % to 15 %).")),
                List.of(SamplePlans.plan()),
                List.of(
                        "These numbers describe the invented firings of this document and replace neither a proof test nor distance and shelter.",
                        "Local law and licensed practice come before anything that is written here."),
                null);
    }

    /** {@return a document in which nothing could be fitted and nothing is known} */
    public static Characterization bare() {
        Characterization rich = rich();
        return new Characterization(
                rich.format(),
                rich.generator(),
                null,
                new CampaignSummary(
                        "Bare",
                        null,
                        null,
                        null,
                        Quantity.of(0.101325, "MPa"),
                        true,
                        null,
                        null,
                        null,
                        "mass-balance",
                        "proportional",
                        0.95,
                        1,
                        List.of()),
                List.of(),
                List.of(SampleFormulations.unfitted()),
                List.of(SampleFirings.rejected()),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                null);
    }

    private static CampaignSummary campaign() {
        return new CampaignSummary(
                "Orchard sugar, first characterization (invented)",
                "Example Propulsion Club",
                "CC-BY-4.0",
                "All firings on one stand, one sensor. Everything here is invented.",
                new Quantity(0.0986, "MPa", null, null, null, 0.0002),
                false,
                Quantity.of(SampleFirings.KELVIN_OF_THE_DAY, "K"),
                Quantity.of(5.5, "MPa"),
                1.5,
                "mass-balance",
                "proportional",
                0.95,
                20260101L,
                List.of(
                        "traces/OR-01.csv: the column time [ms] was taken for the time.",
                        "Decimal comma in firings.csv."));
    }

    /** One propellant of the sample, with what belongs to it. */
    static Characterization one() {
        Characterization rich = rich();
        String id = rich.formulations().get(0).id();
        return new Characterization(
                rich.format(),
                rich.generator(),
                rich.created(),
                rich.campaign(),
                rich.inputs(),
                rich.formulations().subList(0, 1),
                rich.firings().stream()
                        .filter(firing -> firing.formulation().equals(id))
                        .toList(),
                List.of(),
                List.of(),
                rich.plans().stream()
                        .filter(plan -> plan.formulation().equals(id))
                        .toList(),
                rich.cautions(),
                rich.leftOut());
    }
}
