package io.burnlaw.reduction.balance;

import io.burnlaw.reduction.events.UniformTrace;

/**
 * Gas that left at the end of the burn at a pressure that cannot be distinguished from the zero.
 *
 * <p>In unchoked flow a few kilopascals over the ambient pressure pass a good part of the gas of the main burn. If they are
 * an error of the zero, that gas was none; if the end of the burn was taken where they begin, it is missing. Either way the
 * balance closes on a wrong mass, and the rate is off by as much. A slow motor with a long tail-off shows this; where the
 * flow is choked, or the tail-off short, it is nothing.
 */
public final class UnseenEnd {

    /** Less is never worth a line [1]. */
    private static final double LITTLE = 0.005;

    /** Cells at the end whose mean is the last level: so few, lest a steep tail-off is among them ... */
    private static final int FEWEST = 3;

    /** ... but so many that their noise is no more than the uncertainty of the zero, up to this share of them all [1]. */
    private static final double MOST = 0.02;

    /** A higher level than this share of the mean one is the tail-off itself, which the record shows [1]. */
    private static final double FAINT = 0.1;

    /** From so many times the last level down, the flow falls by half: the root of it. */
    private static final double FOURFOLD = 4;

    private UnseenEnd() {}

    /**
     * How much gas may be too much or too little in the balance: the flow at the last level, falling to nothing in the
     * time that it took to fall by half; all of that flow where the record never came back to its zero.
     *
     * @param inputs  of the mass balance, its record ending with the operation
     * @param zeroStd standard uncertainty of the zero [Pa]
     * @param noise   standard deviation of a cell [Pa]
     * @return share of the propellant at most [1]; 0 where it is nothing
     */
    public static double share(BurnInputs inputs, double zeroStd, double noise) {
        UniformTrace record = inputs.record();
        ChokedFlowFraction flow = inputs.flow();
        double end = record.time(record.size() - 1);
        double quiet = Math.min(MOST * record.size(), noise * noise / (zeroStd * zeroStd));
        double block = Math.max(FEWEST, quiet) * record.step();
        double usual = record.mean(record.time(0), end) - flow.ambient();
        double last = Math.min(record.mean(end - block, end) - flow.ambient(), FAINT * usual);
        double level = Math.max(last, 2 * zeroStd);
        double from = end;
        while (from - block > record.time(0) && record.mean(from - block, from) - flow.ambient() < FOURFOLD * level) {
            from -= block;
        }
        double whole = 0;
        for (int i = 0; i < record.size(); i++) {
            whole += flow.drivingPressure(record.pressure(i)) * record.step();
        }
        // A record that is not back at its zero may end with the error of the zero alone, all that while.
        double most = last > 3 * zeroStd ? 1 : 0.5;
        double share = most * flow.drivingPressure(flow.ambient() + level) * (end - from) / whole;
        return share > LITTLE ? share : 0;
    }
}
