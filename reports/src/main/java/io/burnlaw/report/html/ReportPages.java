package io.burnlaw.report.html;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.TemplateException;
import gg.jte.output.WriterOutput;
import io.burnlaw.report.catalogue.StructuredData;
import io.burnlaw.report.chart.FirstMarks;
import io.burnlaw.report.chart.LadderChart;
import io.burnlaw.report.chart.OverviewChart;
import io.burnlaw.report.chart.RatioChart;
import io.burnlaw.report.chart.Scales;
import io.burnlaw.report.chart.Sparkline;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Coefficients;
import io.burnlaw.report.document.Comparison;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Plan;
import io.burnlaw.report.document.ShownWriter;
import io.burnlaw.report.html.FiringView.ByFiring;
import io.burnlaw.report.html.PageShell.Embedded;
import io.burnlaw.report.table.TypedTable;
import io.burnlaw.report.wording.ShownUnits;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;

/** The pages and pictures of a report. */
public final class ReportPages {

    private static final TemplateEngine ENGINE =
            TemplateEngine.createPrecompiled(null, ContentType.Html, null, "io.burnlaw.report.html.template");

    private ReportPages() {}

    /** Loads what drawing needs. */
    public static void prepare() {
        ENGINE.hasTemplate("index.jte");
        ENGINE.hasTemplate("firing.jte");
        PageShell.INDEX.policy();
        FirstMarks.paint();
    }

    /**
     * Draws them: a page a firing, the first page, and the pictures as files.
     *
     * @param tables   that can be saved from the page
     * @param units    that the pages show when they are opened
     * @param checksum SHA-256 of burnlaw.json
     * @throws IOException if they cannot be written
     */
    public static void write(
            Characterization document,
            List<TypedTable<?>> tables,
            ShownUnits units,
            Future<String> checksum,
            ReportFiles files,
            ReportWorkers workers)
            throws IOException {
        Scales scales = Scales.of(document);
        List<Firing> firings = document.firings().stream().map(Firing::summary).toList();
        IndexView index = index(document, units, firings, scales, checksum, files, workers);
        for (DrawnFigure figure : pictures(index)) {
            picture(figure, files);
        }
        Map<String, Object> parameters = new LinkedHashMap<>();
        parameters.put("view", index);
        parameters.put("embedded", new Embedded(index.carried()));
        parameters.put("tables", new Embedded(texts(document, tables)));
        parameters.put("data", StructuredData.of(document, index.checksum()));
        files.write("index.html", out -> page("index.jte", PageShell.INDEX.in(units), parameters, out));
    }

    /** Files that can be saved from the page where it was sent alone, by name. */
    private static Map<String, String> texts(Characterization document, List<TypedTable<?>> tables) throws IOException {
        Map<String, String> texts = new LinkedHashMap<>();
        texts.put(Coefficients.FILE, DocumentFile.text(Coefficients.of(document)));
        for (TypedTable<?> table : tables) {
            StringWriter text = new StringWriter();
            table.write(text);
            texts.put(table.fileName(), text.toString());
        }
        return texts;
    }

    /**
     * Draws the page of a record alone.
     *
     * @throws IOException if it cannot be written
     */
    public static void record(RecordPage record, OutputStream out) throws IOException {
        page("record.jte", PageShell.FIRING, Map.of("page", record, "embedded", new Embedded(record.firing())), out);
    }

    private static IndexView index(
            Characterization document,
            ShownUnits units,
            List<Firing> firings,
            Scales scales,
            Future<String> checksum,
            ReportFiles files,
            ReportWorkers workers)
            throws IOException {
        Map<String, String> anchors = FileNames.of(
                document.formulations().stream().map(Formulation::id).toList());
        List<String> common = IndexView.commonCautions(document.plans());
        // what takes longest first: the workers end at about the same time
        List<Future<FormulationView>> propellants =
                workers.start(document.formulations().size(), i -> () -> {
                    Formulation formulation = document.formulations().get(i);
                    return FormulationView.of(document, firings, formulation, anchors.get(formulation.id()), scales);
                });
        List<Future<FiringView>> rows = firings(document, units, firings, scales, files, workers);
        List<Future<IndexView.Compared>> comparisons =
                workers.start(document.comparisons().size(), i -> () -> compared(document, i, scales));
        List<Future<IndexView.Planned>> plans =
                workers.start(document.plans().size(), i -> () -> planned(document, i, common));
        Future<@Nullable DrawnFigure> overview =
                workers.start(() -> DrawnFigure.ifAny("propellants", OverviewChart.draw(document, scales)));
        String sha256 = ReportWorkers.result(checksum);
        return new IndexView(
                document,
                document.forPage(sha256),
                ReportWorkers.results(propellants),
                ReportWorkers.results(rows),
                ReportWorkers.result(overview),
                ReportWorkers.results(comparisons),
                ReportWorkers.results(plans),
                sha256);
    }

