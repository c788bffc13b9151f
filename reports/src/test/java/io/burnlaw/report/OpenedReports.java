package io.burnlaw.report;

import io.burnlaw.report.document.Characterization;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** Reports in a browser, opened as files: the usual way to read one. */
abstract class OpenedReports {

    @TempDir
    static Path work;

    static Browser browser;

    @BeforeAll
    static void openABrowser() throws IOException {
        browser = new Browser(work.resolve("profile"));
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    @BeforeEach
    void lookAtAScreen() {
        browser.media("", "light");
    }

    static void write(Characterization document, String folder) throws IOException {
        ReportWriter.write(document, work.resolve(folder), ReportWriter.Options.EVERYTHING);
    }

    /** The page of that name, or the first one in the folder of that name. */
    static Path file(String page) throws IOException {
        Path found = work.resolve(page);
        if (Files.isRegularFile(found)) {
            return found;
        }
        try (Stream<Path> all = Files.list(found)) {
            return all.min(Comparator.naturalOrder()).orElseThrow();
        }
    }

    /** One page of each kind: all of them would be more of the same. */
    static Stream<String> pages() {
        return Stream.of(
                "rich/index.html",
                "rich/firings/OR-03.html",
                "rich/firings/OR-09.html",
                "rich/firings/OS-1.html",
                "bare/index.html",
                "hostile/index.html",
                "hostile/firings");
    }
}
