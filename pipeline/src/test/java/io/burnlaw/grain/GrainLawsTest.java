package io.burnlaw.grain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.GrainDescription.SurfacePoint;
import io.burnlaw.grain.Grains.BothSidesTube;
import io.burnlaw.grain.Grains.EndBurner;
import io.burnlaw.grain.Grains.RodAndTube;
import io.burnlaw.quantity.Measured;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for every grain that burns by parallel layers. */
class GrainLawsTest {

    /** A shape by its dimensions times a scale. */
    record Shape(String name, long seed) {

        Grain grain(double scale) {
            SplittableRandom random = new SplittableRandom(seed);
            double outer = scale * random.nextDouble(0.02, 0.09);
            double core = outer * random.nextDouble(0.2, 0.7);
            double length = outer * random.nextDouble(0.3, 4);
            double offset = (outer - core) / 2 * random.nextDouble(0.02, 0.4);
            Tube tube = tube(outer, core, length, random.nextInt(3));
            return switch (name) {
                case "tube" -> tube;
                case "tube off centre" -> tube.withCoreOffset(offset);
                case "bates" -> new Bates(3, Measured.of(outer), Measured.of(core), Measured.of(length));
                case "bates off centre" -> new Bates(2, tube(outer, core, length, 2)).withCoreOffset(offset);
                case "rod" -> new Rod(Measured.of(core), Measured.of(length));
                case "end burner" -> new EndBurner(Measured.of(outer), Measured.of(length));
                case "rod and tube" ->
                    new RodAndTube(tube(outer, core, length, 0), new Rod(Measured.of(0.6 * core), Measured.of(length)));
                case "both sides" -> new BothSidesTube(Measured.of(outer), Measured.of(core), Measured.of(length));
                case "unequal segments" ->
                    new Stack(List.of(
                            tube, tube(outer, 1.1 * core, 0.8 * length, 1).withCoreOffset(offset / 2)));
                case "table" -> table(outer, random);
                default -> throw new IllegalArgumentException(name);
            };
        }

        private static Tube tube(double outer, double core, double length, int ends) {
            return new Tube(Measured.of(outer), Measured.of(core), Measured.of(length), ends);
        }

        private static SurfaceTable table(double size, SplittableRandom random) {
            List<SurfacePoint> points = new ArrayList<>();
            for (int i = 0; i < 12; i++) {
                points.add(new SurfacePoint(i * size / 40, size * size * random.nextDouble(1, 3)));
            }
            return new SurfaceTable(points, OptionalDouble.empty());
        }
    }

    static Stream<Shape> shapes() {
        return Stream.of(
                        "tube",
                        "tube off centre",
                        "bates",
                        "bates off centre",
                        "rod",
                        "end burner",
                        "rod and tube",
                        "both sides",
                        "unequal segments",
                        "table")
                .flatMap(name -> Stream.of(11L, 12L, 13L).map(seed -> new Shape(name, seed)));
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void theSurfaceIsWhatTheVolumeLosesByWeb(Shape shape) {
        Grain grain = shape.grain(1);
        SplittableRandom random = new SplittableRandom(shape.seed());
        double small = grain.burnout() * 1e-6;
        for (int i = 0; i < 50; i++) {
            double burned = small + (grain.burnout() - 2 * small) * random.nextDouble();
            if (Arrays.stream(grain.breaks()).anyMatch(at -> Math.abs(at - burned) <= 3 * small)) {
                continue;
            }
            double slope = (grain.volume(burned - small) - grain.volume(burned + small)) / (2 * small);
            // a table bends between its rows, an arc that ends at the wall has a steep second derivative there
            assertThat(grain.surface(burned)).isCloseTo(slope, within(2e-4 * grain.surface(0)));
        }
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void nothingIsLeftAtTheEndAndNothingGrowsBefore(Shape shape) {
        Grain grain = shape.grain(1);
        double before = grain.volume(0);
        for (int i = 1; i <= 40; i++) {
            double left = grain.volume(grain.burnout() * i / 40);
            assertThat(left).isBetween(0.0, before);
            before = left;
        }
        double beyond = grain.burnout() * (1 + 1e-9);
        assertThat(grain.volume(beyond)).isCloseTo(0, within(1e-9 * grain.volume(0)));
        assertThat(grain.surface(beyond)).isZero();
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void aLargerGrainScalesWithTheSecondAndThirdPowerOfLength(Shape shape) {
        Grain small = shape.grain(1);
        Grain large = shape.grain(2.5);
        assertThat(large.web().value()).isCloseTo(2.5 * small.web().value(), within(1e-12));
        for (double share : new double[] {0, 0.3, 0.77, 0.95}) {
            double burned = share * small.burnout();
            // rounding of acos near its ends
            assertThat(large.surface(2.5 * burned))
                    .isCloseTo(6.25 * small.surface(burned), within(1e-9 * large.surface(0)));
            assertThat(large.volume(2.5 * burned))
                    .isCloseTo(15.625 * small.volume(burned), within(1e-9 * large.volume(0)));
        }
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void breaksRiseAndEndWithTheBurnout(Shape shape) {
        double[] breaks = shape.grain(1).breaks();
        assertThat(breaks).isSorted();
        assertThat(breaks[breaks.length - 1]).isEqualTo(shape.grain(1).burnout());
    }
}
