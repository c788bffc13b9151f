package io.burnlaw.report.html;

import java.io.IOException;
import java.io.OutputStream;

/** Receives the files of a report as they are made, from several threads at the same time. */
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
