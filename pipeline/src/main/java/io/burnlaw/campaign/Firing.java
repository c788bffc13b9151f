package io.burnlaw.campaign;

import io.burnlaw.quantity.Measured;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One row of the firing log.
 *
 * @param id                  unique in the campaign
 * @param trace               path of the record below the campaign folder, with {@code /}; empty where the burn was timed only
 * @param burnTime            by video, sound or stopwatch, where there is no record [s]
 * @param pulsed              whether the log says that it burned in pulses
 * @param throatDiameter      before the firing [m]
 * @param throatDiameterAfter after it [m]
 * @param exitDiameter        of the nozzle [m]
 * @param propellantMass      expelled propellant [kg]
 * @param igniterGas          gas of the starter charge [kg], by the row or for all firings
 * @param grainTemperature    of the grain when fired [K]
 * @param ambientPressure     on the day [Pa, absolute]: the row's, the campaign's, or the standard atmosphere
 * @param chamberVolume       of the empty case without grain [m3]
 * @param setAside            why it is not to be used; empty where it is
 * @param row                 line of the log, for messages
 */
public record Firing(
        String id,
        String formulation,
        Optional<String> trace,
        Optional<Measured> burnTime,
        boolean pulsed,
        GrainDescription grain,
        Measured throatDiameter,
        Optional<Measured> throatDiameterAfter,
        Optional<Measured> exitDiameter,
        Optional<Measured> propellantMass,
        Optional<Measured> igniterGas,
        OptionalDouble grainTemperature,
        double ambientPressure,
        Optional<Measured> chamberVolume,
        Optional<String> setAside,
        Optional<String> note,
        TraceSettings settings,
        int row) {

    /**
     * The same firing with an igniter.
     *
     * @param gas that it gave [kg]
     */
    public Firing withIgniterGas(Measured gas) {
        return with(grain, throatDiameter, throatDiameterAfter, exitDiameter, Optional.of(gas));
    }

    /**
     * The same firing with other lengths.
     *
     * @param otherThroat diameter before [m]
     * @param otherAfter  diameter after [m]
     * @param otherExit   diameter [m]
     */
    public Firing withLengths(
            GrainDescription otherGrain,
            Measured otherThroat,
            Optional<Measured> otherAfter,
            Optional<Measured> otherExit) {
        return with(otherGrain, otherThroat, otherAfter, otherExit, igniterGas);
    }

    private Firing with(
            GrainDescription otherGrain,
            Measured otherThroat,
            Optional<Measured> otherAfter,
            Optional<Measured> otherExit,
            Optional<Measured> otherGas) {
        return new Firing(
                id,
                formulation,
                trace,
                burnTime,
                pulsed,
                otherGrain,
                otherThroat,
                otherAfter,
                otherExit,
                propellantMass,
                otherGas,
                grainTemperature,
                ambientPressure,
                chamberVolume,
                setAside,
                note,
                settings,
                row);
    }
}
