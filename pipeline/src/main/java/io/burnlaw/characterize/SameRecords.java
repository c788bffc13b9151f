package io.burnlaw.characterize;

import io.burnlaw.campaign.InputFile;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** Sees records with the same bytes under two names: such a burn would count twice. Asked row by row, in their order. */
final class SameRecords {

    private record First(String row, String path) {}

    private final Map<String, First> byChecksum = new HashMap<>();

    /**
     * Looks at one row.
     *
     * @param row   id of the firing or strand
     * @param input its record, where it could be read
     * @return what to say where an earlier row has the same bytes
     */
    Optional<Finding> seen(String row, Optional<InputFile> input) {
        return input.flatMap(record -> Optional.ofNullable(
                        byChecksum.putIfAbsent(record.sha256(), new First(row, record.path())))
                .map(first -> Finding.of(
                        FindingCode.SAME_RECORD,
                        record.path() + " holds the same bytes as " + first.path() + ", the record of " + first.row()
                                + ".")));
    }
}
