package io.burnlaw.fuzz;

import io.burnlaw.publish.reading.PublishedFormulation;
import io.burnlaw.report.ReportWriter;
import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.document.DocumentReading;
import io.burnlaw.report.document.Formulation;

/** A published document, or a page that carries one: what is read can be written, tabled and compared. */
public final class DocumentTarget {

    private DocumentTarget() {}

    /**
     * Reads the bytes.
     *
     * @param data any
     */
    public static void fuzzerTestOneInput(byte[] data) {
        if (DocumentFile.read("burnlaw.json", data) instanceof DocumentReading.Read read) {
            Characterization document = read.document();
            byte[] again = DocumentFile.bytes(DocumentFile.text(document));
            if (!(DocumentFile.read("again.json", again) instanceof DocumentReading.Read same
                    && same.document().equals(document))) {
                throw new IllegalStateException("written and read again it is another document");
            }
            try {
                ReportWriter.files(document, ReportWriter.Options.DATA_ONLY);
                for (Formulation formulation : document.formulations()) {
                    PublishedFormulation.propellant(formulation, formulation.id());
                    PublishedFormulation.laws(formulation);
                }
            } catch (IllegalArgumentException edited) {
                // said of units and numbers that no run writes; the commands print it
                if (edited.getMessage() == null) {
                    throw edited;
                }
            }
        }
    }
}
