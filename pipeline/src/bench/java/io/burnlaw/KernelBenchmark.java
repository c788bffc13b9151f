package io.burnlaw;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.characterize.CampaignResult;
import io.burnlaw.characterize.Characterizer;
import io.burnlaw.characterize.Progress;
import io.burnlaw.grain.Grain;
import io.burnlaw.grain.Grains;
import io.burnlaw.publish.CharacterizationDocument;
import io.burnlaw.ratelaw.FitOptions;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.FitResult;
import io.burnlaw.ratelaw.RateLawFit;
import io.burnlaw.reduction.FiringReducer;
import io.burnlaw.reduction.Reduction;
import io.burnlaw.regime.RegimeOptions;
import io.burnlaw.regime.RegimeSearch;
import io.burnlaw.regime.Regimes;
import io.burnlaw.report.ReportWriter;
import io.burnlaw.report.chart.Figure;
import io.burnlaw.report.chart.TraceChart;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.trace.ConditionedTrace;
import io.burnlaw.trace.Trace;
import io.burnlaw.trace.TraceConditioning;
import io.burnlaw.trace.reading.TraceReader;
import io.burnlaw.trace.reading.TraceReading;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** What each step of a run takes, on one campaign: the first firing's record, and the first propellant's points. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class KernelBenchmark {

    @Param("../sample-runs/new-sugar-source")
    private String folder;

    private Campaign campaign;
    private Firing firing;
    private Formulation formulation;
    private Grain grain;
    private Trace trace;
    private List<FitPoint> points;
    private Characterization document;

    /** Takes the campaign the whole way once, and keeps what each step starts from. */
    @Setup
    public void characterize() {
        campaign = CampaignReader.read(Path.of(folder)).orElseThrow();
        firing = campaign.firings().get(0);
        formulation = campaign.formulations().get(0);
        grain = Grains.of(firing.grain()).orElseThrow();
        trace = parse().match(read -> read.trace(), unreadable -> {
            throw new IllegalStateException(unreadable.findings().toString());
        });
        CampaignResult result = Characterizer.characterize(campaign, 1, Progress.silent());
        points = result.formulations().get(0).fitPoints();
        document = CharacterizationDocument.result(result, "bench", Optional.empty(), true);
    }

    /** {@return a record, read and parsed, with its checksum} */
    @Benchmark
    public TraceReading parse() {
        return TraceReader.read(
                campaign.folder(), firing.id(), firing.trace().orElseThrow(), firing.settings(), firing.ambientPressure());
    }

    /** {@return a record brought to zero} */
    @Benchmark
    public ConditionedTrace condition() {
        return TraceConditioning.condition(trace, firing.ambientPressure(), firing.settings());
    }

    /** {@return a firing, conditioned, screened, its events found, and reduced} */
    @Benchmark
    public Reduction reduce() {
        return FiringReducer.reduce(
                firing, formulation, campaign.reduction(), campaign.hardware(), grain, trace, List.of());
    }

    /** {@return a law without bootstrap} */
    @Benchmark
    public FitResult fit() {
        return RateLawFit.fit(points, FitOptions.defaults().withBootstrap(0, 1));
    }

    /** {@return a law with the bootstrap of a run} */
    @Benchmark
    public FitResult bootstrap() {
        return RateLawFit.fit(points, FitOptions.defaults());
    }

    /** {@return the regimes, with the simulated campaigns that decide on their number} */
    @Benchmark
    public Regimes regimes() {
        return RegimeSearch.search(points, RegimeOptions.defaults(1));
    }

    /** {@return one picture} */
    @Benchmark
    public Optional<Figure> chart() {
        return TraceChart.draw(document.firings().get(0));
    }

    /** {@return all files of a report} */
    @Benchmark
    public Map<String, String> pages() {
        return ReportWriter.files(document, ReportWriter.Options.EVERYTHING);
    }
}
