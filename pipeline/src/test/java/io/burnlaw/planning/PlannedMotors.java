package io.burnlaw.planning;

import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.grain.Bates;
import io.burnlaw.grain.Grain;
import io.burnlaw.prediction.IgnitionSpike;
import io.burnlaw.quantity.Measured;
import io.burnlaw.ratelaw.FitOptions;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.FitResult;
import io.burnlaw.ratelaw.PiecewiseLaw;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.ratelaw.RateLawFit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;

/** An invented motor and laws for it. */
final class PlannedMotors {

    static final double AMBIENT = 101_325;

    private PlannedMotors() {}

    static Motor motor(double density, double velocity, double throat) {
        Grain grain = new Bates(3, Measured.of(0.042), Measured.of(0.016), Measured.of(0.065));
        return new Motor(
                grain, density, new Gas(velocity, 1.13), new Nozzle(throat), Motor.freeVolume(grain, 0), AMBIENT);
    }

    static Motor motor() {
        return motor(1790, 880, 0.011);
    }

    static List<FitPoint> points(
            int count, double low, double high, double exponent, double scatter, RandomGenerator random) {
        List<FitPoint> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double pressure = low * Math.pow(high / low, (double) i / (count - 1));
            double rate = 5e-3 * Math.pow(pressure / 1e6, exponent) * Math.exp(scatter * random.nextGaussian());
            points.add(new FitPoint("f" + i, "f" + i, pressure, 0, rate, 0, 0));
        }
        return points;
    }

    static RateLaw fit(List<FitPoint> points) {
        FitOptions options = FitOptions.defaults().withBootstrap(0, 1);
        return ((FitResult.Fitted) RateLawFit.fit(points, options)).law();
    }

    static Hardware hardware(double limit) {
        return new Hardware(OptionalDouble.of(limit), 1.5);
    }

    static PlanBasis basis(List<FitPoint> points, Hardware hardware) {
        return new PlanBasis(
                "date",
                PiecewiseLaw.of(fit(points)),
                points,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                motor(),
                "bates, 3 segments",
                0.02,
                PlanBasis.USUAL_THROAT_STD,
                hardware,
                OptionalDouble.of(3e6),
                IgnitionSpike.NONE,
                List.of());
    }

    /** A propellant that burns at a third of its rate below 0.9 MPa. */
    record Slow(PlanBasis basis) {}

    static Slow slowRegime(RandomGenerator random) {
        List<FitPoint> fast = points(8, 1e6, 4e6, 0.35, 0.02, random);
        List<FitPoint> slow = new ArrayList<>();
        for (FitPoint each : points(4, 0.12e6, 0.8e6, 0.35, 0.02, random)) {
            slow.add(new FitPoint("s" + each.id(), "s" + each.id(), each.pressure(), 0, each.rate() / 3, 0, 0));
        }
        List<FitPoint> all = new ArrayList<>(slow);
        all.addAll(fast);
        PiecewiseLaw law = new PiecewiseLaw(List.of(fit(slow), fit(fast)), List.of(0.9e6));
        return new Slow(new PlanBasis(
                "smoulder",
                law,
                all,
                OptionalDouble.of(0.9e6),
                OptionalDouble.empty(),
                motor(),
                "bates, 3 segments",
                0.02,
                PlanBasis.USUAL_THROAT_STD,
                hardware(7.5e6),
                OptionalDouble.empty(),
                IgnitionSpike.NONE,
                List.of()));
    }
}
