package io.burnlaw.publish;

import static io.burnlaw.publish.PublishedQuantities.published;

import io.burnlaw.campaign.Choice;
import io.burnlaw.quantity.Unit;
import io.burnlaw.report.document.Finding;
import java.util.List;

/** Findings as they stand in the document. */
final class FindingDocument {

    private FindingDocument() {}

    /**
     * All findings, in their order.
     *
     * @param findings of a firing or a law
     * @return the same in the document's words
     */
    static List<Finding> of(List<io.burnlaw.finding.Finding> findings) {
        return findings.stream().map(FindingDocument::of).toList();
    }

    private static Finding of(io.burnlaw.finding.Finding finding) {
        return new Finding(
                finding.code().code(),
                Choice.word(finding.severity()),
                finding.code().title(),
                finding.message(),
                finding.code().advice(),
                published(finding.at(), Unit.SECOND));
    }
}
