package io.burnlaw.report.html;

import gg.jte.Content;
import gg.jte.TemplateOutput;
import io.burnlaw.report.document.DocumentFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;

/**
 * A document, or a part of one, as a page carries it: written into the page as it is made.
 *
 * @param document records of the document
 */
record Embedded(Object document) implements Content {

    @Override
    public void writeTo(TemplateOutput page) {
        try {
            DocumentFile.writeShort(document, new Writer() {
                @Override
                public void write(char[] text, int from, int count) {
                    page.writeContent(String.valueOf(text, from, count));
                }

                @Override
                public void flush() {}

                @Override
                public void close() {}
            });
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}
