package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.nio.file.Path;
import java.util.List;

/**
 * What a document does not carry, and the file that does.
 *
 * @param members as paths, such as {@code firings[].along}
 * @param file    beside the document
 * @param sha256  of that file
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record LeftOut(List<String> members, String file, String sha256) {

    /** The whole document of a report, as its page names it. */
    public static final String WHOLE = "burnlaw.json";

    /** What only the page of a firing shows: what goes over time, most of the bytes of a document, and the budget. */
    static final List<String> OF_A_PAGE = List.of("firings[].along", "firings[].trace_history", "firings[].budget");

    public LeftOut {
        members = List.copyOf(members);
    }

    /**
     * The same as seen from elsewhere.
     *
     * @param document path of the document that leaves it out
     * @return with the path of the file beside that document
     */
    public LeftOut from(Path document) {
        return new LeftOut(members, document.resolveSibling(file).toString().replace('\\', '/'), sha256);
    }
}
