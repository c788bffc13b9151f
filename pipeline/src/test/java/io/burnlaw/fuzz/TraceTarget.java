package io.burnlaw.fuzz;

import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.trace.Trace;
import io.burnlaw.trace.TraceConditioning;
import io.burnlaw.trace.reading.TraceReader;
import io.burnlaw.trace.reading.TraceReading;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The record of a firing: text, packed text, a workbook, a Matlab file, or none of them. */
public final class TraceTarget {

    private static final Scratch SCRATCH = new Scratch(Map.of());
    private static final TraceSettings GAUGE = new TraceSettings(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.of(PressureKind.GAUGE),
            List.of(),
            OptionalDouble.empty(),
            OptionalDouble.empty());

    private TraceTarget() {}

    /**
     * Reads the bytes and conditions what was read.
     *
     * @param data any
     */
    public static void fuzzerTestOneInput(byte[] data) {
        SCRATCH.write("trace.csv", data);
        TraceReading reading = TraceReader.read(SCRATCH.folder(), "F", "trace.csv", GAUGE, 101_325);
        if (reading instanceof TraceReading.Read read) {
            Trace trace = read.trace();
            for (int i = 1; i < trace.size(); i++) {
                if (!(trace.time(i) > trace.time(i - 1))) {
                    throw new IllegalStateException("time stands still at sample " + i);
                }
            }
            TraceConditioning.condition(trace, 101_325, GAUGE);
        }
    }
}
