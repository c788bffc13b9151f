package io.burnlaw.planning;

import java.util.List;

/** What must be read beside every number that could be drilled. */
public final class Cautions {

    /** That hold for every plan. */
    public static final List<String> ALWAYS = List.of(
            "These are predictions from a fitted law. They replace neither a proof test of the case, nor distance and shelter, nor the local law and a licensed person.",
            "A drilled hole is usually 0.02 to 0.1 mm larger than its drill (common practice, no source): measure the hole, and ask for the plan of what you measured.",
            "A grain that is warmer than those that were fired burns faster, at a higher pressure.",
            "Cracks, voids, a loose inhibitor or a blocked nozzle raise the pressure beyond any of these intervals.");

    private Cautions() {}
}
