package io.burnlaw.ballistics;

import io.burnlaw.trace.Trace;
import java.util.random.RandomGenerator;

/** A fault of a sensor, a logger or a firing, applied to a clean record. Faults can be combined. */
@FunctionalInterface
public interface Fault {

    /**
     * Does it.
     *
     * @param random where its random numbers come from
     * @return the record with the fault
     */
    Trace apply(Trace trace, RandomGenerator random);

    /**
     * This fault and then another one.
     *
     * @param next what comes after it
     */
    default Fault then(Fault next) {
        return (trace, random) -> next.apply(apply(trace, random), random);
    }

    /** {@return the fault that does nothing} */
    static Fault none() {
        return (trace, random) -> trace;
    }
}
