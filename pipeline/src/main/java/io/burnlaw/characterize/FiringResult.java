package io.burnlaw.characterize;

import io.burnlaw.campaign.InputFile;
import io.burnlaw.reduction.Reduction;
import java.util.List;
import java.util.Optional;

/**
 * What became of one row of the log.
 *
 * @param id          of the firing
 * @param formulation id of its propellant
 * @param trace       path of its record, where the log has one
 * @param note        the log's remark
 * @param input       the record with its checksum, where it could be read
 * @param readingNotes what was guessed while reading the record, as sentences
 * @param reduction   its rate points, or why there are none
 */
public record FiringResult(
        String id,
        String formulation,
        Optional<String> trace,
        Optional<String> note,
        Optional<InputFile> input,
        List<String> readingNotes,
        Reduction reduction) {

    public FiringResult {
        readingNotes = List.copyOf(readingNotes);
    }

    /**
     * The same firing with another reduction.
     *
     * @param other the reduction
     * @return the result
     */
    public FiringResult withReduction(Reduction other) {
        return new FiringResult(id, formulation, trace, note, input, readingNotes, other);
    }
}
