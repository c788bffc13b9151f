package io.burnlaw.reduction.point;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Rate and pressure along a burn, sample by sample, loaded on demand. */
public final class RatesAlong {

    private final KeptColumns columns;

    private RatesAlong(KeptColumns columns) {
        this.columns = columns;
    }

    /**
     * Takes them.
     *
     * @param samples in the order of time; none where they could not be had
     * @return the same
     */
    public static RatesAlong of(List<InstantaneousRate> samples) {
        return new RatesAlong(KeptColumns.of(
                column(samples, InstantaneousRate::time),
                column(samples, InstantaneousRate::web),
                column(samples, InstantaneousRate::pressure),
                column(samples, InstantaneousRate::rate)));
    }

    private static double[] column(List<InstantaneousRate> samples, ToDoubleFunction<InstantaneousRate> of) {
        return samples.stream().mapToDouble(of).toArray();
    }

    /** The same rates, kept elsewhere. */
    public RatesAlong keptIn(NumberStore store) {
        return new RatesAlong(columns.keptIn(store));
    }

    /** {@return whether there are none} */
    public boolean isEmpty() {
        return columns.rows() == 0;
    }

    /** {@return the samples, in the order of time} */
    public List<InstantaneousRate> samples() {
        double[][] read = columns.read();
        List<InstantaneousRate> samples = new ArrayList<>(columns.rows());
        for (int i = 0; i < columns.rows(); i++) {
            samples.add(new InstantaneousRate(read[0][i], read[1][i], read[2][i], read[3][i]));
        }
        return samples;
    }
}
