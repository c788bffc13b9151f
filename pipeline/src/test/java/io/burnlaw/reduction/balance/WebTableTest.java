package io.burnlaw.reduction.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.grain.Grain;
import io.burnlaw.quantity.Measured;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A grain turned round, against the closed form of a port that grows in a tube with inhibited ends. */
class WebTableTest {

    private static final double PORT = 6e-3;
    private static final double OUTER = 18e-3;
    private static final double LENGTH = 80e-3;
    private static final double WEB = OUTER - PORT;

    /** S = 2π(r + x)L, V = π(R² - (r + x)²)L. */
    private static final Grain TUBE = new Grain() {
        @Override
        public double surface(double burned) {
            return burned < WEB ? 2 * Math.PI * (PORT + burned) * LENGTH : 0;
        }

        @Override
        public Measured web() {
            return new Measured(WEB, OptionalDouble.empty());
        }

        @Override
        public double volume(double burned) {
            return Math.PI * LENGTH * (OUTER * OUTER - (PORT + burned) * (PORT + burned));
        }
    };

    private static final WebTable TABLE = new WebTable(TUBE);

    private static double gone(double burned) {
        return Math.PI * LENGTH * ((PORT + burned) * (PORT + burned) - PORT * PORT);
    }

    @Test
    void theVolumeGoneGivesTheWebFromWhereverTheSearchBegins() {
        for (int i = 0; i <= 1000; i++) {
            double burned = WEB * i / 1000;
            for (double near : new double[] {0, burned, WEB / 2, WEB, 2 * WEB, -1}) {
                // 1e-6 of the web: what the table says of itself
                assertThat(TABLE.webBurned(gone(burned), near)).isCloseTo(burned, within(1e-6 * WEB));
            }
            assertThat(TABLE.burnedVolume(burned)).isCloseTo(gone(burned), within(1e-6 * gone(WEB)));
            // the surface of a tube is a straight line over the web
            assertThat(TABLE.surface(burned))
                    .isCloseTo(2 * Math.PI * (PORT + burned) * LENGTH, within(1e-8 * TUBE.surface(0)));
        }
    }

    @Test
    void whatLiesOutsideOfTheGrainIsCutToIt() {
        assertThat(TABLE.webBurned(-1e-9, 0)).isZero();
        assertThat(TABLE.webBurned(0, WEB)).isZero();
        assertThat(TABLE.webBurned(Double.NaN, 0)).isZero();
        assertThat(TABLE.webBurned(gone(WEB), 0)).isEqualTo(WEB);
        assertThat(TABLE.webBurned(1, 0)).isEqualTo(WEB);
        assertThat(TABLE.web()).isEqualTo(WEB);
        assertThat(TABLE.volume()).isCloseTo(gone(WEB), within(1e-15));
        assertThat(TABLE.burnedVolume(2 * WEB)).isEqualTo(TABLE.volume());
        assertThat(TABLE.burnedVolume(-WEB)).isZero();
        assertThat(TABLE.surface(2 * WEB)).isCloseTo(2 * Math.PI * OUTER * LENGTH, within(1e-8 * TUBE.surface(0)));
    }

    @Test
    void theVolumeLeftIsSummedOverTheRestOfTheWeb() {
        for (double burned : new double[] {0, 0.3 * WEB, 0.9 * WEB}) {
            // integral of R² - y² from r + x to R
            double y = PORT + burned;
            double moment = Math.PI * LENGTH * (OUTER * OUTER * (OUTER - y) - (OUTER * OUTER * OUTER - y * y * y) / 3);
            // 64 midpoints: (WEB/64)²/24 of the bend, 1e-4 of the moment at most
            assertThat(TABLE.volumeMoment(burned)).isCloseTo(moment, within(1e-4 * moment));
        }
    }
}
