package io.burnlaw.report.html;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.burnlaw.report.SampleDocument;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Firing;
import io.burnlaw.report.document.MadeOnDemand;
import io.burnlaw.report.wording.ShownUnits;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ReportPagesTest {

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 100, 20_000, 90_000, 150_000, 250_000})
    void aDiskThatFillsUpIsToldAsSuchWhereverThePageStood(int room) {
        AtomicInteger left = new AtomicInteger(room);
        ReportFiles full = (path, body) -> body.writeTo(new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                if (left.decrementAndGet() < 0) {
                    throw new IOException("No space left on device");
                }
            }
        });
        try (ReportWorkers cores = new ReportWorkers(2)) {
            assertThatThrownBy(() -> ReportPages.write(
                            SampleDocument.rich(),
                            List.of(),
                            ShownUnits.MPA,
                            CompletableFuture.completedFuture("0".repeat(64)),
                            full,
                            cores))
                    .isInstanceOf(IOException.class)
                    .hasMessage("No space left on device");
        }
    }

    @Test
    void aFiringIsMadeAFewTimesHoweverManyThereAre() throws IOException {
        Characterization few = SampleDocument.rich();
        AtomicInteger made = new AtomicInteger();
        List<Firing> many = new MadeOnDemand<>(60, place -> {
            made.incrementAndGet();
            return few.firings().get(place % few.firings().size()).called("f" + place, "none");
        });
        List<String> paths = new CopyOnWriteArrayList<>();
        Characterization document = new Characterization(
                few.format(),
                few.generator(),
                few.created(),
                few.campaign(),
                few.inputs(),
                few.formulations(),
                many,
                few.comparisons(),
                few.doseTrends(),
                few.plans(),
                few.cautions(),
                few.leftOut());
        try (ReportWorkers cores = new ReportWorkers(2)) {
            ReportPages.write(
                    document,
                    List.of(),
                    ShownUnits.MPA,
                    CompletableFuture.completedFuture("0".repeat(64)),
                    (path, body) -> {
                        body.writeTo(new ByteArrayOutputStream());
                        paths.add(path);
                    },
                    cores);
        }
        assertThat(paths).contains("firings/f0.html", "firings/f59.html", "index.html");
        // in short, for the highest pressure, for its page, for the first page's data; one to see that there are
        // courses
        assertThat(made.get()).isEqualTo(4 * 60 + 1);
    }
}
