package io.burnlaw.reduction;

import io.burnlaw.reduction.events.EventFinder;
import io.burnlaw.reduction.events.Operation;
import io.burnlaw.reduction.events.UniformTrace;
import io.burnlaw.campaign.Campaign;
import io.burnlaw.campaign.reading.CampaignReader;
import io.burnlaw.campaign.Firing;
import io.burnlaw.trace.ConditionedTrace;
import io.burnlaw.trace.Trace;
import io.burnlaw.trace.TraceConditioning;
import io.burnlaw.trace.reading.TraceReader;
import java.nio.file.Path;
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

/** What the finding of the events takes: of the first firing of a campaign, its record conditioned and cut. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class EventsBenchmark {

    @Param("../sample-runs/new-sugar-source")
    private String folder;

    private Campaign campaign;
    private Firing firing;
    private UniformTrace record;
    private double noise;

    /** Reads, conditions and cuts one record. */
    @Setup
    public void cut() {
        campaign = CampaignReader.read(Path.of(folder)).orElseThrow();
        firing = campaign.firings().get(0);
        Trace trace = TraceReader.read(
                        campaign.folder(), firing.id(), firing.trace().orElseThrow(), firing.settings(), firing.ambientPressure())
                .match(read -> read.trace(), unreadable -> {
                    throw new IllegalStateException(unreadable.findings().toString());
                });
        ConditionedTrace conditioned = TraceConditioning.condition(trace, firing.ambientPressure(), firing.settings());
        Trace record = conditioned.trace();
        Operation operation =
                Operation.find(record, firing.ambientPressure(), conditioned).orElseThrow();
        this.record = UniformTrace.of(record.times(), record.pressures(), operation.from(), operation.to());
        noise = conditioned.noiseStd() / Math.sqrt(Math.max(1, this.record.samplesPerCell()));
    }

    /** {@return the events, each by two opinions} */
    @Benchmark
    public Optional<EventFinder.Found> events() {
        return EventFinder.find(record, firing.ambientPressure(), noise, campaign.reduction());
    }
}
