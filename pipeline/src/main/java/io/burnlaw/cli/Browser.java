package io.burnlaw.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Shows a page with whatever the machine opens pages with. */
final class Browser {

    private Browser() {}

    /**
     * Opens a page; where that is not possible, says so and goes on.
     *
     * @param page an HTML file
     * @param err  for the message
     */
    static void open(Path page, PrintWriter err) {
        String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        String address = page.toAbsolutePath().toUri().toString();
        List<String> command = system.contains("win")
                ? List.of("rundll32", "url.dll,FileProtocolHandler", address)
                : List.of(system.contains("mac") ? "open" : "xdg-open", address);
        try {
            new ProcessBuilder(command)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
        } catch (IOException none) {
            err.println(Terminal.safe("burnlaw: no browser could be started; open " + page + " yourself"));
        }
    }
}
