package io.burnlaw.publish;

import java.util.List;

/** What must be read beside numbers that somebody could act on. */
final class Cautions {

    /** Common practice, no source. */
    static final List<String> ALWAYS = List.of(
            "These numbers describe the firings that were measured. They replace neither a proof test of the case, nor"
                    + " distance and shelter, nor the local law and a licensed person.",
            "Do not use a law beyond the pressures that it was measured at: the exponent may rise above them, and a"
                    + " motor may burst.",
            "A propellant with cracks, bubbles or a bad bond to the case obeys no law: its surface is not what the"
                    + " geometry says.",
            "A throat that is partly blocked, or smaller than measured, raises the pressure by far more than in"
                    + " proportion; the more so the larger the exponent.",
            "After a misfire or a motor that pulses, keep away for the waiting time of your range, and treat the grain"
                    + " as live.");

    private Cautions() {}
}
