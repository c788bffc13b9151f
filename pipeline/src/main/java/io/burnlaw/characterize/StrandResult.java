package io.burnlaw.characterize;

import io.burnlaw.campaign.InputFile;
import io.burnlaw.campaign.Strand;
import io.burnlaw.reduction.strand.StrandReduction;
import java.util.List;
import java.util.Optional;

/**
 * What became of one strand.
 *
 * @param strand       its row
 * @param input        the record with its checksum, where it could be read
 * @param readingNotes what was guessed while reading the record, as sentences
 * @param reduction    its rate point, or why there is none
 */
public record StrandResult(
        Strand strand, Optional<InputFile> input, List<String> readingNotes, StrandReduction reduction) {

    public StrandResult {
        readingNotes = List.copyOf(readingNotes);
    }

    /**
     * The same strand with another reduction.
     *
     * @param other the reduction
     * @return the result
     */
    public StrandResult withReduction(StrandReduction other) {
        return new StrandResult(strand, input, readingNotes, other);
    }
}