    /** Writes the pages of the firings; what is left of each is its row on the first page. */
    private static List<Future<FiringView>> firings(
            Characterization document,
            ShownUnits units,
            List<Firing> firings,
            Scales scales,
            ReportFiles files,
            ReportWorkers workers) {
        Map<String, String> names =
                FileNames.of(firings.stream().map(Firing::id).toList());
        Map<String, ByFiring> propellants = ByFiring.of(document);
        double highest = Sparkline.highest(document.firings());
        return workers.start(firings.size(), i -> () -> {
            Firing firing = document.firings().get(i);
            FiringView view =
                    FiringView.of(firing, names.get(firing.id()), propellants.get(firing.formulation()), highest);
            DrawnFigure trace = view.trace();
            DrawnFigure along = view.along(scales);
            Map<String, Object> parameters = new LinkedHashMap<>();
            parameters.put("view", view);
            parameters.put("trace", trace);
            parameters.put("along", along);
            parameters.put("document", document);
            parameters.put("previous", i == 0 ? null : neighbour(firings.get(i - 1), names));
            parameters.put("next", i == firings.size() - 1 ? null : neighbour(firings.get(i + 1), names));
            parameters.put("embedded", new Embedded(firing));
            files.write(
                    "firings/" + view.name() + ".html",
                    out -> page("firing.jte", PageShell.FIRING.in(units), parameters, out));
            picture(trace, files);
            picture(along, files);
            return view.summary();
        });
    }

    private static FiringView.Neighbour neighbour(Firing firing, Map<String, String> names) {
        return new FiringView.Neighbour(names.get(firing.id()), firing.id());
    }

    private static IndexView.Compared compared(Characterization document, int number, Scales scales) {
        Comparison comparison = document.comparisons().get(number);
        return new IndexView.Compared(
                comparison,
                DrawnFigure.ifAny(
                        "ratio-" + (number + 1), RatioChart.draw(comparison, document.comparisons(), scales)));
    }

    private static IndexView.Planned planned(Characterization document, int number, List<String> common) {
        Plan plan = document.plans().get(number);
        return new IndexView.Planned(
                plan,
                document.formulations().stream()
                        .filter(each -> each.id().equals(plan.formulation()))
                        .map(Formulation::title)
                        .findFirst()
                        .orElse(plan.formulation()),
                plan.cautions().stream()
                        .filter(caution -> !common.contains(caution))
                        .toList(),
                DrawnFigure.ifAny("throats-" + (number + 1), LadderChart.draw(plan)));
    }

    private static List<@Nullable DrawnFigure> pictures(IndexView index) {
        List<@Nullable DrawnFigure> all = new ArrayList<>();
        all.add(index.overview());
        for (FormulationView view : index.propellants()) {
            all.add(view.law());
            all.add(view.residuals());
            all.add(view.closure());
            all.add(view.traces() == null ? null : view.traces().figure());
        }
        index.comparisons().forEach(view -> all.add(view.figure()));
        index.plans().forEach(view -> all.add(view.figure()));
        return all;
    }

    private static void picture(@Nullable DrawnFigure figure, ReportFiles files) throws IOException {
        if (figure != null) {
            files.write(
                    "charts/" + figure.fileName(),
                    out -> out.write(DocumentFile.bytes(figure.figure().file())));
        }
    }

    private static void page(String template, PageShell shell, Map<String, Object> parameters, OutputStream out)
            throws IOException {
        Map<String, Object> all = new LinkedHashMap<>(parameters);
        all.put("shell", shell);
        // in the embedded document such characters are escapes already, so that this changes what is shown only
        Writer page = new BufferedWriter(new ShownWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8)));
        try {
            ENGINE.render(template, all, new WriterOutput(page));
        } catch (TemplateException broken) {
            throw cause(broken);
        }
        page.flush();
    }

    /** A disk that fills up is no fault of a template. */
    private static IOException cause(TemplateException broken) {
        for (Throwable cause = broken.getCause(); cause != null; cause = cause.getCause()) {
            if (cause instanceof IOException full) {
                return full;
            }
        }
        throw broken;
    }
}
