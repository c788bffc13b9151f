package io.burnlaw.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import nu.validator.client.EmbeddedValidator;
import org.xml.sax.SAXException;

/** Pages held against the HTML standard by the Nu HTML checker, the engine of the W3C's validator, without a network. */
final class HtmlCheck {

    /** The grammar of HTML is checked by recursion deeper than a usual stack. */
    private static final long STACK = 64L << 20;

    /**
     * What the checker does not know. It holds neither CSS Overflow 4 and SVG 2, nor hashes of a policy against what
     * they are of: that they match is another test, and that a browser runs the script a third.
     */
    private static final List<String> UNKNOWN_TO_IT = List.of(
            "CSS: \u201cpaint-order\u201d",
            "CSS: \u201cvector-effect\u201d",
            "CSS: Unknown pseudo-element or pseudo-class \u201c::details-content\u201d",
            "Inline style violates Content Security Policy",
            "Inline script violates Content Security Policy");

    private HtmlCheck() {}

    /** What is wrong with some pages: errors and warnings, each with its place. */
    static List<String> complaints(Map<String, String> pages) {
        List<String> complaints = new ArrayList<>();
        AtomicReference<Throwable> failure = new AtomicReference<>();
        Thread checking = new Thread(
                null,
                () -> {
                    EmbeddedValidator checker = new EmbeddedValidator();
                    checker.setOutputFormat(EmbeddedValidator.OutputFormat.JSON);
                    pages.forEach((path, page) ->
                            complaints(checker, page).forEach(each -> complaints.add(path + ": " + each)));
                },
                "HTML check",
                STACK);
        checking.setUncaughtExceptionHandler((thread, thrown) -> failure.set(thrown));
        checking.start();
        try {
            checking.join();
        } catch (InterruptedException e) {
            throw new AssertionError("interrupted", e);
        }
        if (failure.get() != null) {
            throw new AssertionError("the checker failed", failure.get());
        }
        return complaints;
    }

    private static List<String> complaints(EmbeddedValidator checker, String page) {
        try {
            String found = checker.validate(new ByteArrayInputStream(page.getBytes(StandardCharsets.UTF_8)));
            List<String> complaints = new ArrayList<>();
            for (JsonNode message : new JsonMapper().readTree(found).path("messages")) {
                String words = message.path("message").asText();
                boolean weighs = !message.path("type").asText().equals("info")
                        || message.path("subType").asText().equals("warning");
                if (weighs && UNKNOWN_TO_IT.stream().noneMatch(words::startsWith)) {
                    complaints.add("line " + message.path("lastLine").asInt() + ": " + words + ": "
                            + message.path("extract").asText());
                }
            }
            return complaints;
        } catch (IOException | SAXException e) {
            throw new AssertionError("the checker failed", e);
        }
    }
}
