package io.burnlaw.prediction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import io.burnlaw.ratelaw.FitOptions;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.FitResult;
import io.burnlaw.ratelaw.PiecewiseLaw;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.ratelaw.RateLawFit;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LeaveOneOutLawTest {

    private static List<FitPoint> points(int count, double scatter, SplittableRandom random) {
        List<FitPoint> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double pressure = 1e6 * Math.pow(6, (double) i / (count - 1));
            double rate = 5e-3 * Math.pow(pressure / 1e6, 0.4) * Math.exp(scatter * random.nextGaussian());
            points.add(new FitPoint("f" + i, "f" + i, pressure, 0, rate, 0, 0));
        }
        return points;
    }

    private static RateLaw fit(List<FitPoint> points) {
        FitOptions options = FitOptions.defaults().withBootstrap(0, 1);
        return ((FitResult.Fitted) RateLawFit.fit(points, options)).law();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void agreesWithARefit(long seed) {
        List<FitPoint> all = points(7, 0.03, new SplittableRandom(seed));
        PiecewiseLaw law = PiecewiseLaw.of(fit(all));
        LeaveOneOutLaw laws = new LeaveOneOutLaw(law, all);
        for (FitPoint out : all) {
            RateLaw quick = laws.without(out.cluster()).orElseThrow().laws().get(0);
            List<FitPoint> rest = new ArrayList<>(all);
            rest.remove(out);
            RateLaw refit = fit(rest);
            // 0.003: what one step of Gauss and Newton leaves, of the order of the scatter squared
            assertThat(quick.exponent()).isCloseTo(refit.exponent(), offset(0.003));
            assertThat(Math.log(quick.rate(2e6) / refit.rate(2e6))).isCloseTo(0, offset(0.003));
        }
    }

    @Test
    void aFiringWithoutPointsChangesNothing() {
        List<FitPoint> all = points(5, 0.03, new SplittableRandom(1));
        PiecewiseLaw law = PiecewiseLaw.of(fit(all));
        LeaveOneOutLaw laws = new LeaveOneOutLaw(law, all);
        assertThat(laws.without("another").orElseThrow()).isEqualTo(law);
    }

    @Test
    void theOnlyFiringAtAnotherPressureCannotBeLeftOut() {
        List<FitPoint> points = List.of(
                new FitPoint("a", "a", 2e6, 0, 6.5e-3, 0, 0),
                new FitPoint("b", "b", 2e6, 0, 6.6e-3, 0, 0),
                new FitPoint("c", "c", 5e6, 0, 9.4e-3, 0, 0));
        LeaveOneOutLaw laws = new LeaveOneOutLaw(PiecewiseLaw.of(fit(points)), points);
        assertThat(laws.without("c")).isEmpty();
        assertThat(laws.without("a")).isPresent();
    }
}
