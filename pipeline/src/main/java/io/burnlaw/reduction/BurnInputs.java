package io.burnlaw.reduction;

/**
 * Everything that the mass balance of one burn is made of, so that the effect of each on the rate can be tried.
 *
 * @param record            pressures [Pa, absolute] between begin and end of operation
 * @param grain             the grain, turned round
 * @param density           of the propellant as it lies in the grain [kg/m3]: mass over volume where the mass is known
 * @param throatBefore      throat area before [m2]
 * @param throatAfter       throat area after [m2]
 * @param ambient           [Pa, absolute]
 * @param specificHeatRatio of the gas [1]
 * @param chamberVolume     of the empty case [m3], more than the grain's
 */
record BurnInputs(
        EvenRecord record,
        WebTable grain,
        double density,
        double throatBefore,
        double throatAfter,
        double ambient,
        double specificHeatRatio,
        double chamberVolume) {

    BurnInputs withRecord(EvenRecord other) {
        return new BurnInputs(
                other, grain, density, throatBefore, throatAfter, ambient, specificHeatRatio, chamberVolume);
    }

    BurnInputs withThroatAfter(double other) {
        return new BurnInputs(record, grain, density, throatBefore, other, ambient, specificHeatRatio, chamberVolume);
    }

    BurnInputs withChamberVolume(double other) {
        return new BurnInputs(record, grain, density, throatBefore, throatAfter, ambient, specificHeatRatio, other);
    }

    BurnInputs withSpecificHeatRatio(double other) {
        return new BurnInputs(record, grain, density, throatBefore, throatAfter, ambient, other, chamberVolume);
    }
}
