package io.burnlaw.reduction.point;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.burnlaw.reduction.Reduction;
import io.burnlaw.reduction.events.Events;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NumberFileTest {

    @TempDir
    Path folder;

    @Test
    void whatManyThreadsKeepComesBackBitForBit() {
        try (NumberFile file = NumberFile.beside(folder.resolve("report"))) {
            List<Supplier<double[]>> kept = IntStream.range(0, 300)
                    .parallel()
                    .mapToObj(i -> file.keep(numbers(i)))
                    .toList();
            for (int i = 0; i < kept.size(); i++) {
                assertArrayEquals(numbers(i), kept.get(i).get());
            }
        }
    }

    private static double[] numbers(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        return random.longs(random.nextInt(700))
                .mapToDouble(Double::longBitsToDouble)
                .toArray();
    }

    @Test
    void nothingIsLeftBehind() throws IOException {
        try (NumberFile file = NumberFile.beside(folder.resolve("report"))) {
            file.keep(new double[] {1});
        }
        try (var left = Files.list(folder)) {
            assertThat(left).isEmpty();
        }
    }

    @Test
    void aFolderThatIsNotThereYetIsNoObstacle() {
        try (NumberFile file = NumberFile.beside(folder.resolve("later/report"))) {
            assertArrayEquals(
                    new double[] {1, Double.NaN},
                    file.keep(new double[] {1, Double.NaN}).get());
        }
    }

    @Test
    void whereNoFileTakesThemNumbersStayInTheMemory() {
        NumberFile file = NumberFile.beside(folder.resolve("report"));
        Supplier<double[]> before = file.keep(new double[] {1});
        file.close();
        double[] numbers = {2, 3};
        Supplier<double[]> after = file.keep(numbers);
        numbers[0] = 9;
        assertArrayEquals(new double[] {2, 3}, after.get());
        assertThrows(UncheckedIOException.class, before::get);
    }

    @Test
    void aReductionIsTheSameWhereverItsCoursesAreKept() {
        Reduction.Reduced here = new Reduction.Reduced(
                "f",
                List.of(point()),
                new Events(0, 0.1, 0, 1, 0, 1, 1, 1.1, 0.05, 1.05),
                io.burnlaw.quantity.Measured.of(0.01, 1e-5),
                3e6,
                4e6,
                3e6,
                0.01,
                java.util.OptionalDouble.empty(),
                Optional.empty(),
                0.01,
                java.util.OptionalDouble.empty(),
                java.util.OptionalDouble.empty(),
                java.util.OptionalDouble.empty(),
                java.util.OptionalDouble.empty(),
                RatesAlong.of(List.of(new InstantaneousRate(1, 2, 3, 4), new InstantaneousRate(5, 6, 7, 8))),
                Optional.empty(),
                List.of(),
                Optional.of(TraceHistory.of(new TraceHistory.Samples(
                        new double[] {0, 1}, new double[] {2, 3}, Optional.of(new double[] {4, 5})))));
        try (NumberFile file = NumberFile.beside(folder.resolve("report"))) {
            Reduction.Reduced there = here.keptIn(file);
            assertThat(there.along().samples())
                    .isEqualTo(here.along().samples())
                    .hasSize(2);
            assertThat(there.history().orElseThrow().samples())
                    .usingRecursiveComparison()
                    .isEqualTo(here.history().orElseThrow().samples());
            assertThat(there.points().get(0).pressures().powerMean(0.4))
                    .isEqualTo(here.points().get(0).pressures().powerMean(0.4));
            assertThat(new ArrayList<>(there.findings())).isEqualTo(here.findings());
        }
    }

    private static RatePoint point() {
        return new RatePoint(
                "f",
                "f",
                Optional.of("f"),
                "p",
                RatePoint.Source.FIRING,
                PressureDistribution.of(new double[] {2e6, 8e6}, new double[] {1, 3}),
                1e4,
                0.01,
                1e-4,
                0,
                java.util.OptionalDouble.empty(),
                "mass-balance",
                false,
                Optional.empty(),
                List.of(),
                PressureError.NONE);
    }
}
