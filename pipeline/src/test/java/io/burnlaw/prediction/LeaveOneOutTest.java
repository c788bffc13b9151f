package io.burnlaw.prediction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.ballistics.Nozzle;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.grain.Bates;
import io.burnlaw.prediction.LeaveOneOut.MeasuredFiring;
import io.burnlaw.quantity.Measured;
import io.burnlaw.ratelaw.FitOptions;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.FitResult;
import io.burnlaw.ratelaw.PiecewiseLaw;
import io.burnlaw.ratelaw.RateLawFit;
import io.burnlaw.reduction.point.NumberStore;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class LeaveOneOutTest {

    private static final double VELOCITY = 880;

    /** Firings of one invented propellant, each as the simulation measures it. */
    private static final class Made {
        private final List<FitPoint> points = new ArrayList<>();
        private final List<MeasuredFiring> firings = new ArrayList<>();

        PiecewiseLaw law() {
            FitOptions options = FitOptions.defaults().withBootstrap(0, 1);
            return PiecewiseLaw.of(((FitResult.Fitted) RateLawFit.fit(points, options)).law());
        }

        PredictionCheck.Predicted closure() {
            return LeaveOneOut.of(law(), points, firings, List.of(), NumberStore.MEMORY)
                    .match(closed -> closed, none -> {
                        throw new AssertionError(none.sentence());
                    });
        }
    }

    private static Motor motor(double throat, double velocity) {
        Bates grain = new Bates(2, Measured.of(0.038), Measured.of(0.014), Measured.of(0.062));
        return new Motor(grain, 1780, new Gas(velocity, 1.13), new Nozzle(throat), Motor.freeVolume(grain, 0), 101_325);
    }

    private static double rate(double pressure) {
        return 5e-3 * Math.pow(pressure / 1e6, 0.38);
    }

    /** The true motor may have another c* than its reduction says, as a wrong throat or density would make it. */
    private static Made fired(int count, double scatter, double velocityFactor, SplittableRandom random) {
        Made made = new Made();
        for (int i = 0; i < count; i++) {
            double throat = 9e-3 * Math.pow(0.62, (double) i / (count - 1));
            double factor = Math.exp(scatter * random.nextGaussian());
            Prediction truth = Prediction.of(motor(throat, VELOCITY * velocityFactor), p -> factor * rate(p))
                    .orElseThrow();
            double mean = truth.meanPressure();
            made.points.add(new FitPoint("f" + i, "f" + i, mean, 0, factor * rate(mean), 0, 0));
            made.firings.add(new MeasuredFiring(
                    "f" + i,
                    motor(throat, VELOCITY),
                    1,
                    OptionalDouble.of(VELOCITY),
                    0.3,
                    truth.maxPressure(),
                    mean,
                    truth.burnTime(),
                    OptionalDouble.empty()));
        }
        return made;
    }

    @Test
    void aLawWithoutScatterGivesItsFiringsBack() {
        PredictionCheck.Predicted closure =
                fired(6, 0, 1, new SplittableRandom(1)).closure();
        assertThat(closure.firings()).hasSize(6).allSatisfy(each -> {
            // 1e-4: what the logarithms of a law without scatter leave, over 1 - n
            assertThat(each.maxPressureError()).isCloseTo(0, offset(1e-4));
            assertThat(each.burnTimeError()).isCloseTo(0, offset(1e-4));
            assertThat(each.record().samples().time()[0]).isLessThanOrEqualTo(0.3);
        });
        assertThat(closure.good()).isTrue();
        assertThat(closure.finding()).isEmpty();
    }

    @Test
    void theFiringItselfIsNotInItsPrediction() {
        Made made = fired(6, 0, 1, new SplittableRandom(1));
        FitPoint odd = made.points.get(2);
        made.points.set(2, new FitPoint("f2", "f2", odd.pressure(), 0, 1.2 * odd.rate(), 0, 0));
        PredictionCheck.Predicted closure = made.closure();
        // its own points say 20 % more: the others must not have heard of it
        assertThat(closure.firings().get(2).maxPressureError()).isCloseTo(0, offset(1e-3));
        assertThat(closure.firings().get(1).maxPressureError()).isGreaterThan(0.01);
    }

    @Test
    void theScatterOfTheLawIsNamedAsTheCauseWhereItIs() {
        Made made = fired(9, 0.12, 1, new SplittableRandom(4));
        PredictionCheck.Predicted closure = made.closure();
        assertThat(closure.good()).isFalse();
        assertThat(closure.finding().orElseThrow().code()).isEqualTo(FindingCode.POOR_CLOSURE);
        assertThat(closure.finding().orElseThrow().message())
                .contains("The scatter of the firings explains this error");
    }

    @Test
    void aWrongThroatOrDensityIsSeenInAllFiringsAlike() {
        PredictionCheck.Predicted closure =
                fired(6, 0.01, 0.9, new SplittableRandom(2)).closure();
        assertThat(closure.good()).isFalse();
        // 1 / 0.9 in c* is a factor 0.9^(-1 / 0.62) in pressure
        assertThat(closure.medianMaxPressureError()).isCloseTo(Math.pow(0.9, -1 / 0.62) - 1, offset(0.02));
        assertThat(closure.finding().orElseThrow().message())
                .contains("Most predictions are too high")
                .contains("c*");
    }

    @Test
    void theRateAtTheFiringsOwnTemperatureIsPredicted() {
        Made made = fired(5, 0, 1, new SplittableRandom(1));
        MeasuredFiring cold = made.firings.get(1);
        Prediction truth = Prediction.of(cold.motor(), p -> 0.94 * rate(p)).orElseThrow();
        made.firings.set(
                1,
                new MeasuredFiring(
                        "f1",
                        cold.motor(),
                        0.94,
                        cold.characteristicVelocity(),
                        0.3,
                        truth.maxPressure(),
                        truth.meanPressure(),
                        truth.burnTime(),
                        OptionalDouble.empty()));
        assertThat(made.closure().firings().get(1).maxPressureError()).isCloseTo(0, offset(1e-4));
    }

    @Test
    void withoutOneOfTwoPressuresNothingIsPredicted() {
        Made made = fired(3, 0, 1, new SplittableRandom(1));
        for (int i : new int[] {1, 2}) {
            FitPoint first = made.points.get(0);
            made.points.set(
                    i,
                    new FitPoint(
                            "f" + i,
                            "f" + i,
                            i == 1 ? first.pressure() : 3 * first.pressure(),
                            0,
                            rate((i == 1 ? 1 : 3) * first.pressure()) * (1 + 0.01 * i),
                            0,
                            0));
        }
        PredictionCheck closure = LeaveOneOut.of(
                made.law(), made.points, List.of(made.firings.get(2)), List.of("x: outside"), NumberStore.MEMORY);
        assertThat(closure).isInstanceOf(PredictionCheck.NotPredicted.class);
        assertThat(closure.sentence()).contains("x: outside", "f2: without it, too few firings");
    }

    @Test
    void withoutAFiringNothingIsPredicted() {
        Made made = fired(3, 0.01, 1, new SplittableRandom(1));
        assertThat(LeaveOneOut.of(made.law(), made.points, List.of(), List.of(), NumberStore.MEMORY)
                        .sentence())
                .contains("none of them has a complete motor");
    }

    @Test
    void aMotorIsPredictedForTheRegimeInWhichItBurned() {
        Made made = fired(6, 0, 1, new SplittableRandom(1));
        PiecewiseLaw fast = made.law();
        var slow = fast.laws().get(0);
        var third = io.burnlaw.ratelaw.MadeLaw.of(
                slow.lnRateAtReference() - Math.log(3),
                slow.exponent(),
                slow.referencePressure(),
                slow.rateVariance(),
                slow.covariance(),
                slow.exponentVariance(),
                slow.degreesOfFreedom(),
                slow.residualScatter(),
                slow.pressureLow(),
                slow.pressureHigh(),
                slow.points());
        PiecewiseLaw both = new PiecewiseLaw(List.of(third, slow), List.of(0.8e6));
        PredictionCheck.Predicted closure = LeaveOneOut.of(
                        both, made.points, made.firings, List.of(), NumberStore.MEMORY)
                .match(closed -> closed, none -> {
                    throw new AssertionError(none.sentence());
                });
        // with the slow law below, the usual igniter would leave them smouldering at a fifth of the pressure
        assertThat(closure.firings())
                .filteredOn(each -> each.measured().meanPressure() > 0.8e6)
                .hasSizeGreaterThan(4)
                .allSatisfy(each -> assertThat(each.maxPressureError()).isCloseTo(0, offset(0.01)));
    }
}
