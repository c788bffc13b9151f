package io.burnlaw.report.html;

import java.io.IOException;
import java.io.OutputStream;

/** Takes the files of a report as they are made, several at the same time from several threads. */
@FunctionalInterface
public interface ReportFiles {

    /** What stands in a file. */
    @FunctionalInterface
    interface Body {

        /**
         * Writes it.
         *
         * @param out of the file; left open
         * @throws IOException if it cannot be written
         */
        void writeTo(OutputStream out) throws IOException;
    }

    /**
     * Takes a file.
     *
     * @param path below the report's folder, with slashes
     * @throws IOException if it cannot be written
     */
    void write(String path, Body body) throws IOException;
}
