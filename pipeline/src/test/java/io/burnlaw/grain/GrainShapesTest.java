package io.burnlaw.grain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.grain.Grains.BothSidesTube;
import io.burnlaw.grain.Grains.RodAndTube;
import io.burnlaw.quantity.Measured;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class GrainShapesTest {

    private static final Measured OUTER = Measured.of(0.050, 0.00002);
    private static final Measured CORE = Measured.of(0.020, 0.00002);
    private static final Measured LENGTH = Measured.of(0.080, 0.00005);

    @Test
    void aSegmentAgreesWithTheTextbookFormula() {
        Bates grain = new Bates(1, OUTER, CORE, LENGTH);
        for (double x : new double[] {0, 0.003, 0.011}) {
            double port = 0.010 + x;
            double formula = 2 * Math.PI * port * (0.080 - 2 * x) + 2 * Math.PI * (0.025 * 0.025 - port * port);
            assertThat(grain.surface(x)).isCloseTo(formula, within(1e-15));
        }
        assertThat(grain.web().value()).isCloseTo(0.015, within(1e-15));
    }

    @Test
    void aSegmentShorterThanTwiceItsWebBurnsOutByLength() {
        Bates grain = new Bates(2, OUTER, CORE, Measured.of(0.024, 0.0001));
        assertThat(grain.web().value()).isCloseTo(0.012, within(1e-15));
        assertThat(grain.web().std()).hasValue(0.00005);
        assertThat(grain.surface(0.0121)).isZero();
        assertThat(grain.surface(0.0119)).isGreaterThan(0);
    }

    @Test
    void theWebsUncertaintyIsHalfThatOfTheTwoDiameters() {
        // JCGM 100:2008, eq. 10: w = (D - d) / 2
        assertThat(new Tube(OUTER, CORE, LENGTH, 0).web().std().orElseThrow())
                .isCloseTo(0.00002 * Math.sqrt(2) / 2, within(1e-18));
        assertThat(new Tube(OUTER, Measured.of(0.020), LENGTH, 0).web().std()).isEmpty();
    }

    @Test
    void aTubeThatBurnsOnBothSidesAndARodInATubeAreLevel() {
        BothSidesTube both = new BothSidesTube(OUTER, CORE, LENGTH);
        assertThat(both.surface(0.007)).isEqualTo(both.surface(0));
        RodAndTube rod = new RodAndTube(new Tube(OUTER, CORE, LENGTH, 0), new Rod(Measured.of(0.018), LENGTH));
        assertThat(rod.surface(0.008)).isCloseTo(rod.surface(0), within(1e-15));
        assertThat(rod.burnout()).isCloseTo(0.015, within(1e-15));
    }

    @Test
    void aCoreOffItsAxisSpreadsTheBurnThroughOverTheWebPlusAndMinusTheOffset() {
        double offset = 0.0003;
        Tube even = new Tube(OUTER, CORE, LENGTH, 0);
        Tube uneven = even.withCoreOffset(offset);
        assertThat(uneven.breaks()).containsExactly(new double[] {0.015 - offset, 0.015 + offset}, within(1e-15));
        assertThat(uneven.web()).isEqualTo(even.web());
        assertThat(uneven.volume(0)).isCloseTo(even.volume(0), within(1e-18));
        assertThat(uneven.surface(0.014)).isEqualTo(even.surface(0.014));
        // to first order in the offset the web in direction phi is w + e cos(phi): half the wall is left at the mean
        // web
        double share = uneven.surface(0.015) / (2 * Math.PI * 0.025 * LENGTH.value());
        assertThat(share).isCloseTo(0.5, within(offset / 0.025));
        double later = uneven.surface(0.015 + offset / 2) / (2 * Math.PI * 0.025 * LENGTH.value());
        assertThat(later).isCloseTo(Math.acos(0.5) / Math.PI, within(offset / 0.025));
    }

    @Test
    void theCrossSectionLeftAroundACoreOffItsAxisAgreesWithCountingCells() {
        double outer = 0.025;
        double port = 0.0247;
        double offset = 0.0011;
        int cells = 2000;
        long left = 0;
        for (int i = 0; i < cells; i++) {
            for (int j = 0; j < cells; j++) {
                double x = outer * (2 * (i + 0.5) / cells - 1);
                double y = outer * (2 * (j + 0.5) / cells - 1);
                boolean inside = x * x + y * y < outer * outer;
                boolean burned = (x - offset) * (x - offset) + y * y < port * port;
                left += inside && !burned ? 1 : 0;
            }
        }
        double counted = left * 4 * outer * outer / cells / cells;
        // cells on the two edges: some 1e4 of them, half of the time on the wrong side, mostly cancelling
        assertThat(Tube.Circles.left(outer, port, offset)).isCloseTo(counted, within(3e-3 * counted));
    }

    @Test
    void theEnvelopeIsTheCylinderAroundAllSegments() {
        OptionalDouble envelope = new Bates(3, OUTER, CORE, LENGTH).envelope();
        assertThat(envelope.orElseThrow()).isCloseTo(3 * Math.PI * 0.025 * 0.025 * 0.080, within(1e-15));
    }
}
