package io.burnlaw.report.html;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ReportWorkersTest {

    @Test
    void resultsStandInTheOrderOfTheWork() throws IOException {
        try (ReportWorkers cores = new ReportWorkers(2)) {
            List<Future<Integer>> squares = cores.start(100, i -> () -> {
                Thread.sleep(i % 3);
                return i * i;
            });
            assertThat(ReportWorkers.results(squares))
                    .containsExactlyElementsOf(
                            IntStream.range(0, 100).mapToObj(i -> i * i).toList());
        }
    }

    @Test
    void whatTheWorkThrowsComesOutAsItIs() {
        try (ReportWorkers cores = new ReportWorkers(2)) {
            Future<Integer> full = cores.start(() -> {
                throw new IOException("No space left on device");
            });
            Future<Integer> fault = cores.start(() -> {
                throw new IllegalArgumentException("NaN");
            });
            Future<Integer> fatal = cores.start(() -> {
                throw new OutOfMemoryError("heap");
            });
            assertThatThrownBy(() -> ReportWorkers.result(full))
                    .isInstanceOf(IOException.class)
                    .hasMessageContaining("space");
            assertThatThrownBy(() -> ReportWorkers.result(fault)).isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> ReportWorkers.result(fatal)).isInstanceOf(OutOfMemoryError.class);
        }
    }

    @Test
    void nobodyIsAtWorkOnceItIsClosed() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        AtomicBoolean ended = new AtomicBoolean();
        try (ReportWorkers cores = new ReportWorkers(2)) {
            cores.start(() -> {
                begun.countDown();
                long end = System.nanoTime() + 50_000_000;
                while (System.nanoTime() < end) {
                    Thread.onSpinWait();
                }
                ended.set(true);
                return true;
            });
            begun.await();
        }
        assertThat(ended).isTrue();
    }
}
