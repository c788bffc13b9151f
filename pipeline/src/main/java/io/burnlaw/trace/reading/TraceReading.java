package io.burnlaw.trace.reading;

import io.burnlaw.campaign.Campaign.InputFile;
import io.burnlaw.campaign.Problem;
import io.burnlaw.finding.Finding;
import io.burnlaw.trace.Trace;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Result of reading one record: the trace in SI, or why there is none. */
public sealed interface TraceReading {

    /**
     * The record was read.
     *
     * @param trace    in SI
     * @param input    the file, with its checksum
     * @param findings what was seen of the file itself: gaps, repeated time stamps and the like
     * @param notes    what was guessed (columns, units, separators), as sentences
     */
    record Read(Trace trace, InputFile input, List<Finding> findings, List<String> notes) implements TraceReading {
        public Read {
            findings = List.copyOf(findings);
            notes = List.copyOf(notes);
        }
    }

    /**
     * The record cannot be used.
     *
     * @param findings at least one rejection, whose message names file, line, found, expected and mend
     * @param problem  the same for a terminal, where the file itself is wrong
     */
    record Unreadable(List<Finding> findings, Optional<Problem> problem) implements TraceReading {
        public Unreadable {
            findings = List.copyOf(findings);
            if (findings.isEmpty()) {
                throw new IllegalArgumentException("an unreadable record names at least one finding");
            }
        }
    }

    /**
     * Answers for both cases.
     *
     * @param read       the answer where it was read
     * @param unreadable the answer where it was not
     */
    default <T> T match(Function<Read, T> read, Function<Unreadable, T> unreadable) {
        return this instanceof Read r ? read.apply(r) : unreadable.apply((Unreadable) this);
    }
}
