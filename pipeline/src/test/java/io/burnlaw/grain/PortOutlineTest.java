package io.burnlaw.grain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.Oracle;
import io.burnlaw.campaign.GrainDescription.SurfacePoint;
import io.burnlaw.quantity.Measured;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class PortOutlineTest {

    private static PortOutline star(int points, double inner, double outer, double radius) {
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (int i = 0; i < 2 * points; i++) {
            double r = i % 2 == 0 ? outer : inner;
            x.add(r * Math.cos(Math.PI * i / points));
            y.add(r * Math.sin(Math.PI * i / points));
        }
        return new PortOutline(x, y, radius);
    }

    @Test
    @Oracle(
            value = "Steiner's formula: the layer around a convex outline of perimeter P has the length P + 2 pi x",
            agreement = "relative 1e-3")
    void aSquarePortGrowsBySteinersFormula() {
        double half = 0.006;
        PortOutline square =
                new PortOutline(List.of(half, -half, -half, half), List.of(half, half, -half, -half), 0.025);
        for (SurfacePoint point : square.burn(1, 0, 40)) {
            if (point.web() < 0.025 - half * Math.sqrt(2)) {
                double steiner = 8 * half + 2 * Math.PI * point.web();
                // 1e-3: chords across cells of 0.08 mm, and corners of the square within a cell
                assertThat(point.surface()).isCloseTo(steiner, within(1e-3 * steiner));
            }
        }
    }

    @Test
    void aRoundPortIsATube() {
        PortOutline round = star(180, 0.010, 0.010, 0.025);
        Tube tube = new Tube(Measured.of(0.050), Measured.of(0.020), Measured.of(0.080), 1);
        SurfaceTable table = new SurfaceTable(round.burn(0.080, 1, 60), OptionalDouble.empty());
        // 0.1 %: the polygon of 360 corners lies inside the circle
        assertThat(table.web().value()).isCloseTo(0.015, within(15e-6));
        for (double burned : new double[] {0, 0.004, 0.009, 0.0142}) {
            assertThat(table.surface(burned)).isCloseTo(tube.surface(burned), within(2e-3 * tube.surface(burned)));
        }
    }

    @Test
    void theTableOfAStarHoldsTheWholePropellantAndEndsWithItsSlivers() {
        PortOutline star = star(5, 0.006, 0.014, 0.025);
        SurfaceTable table = new SurfaceTable(star.burn(0.1, 0, 80), OptionalDouble.empty());
        double volume = star.propellantSection() * 0.1;
        // the first layers lose the star's corners faster than a row resolves
        assertThat(table.volume(0)).isCloseTo(volume, within(0.005 * volume));
        assertThat(table.surface(table.burnout())).isZero();
        assertThat(table.burnout()).isGreaterThan(0.025 - 0.014);
    }

    @Test
    void anOutlineOutsideTheGrainIsRefused() {
        assertThatThrownBy(() -> star(5, 0.006, 0.026, 0.025)).hasMessageContaining("corner 1");
    }
}
