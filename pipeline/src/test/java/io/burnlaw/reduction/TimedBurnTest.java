package io.burnlaw.reduction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.grain.Grains.EndBurner;
import io.burnlaw.quantity.Measured;
import io.burnlaw.reduction.point.RatePoint;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Firings with a burn time and no record, against balances that a pencil can do. */
class TimedBurnTest {

    private static final double AMBIENT = 101_325;
    private static final double DENSITY = 1800;
    private static final double VELOCITY = 900;
    private static final double RATIO = 1.2;
    private static final double LENGTH = 0.08;
    private static final double SURFACE = Math.PI / 4 * 0.04 * 0.04;
    private static final EndBurner GRAIN = new EndBurner(Measured.of(0.04, 1e-5), Measured.of(LENGTH, 1e-4));

    private static Firing row(double time, double throat, boolean pulsed) {
        return new Firing(
                "T",
                "p",
                Optional.empty(),
                Optional.of(Measured.of(time, 0.02 * time)),
                pulsed,
                new GrainDescription("end-burner", 1, Map.of(), List.of(), Optional.empty()),
                Measured.of(throat, 1e-5),
                Optional.of(Measured.of(throat, 1e-5)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                AMBIENT,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                TraceSettings.unstated(),
                2);
    }

    private static Reduction reduce(Firing row) {
        return TimedBurn.reduce(
                row, GRAIN, Optional.of(Measured.of(DENSITY, 18)), RATIO, Optional.of(Measured.of(VELOCITY, 18)));
    }

    private static RatePoint point(double time, double throat) {
        return reduce(row(time, throat, false))
                .match(reduced -> reduced.points().get(0), rejected -> {
                    throw new AssertionError(rejected.findings());
                });
    }

    @Test
    void anEndBurnerOfConstantSurfaceHasThePressureOfTheChokedBalance() {
        double throat = Math.PI / 4 * 0.004 * 0.004;
        RatePoint point = point(16, 0.004);
        double gamma = Math.sqrt(RATIO) * Math.pow(2 / (RATIO + 1), (RATIO + 1) / (2 * (RATIO - 1)));
        // S r (rho - P / (Gamma c*)^2) = P A / c*, solved for P
        double flow = SURFACE * 0.005;
        double pressure = flow * DENSITY / (throat / VELOCITY + flow / Math.pow(gamma * VELOCITY, 2));
        assertThat(point.rate()).isCloseTo(0.005, within(1e-15));
        // 1e-7: two solvers of 1e-9, one within the other
        assertThat(point.pressures().powerMean(1) / pressure).isCloseTo(1, within(1e-7));
        // 3 %: the finite step and the gas that fills the place of the propellant
        assertThat(point.pressureError().gain()).isCloseTo(1, within(0.03));
        assertThat(point.pressureError().sharedStd()).isCloseTo(0.02, within(0.001));
        // 2 % of the time, 2.5 % for the first and last flame, 1e-4 of 0.08 m of the web
        assertThat(point.rateStd() / point.rate())
                .isCloseTo(Math.sqrt(0.02 * 0.02 + 0.025 * 0.025 + 0.00125 * 0.00125), within(1e-9));
    }

    @Test
    void aSmoulderingMotorStandsHardlyAboveAmbientAndItsPressureHardlyMoves() {
        RatePoint point = point(80, 0.012);
        double pressure = point.pressures().powerMean(1);
        // The flow of a throat at ambient pressure by its Mach number, the other form of the isentropic relations
        double mach = Math.sqrt(2 / (RATIO - 1) * (Math.pow(pressure / AMBIENT, (RATIO - 1) / RATIO) - 1));
        double gamma = Math.sqrt(RATIO) * Math.pow(2 / (RATIO + 1), (RATIO + 1) / (2 * (RATIO - 1)));
        double specificGas = Math.pow(gamma * VELOCITY, 2); // R T0
        double temperature = specificGas / (1 + (RATIO - 1) / 2 * mach * mach);
        double flow = AMBIENT / temperature * mach * Math.sqrt(RATIO * temperature) * Math.PI / 4 * 0.012 * 0.012;
        double made = SURFACE * 0.001 * (DENSITY - pressure / specificGas);
        assertThat(flow / made).isCloseTo(1, within(1e-5));
        assertThat(pressure).isBetween(AMBIENT, 1.05 * AMBIENT);
        assertThat(point.pressureError().gain()).isLessThan(0.1);
    }

    @Test
    void theWordOfTheLogThatItPulsedGivesNoPoint() {
        Reduction reduction = reduce(row(30, 0.01, true));
        assertThat(reduction).isInstanceOf(Reduction.Rejected.class);
        assertThat(reduction.findings().get(0).code()).isEqualTo(FindingCode.CHUFFING);
    }

    @Test
    void aTimeThatNoPressureGivesIsRejectedWithItsUnits() {
        // a throat of 0.3 mm holds back what this grain gives in 0.9 s
        Reduction reduction = reduce(row(0.9, 0.0003, false));
        assertThat(reduction).isInstanceOf(Reduction.Rejected.class);
        assertThat(reduction.findings().get(0).message()).contains("burn_time").contains("0.3000 mm");
    }

    @Test
    void withoutKnownCharacteristicVelocityTheUsualOneAndItsSpreadAreSaid() {
        Reduction reduction = TimedBurn.reduce(
                row(16, 0.004, false), GRAIN, Optional.of(Measured.of(DENSITY, 18)), RATIO, Optional.empty());
        assertThat(reduction.findings().get(0).message()).contains("870").contains("70");
        double shared = reduction
                .match(reduced -> reduced.points().get(0), rejected -> null)
                .pressureError()
                .sharedStd();
        // 70 of 870 m/s
        assertThat(shared).isCloseTo(0.08, within(0.005));
    }
}
