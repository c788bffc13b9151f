package io.burnlaw.reduction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.reduction.FaultMatrix.InjectedFault;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.trace.Trace;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** A few firings of what {@code FaultMatrixStudy} does with many. */
@Tag("long")
class FaultMatrixTest {

    private static final int FIRINGS = 3;
    private static final long SEED = 41_000;

    static Stream<Arguments> faults() {
        return FaultMatrix.FAULTS.stream()
                .map(fault -> Arguments.of(fault.code().code() + ": " + fault.what(), fault));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("faults")
    void aFaultOfMiddleStrengthIsTold(String name, InjectedFault fault) {
        List<List<FindingCode>> missed = new ArrayList<>();
        for (int i = 0; i < FIRINGS; i++) {
            List<Finding> findings = fault.inject(CleanFiring.random(SEED + i), 1, new SplittableRandom(SEED - i));
            if (findings.stream().noneMatch(finding -> finding.code() == fault.code())) {
                missed.add(findings.stream().map(Finding::code).toList());
            }
        }
        assertEquals(List.of(), missed, name);
    }

    @Test
    void nothingIsToldOfCleanFirings() {
        FaultTally tally = FaultTally.ofClean(20, SEED + 100);
        assertEquals(Map.of(), tally.told());
    }

    @Test
    void aWrongUnitOfPressureIsRefusedAndNamed() {
        CleanFiring clean = CleanFiring.random(SEED);
        // gauge pressure in psi that was read as bar
        var trace = clean.with(
                io.burnlaw.ballistics.RecordFaults.gain(1e5 / 6894.757, CleanFiring.AMBIENT), clean.pressureTrace());
        Finding found = FaultMatrix.findings(clean, trace).stream()
                .filter(finding -> finding.code() == FindingCode.IMPLAUSIBLE_CSTAR)
                .findFirst()
                .orElseThrow();
        assertEquals(Severity.REJECTION, found.severity());
        assertContains("a pressure column in psi that was read as bar", found);
        assertContains("The mass is not the cause", found);
    }

    @Test
    void aThroatInAnotherUnitIsRefusedAndNamed() {
        CleanFiring clean = CleanFiring.random(SEED + 3);
        double throat = clean.firing().throatDiameter().value();
        Finding found = first(
                FaultMatrix.findings(
                        clean,
                        FaultyRow.of(clean.firing()).throat(10 * throat).row(),
                        CleanFiring.NO_LIMIT,
                        clean.pressureTrace()),
                FindingCode.IMPLAUSIBLE_CSTAR);
        assertEquals(Severity.REJECTION, found.severity());
        assertContains("a throat in mm that was read as cm", found);
    }

    @Test
    void aMisreadMassIsConvictedByDensityAndVolume() {
        CleanFiring clean = CleanFiring.random(SEED + 1);
        double mass = clean.firing().propellantMass().orElseThrow().value();
        List<Finding> findings = FaultMatrix.findings(
                clean,
                FaultyRow.of(clean.firing()).mass(0.8 * mass).row(),
                CleanFiring.NO_LIMIT,
                clean.pressureTrace());
        Finding velocity = first(findings, FindingCode.IMPLAUSIBLE_CSTAR);
        assertContains("The mass is the likely cause", velocity);
        double told = Double.parseDouble(
                velocity.message().replaceAll("(?s).*a propellant mass of ([0-9.]+) g instead.*", "$1"));
        // 2 %: c* comes back within half of it, the mass was read with 0.2 %
        assertEquals(mass, told / 1000, 0.02 * mass);
        assertContains("g/cm3, 20 % less than", first(findings, FindingCode.GRAIN_MASS));
    }

    @Test
    void aMassThatIsWrongByHalfDoesNotCostTheFiringItsRate() {
        CleanFiring clean = CleanFiring.random(SEED + 3);
        double mass = clean.firing().propellantMass().orElseThrow().value();
        Reduction reduction = FaultMatrix.reduce(
                clean,
                FaultyRow.of(clean.firing()).mass(0.45 * mass).row(),
                CleanFiring.NO_LIMIT,
                clean.pressureTrace());
        RatePoint point = ((Reduction.Reduced) reduction).points().get(0);
        // 1 %: a mass wrong by half also changes the little that the gas density does
        assertEquals(1, point.rate() / clean.rateAt(point.pressures().powerMean(clean.exponent())), 0.01);
    }

    @Test
    void aRecordThatBeginsInTheMiddleOfTheBurnIsRefused() {
        CleanFiring clean = CleanFiring.random(SEED + 4);
        Trace whole = clean.pressureTrace();
        int first = 0;
        while (whole.time(first) < clean.ignition() + 0.3 * clean.plain().meanBurnout()) {
            first++;
        }
        List<Finding> findings = FaultMatrix.findings(
                clean,
                Trace.of(
                        "F1",
                        Arrays.copyOfRange(whole.times(), first, whole.size()),
                        Optional.of(Arrays.copyOfRange(whole.pressures(), first, whole.size())),
                        Optional.empty()));
        assertTrue(
                findings.stream()
                        .anyMatch(finding -> finding.code() == FindingCode.NO_QUIET_PART
                                && finding.severity() == Severity.REJECTION),
                findings.toString());
    }

    @Test
    void aThroatThatGrewUnmeasuredIsToldWithItsSize() {
        CleanFiring clean = CleanFiring.random(SEED + 2);
        var nozzle = clean.motor().nozzle();
        var motor =
                clean.motor().withNozzle(nozzle.withThroat(nozzle.throatDiameter(), 1.04 * nozzle.throatDiameter()));
        var trace = clean.noisy(clean.noiseless(clean.again(
                motor,
                io.burnlaw.ballistics.Ignition.usual(motor),
                io.burnlaw.ballistics.SimulationSettings.Disturbance.none())));
        Finding found = first(FaultMatrix.findings(clean, trace), FindingCode.THROAT_EROSION);
        double told = Double.parseDouble(found.message().replaceAll("(?s).*area grew by ([0-9.]+) %.*", "$1"));
        // 1.04^2 - 1 = 8.2 %; told to two digits, and the geometry is known to 0.02 mm
        assertEquals(8.2, told, 1);
    }

    private static Finding first(List<Finding> findings, FindingCode code) {
        return findings.stream()
                .filter(finding -> finding.code() == code)
                .findFirst()
                .orElseThrow(() -> new AssertionError(findings));
    }

    private static void assertContains(String part, Finding finding) {
        assertTrue(finding.message().contains(part), finding.message());
    }
}
