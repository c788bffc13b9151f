package io.burnlaw.report.html;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.burnlaw.report.chart.LadderChart;
import io.burnlaw.report.chart.OverviewChart;
import io.burnlaw.report.chart.RatioChart;
import io.burnlaw.report.chart.Scales;
import io.burnlaw.report.chart.Sparkline;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Invisible;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The pages and pictures of a report. */
public final class ReportPages {

    private static final TemplateEngine ENGINE =
            TemplateEngine.createPrecompiled(null, ContentType.Html, null, "io.burnlaw.report.html.template");

    private ReportPages() {}

    /**
     * Draws them.
     *
     * @param document the document
     * @return text by path below the report's folder: index.html, a page a firing, and the pictures as files
     */
    public static Map<String, String> of(Characterization document) {
        String json = DocumentFile.text(document);
        IndexView index = index(document, PageShell.sha256(json));
        Map<String, String> files = new LinkedHashMap<>();
        files.put(
                "index.html",
                page("index.jte", Map.of("view", index, "embedded", json, "data", StructuredData.of(document))));
        List<FiringView> firings = index.firings();
        for (int i = 0; i < firings.size(); i++) {
            Map<String, Object> parameters = new LinkedHashMap<>();
            parameters.put("view", firings.get(i));
            parameters.put("document", document);
            parameters.put("previous", i == 0 ? null : firings.get(i - 1));
            parameters.put("next", i == firings.size() - 1 ? null : firings.get(i + 1));
            parameters.put("embedded", DocumentFile.text(firings.get(i).firing()));
            files.put("firings/" + firings.get(i).name() + ".html", page("firing.jte", parameters));
        }
        pictures(index).forEach(figure -> files.put("charts/" + figure.fileName(), file(figure)));
        return files;
    }

    private static IndexView index(Characterization document, String checksum) {
        Scales scales = Scales.of(document);
        Map<String, String> anchors = FileNames.of(
                document.formulations().stream().map(Formulation::id).toList());
        Map<String, String> pages =
                FileNames.of(document.firings().stream().map(Firing::id).toList());
        double highest = Sparkline.highest(document.firings());
        List<IndexView.Compared> comparisons = new ArrayList<>();
        for (int i = 0; i < document.comparisons().size(); i++) {
            var comparison = document.comparisons().get(i);
            comparisons.add(new IndexView.Compared(
                    comparison,
                    DrawnFigure.ifAny(
                            "ratio-" + (i + 1),
                            frame -> RatioChart.draw(comparison, document.comparisons(), scales, frame))));
        }
        List<IndexView.Planned> plans = new ArrayList<>();
        List<String> common = IndexView.commonCautions(document.plans());
        for (int i = 0; i < document.plans().size(); i++) {
            var plan = document.plans().get(i);
            plans.add(new IndexView.Planned(
                    plan,
                    document.formulations().stream()
                            .filter(each -> each.id().equals(plan.formulation()))
                            .map(Formulation::title)
                            .findFirst()
                            .orElse(plan.formulation()),
                    plan.cautions().stream()
                            .filter(caution -> !common.contains(caution))
                            .toList(),
                    DrawnFigure.ifAny("throats-" + (i + 1), frame -> LadderChart.draw(plan, frame))));
        }
        return new IndexView(
                document,
                document.formulations().stream()
                        .map(each -> FormulationView.of(document, each, anchors.get(each.id()), scales))
                        .toList(),
                document.firings().stream()
                        .map(each -> FiringView.of(document, each, pages.get(each.id()), scales, highest))
                        .toList(),
                DrawnFigure.ifAny("propellants", frame -> OverviewChart.draw(document, scales, frame)),
                comparisons,
                plans,
                checksum);
    }

    private static List<DrawnFigure> pictures(IndexView index) {
        List<@Nullable DrawnFigure> all = new ArrayList<>();
        all.add(index.overview());
        for (FormulationView view : index.propellants()) {
            all.add(view.law());
            all.add(view.residuals());
            all.add(view.closure());
        }
        index.comparisons().forEach(view -> all.add(view.figure()));
        index.plans().forEach(view -> all.add(view.figure()));
        for (FiringView view : index.firings()) {
            all.add(view.trace());
            all.add(view.along());
        }
        List<DrawnFigure> drawn = new ArrayList<>();
        for (DrawnFigure figure : all) {
            if (figure != null) {
                drawn.add(figure);
            }
        }
        return drawn;
    }

    private static String file(DrawnFigure figure) {
        return figure.wide().file();
    }

    private static String page(String template, Map<String, Object> parameters) {
        StringOutput output = new StringOutput();
        Map<String, Object> all = new LinkedHashMap<>(parameters);
        all.put("shell", PageShell.SHELL);
        ENGINE.render(template, all, output);
        // in the embedded document such characters are escapes already, so that this changes what is shown only
        return Invisible.shownInLines(output.toString());
    }
}
