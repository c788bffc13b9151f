package io.burnlaw.simulation;

import io.burnlaw.quantity.Dimension;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** What a scenario can let go wrong in a firing. Times count from the igniter. */
enum FaultKey {
    /** Change of the zero over the record. */
    DRIFT(Dimension.PRESSURE),
    /** Reading of a sensor that the burn has warmed, at the burnout. */
    WARMED(Dimension.PRESSURE),
    /** Time constant with which that reading comes back. */
    WARMED_RETURN(Dimension.TIME),
    /** Time constant of a sensor that follows late. */
    LAG(Dimension.TIME),
    /** Amplitude of a sine of 50 Hz. */
    HUM(Dimension.PRESSURE),
    /** Further white noise. */
    NOISE(Dimension.PRESSURE),
    /** Further offset of the zero. */
    ZERO_OFFSET(Dimension.PRESSURE),
    /** How many samples stand far off. */
    SPIKES(Dimension.COUNT),
    /** Mean height of the spikes. */
    SPIKE_HEIGHT(Dimension.PRESSURE),
    /** Highest reading, gauge. */
    CLIPPING(Dimension.PRESSURE),
    /** Length of a gap in the record. */
    GAP(Dimension.TIME),
    /** When the gap begins. */
    GAP_AT(Dimension.TIME),
    /** Share of the samples that are lost. */
    LOST_SAMPLES(Dimension.FRACTION),
    /** Share of the interval by which samples come early or late. */
    UNEVEN_SAMPLING(Dimension.FRACTION),
    /** How far the clock is set back. */
    CLOCK_SET_BACK(Dimension.TIME),
    /** When. */
    CLOCK_SET_BACK_AT(Dimension.TIME),
    /** How many samples are repeated with their time stamps. */
    REPEATED_SAMPLES(Dimension.COUNT),
    /** When the record ends too early. */
    TRUNCATED_AT(Dimension.TIME),
    /** Only every so many samples are kept. */
    COARSE_SAMPLING(Dimension.COUNT),
    /** 1: nothing burns. */
    NO_IGNITION(Dimension.COUNT),
    /** Delay between the igniter's pulse and the burn. */
    HANG_FIRE(Dimension.TIME),
    /** Number of pulses in place of a burn. */
    CHUFFING(Dimension.COUNT),
    /** Time between two pulses. */
    CHUFFING_PERIOD(Dimension.TIME),
    /** Height of the pulses. */
    CHUFFING_HEIGHT(Dimension.PRESSURE),
    /** How long only a part of the surface burns. */
    DWELL(Dimension.TIME),
    /** That part. */
    DWELL_SHARE(Dimension.FRACTION),
    /** How long a part of the surface, or nothing, burns before the rest takes fire: the part stays ahead. */
    LATE_RISE(Dimension.TIME),
    /** That part. */
    LATE_RISE_SHARE(Dimension.FRACTION),
    /** How long something takes to pass the throat. */
    BLOCKAGE(Dimension.TIME),
    /** When it is in the middle of it. */
    BLOCKAGE_AT(Dimension.TIME),
    /** Share of the throat that it covers. */
    BLOCKAGE_SHARE(Dimension.FRACTION),
    /** When the case bursts. */
    BURST_AT(Dimension.TIME),
    /** Share by which the first of the web burns faster. */
    EROSIVE_START(Dimension.FRACTION);

    private final Dimension dimension;

    FaultKey(Dimension dimension) {
        this.dimension = dimension;
    }

    Dimension dimension() {
        return dimension;
    }

    String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    static List<String> keys() {
        return Arrays.stream(values()).map(FaultKey::key).toList();
    }
}
