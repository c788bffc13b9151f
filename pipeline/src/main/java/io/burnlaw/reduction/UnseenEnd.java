package io.burnlaw.reduction;

import io.burnlaw.reduction.balance.BurnInputs;
import io.burnlaw.reduction.balance.ChokedFlowFraction;
import io.burnlaw.reduction.events.UniformTrace;

/**
 * Gas that left at the end of the burn at a pressure that is not told from the zero.
 *
 * <p>In unchoked flow a few kilopascals over the ambient pressure pass a good part of the gas of the main burn. If they are
 * an error of the zero, that gas was none; if the end of the burn was taken where they begin, it is missing. Either way the
 * balance closes on a wrong mass, and the rate is off by as much. A slow motor with a long tail-off shows this; where the
 * flow is choked, or the tail-off short, it is nothing.
 */
final class UnseenEnd {

    /** Less is never worth a line [1]. */
    private static final double LITTLE = 0.005;

    /** The end of the operation whose mean is the last level [1]. */
    private static final double LAST = 0.01;

    /** From so many times the last level down, the flow falls by half: the root of it. */
    private static final double FOURFOLD = 4;

    private UnseenEnd() {}

    /**
     * How much gas may be too much or too little in the balance: the flow at the last level, falling to nothing in the
     * time that it took to fall by half.
     *
     * @param inputs  of the mass balance, its record ending with the operation
     * @param zeroStd standard uncertainty of the zero [Pa]
     * @return share of the propellant at most [1]; 0 where it is nothing
     */
    static double share(BurnInputs inputs, double zeroStd) {
        UniformTrace record = inputs.record();
        ChokedFlowFraction flow = inputs.flow();
        double end = record.time(record.size() - 1);
        double block = LAST * (end - record.time(0));
        double level = Math.max(record.mean(end - block, end) - flow.ambient(), 2 * zeroStd);
        double from = end;
        while (from - block > record.time(0) && record.mean(from - block, from) - flow.ambient() < FOURFOLD * level) {
            from -= block;
        }
        double whole = 0;
        for (int i = 0; i < record.size(); i++) {
            whole += flow.drivingPressure(record.pressure(i)) * record.step();
        }
        double share = 0.5 * flow.drivingPressure(flow.ambient() + level) * (end - from) / whole;
        return share > LITTLE ? share : 0;
    }
}
