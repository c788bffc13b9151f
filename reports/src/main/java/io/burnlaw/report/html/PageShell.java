package io.burnlaw.report.html;

import gg.jte.Content;
import gg.jte.TemplateOutput;
import io.burnlaw.report.chart.Ink;
import io.burnlaw.report.document.DocumentFile;
import io.burnlaw.report.wording.ShownUnits;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The common parts of all pages: style sheet, script, and the policy (W3C Content Security Policy, level 3) under which
 * a browser runs that script, applies that style sheet, and fetches nothing at all.
 *
 * @param policy content of the meta element
 * @param units that the page shows when it is opened; absent for those in which it is written
 */
public record PageShell(
        String styleSheet,
        String script,
        String policy,
        @Nullable String units) {

    /** Texts and patterns of a script, which stay as they are; a division has blanks around it. */
    private static final Pattern KEPT = Pattern.compile("\"(?:[^\"\\\\\n]|\\\\.)*\"|'(?:[^'\\\\\n]|\\\\.)*'"
            + "|/(?![*/ ])(?:[^/\\\\\n\\[]|\\\\.|\\[[^\\]\n]*\\])+/[gimy]*");

    static final PageShell INDEX =
            make("report.js", "explorer.js", "grain.js", "without.js", "course.js", "compare.js", "units.js");

    static final PageShell FIRING = make("report.js", "course.js", "units.js");

    private static PageShell make(String... scripts) {
        String styleSheet = Ink.styleSheet() + resource("report.css");
        String script = Arrays.stream(scripts)
                .map(PageShell::resource)
                .map(PageShell::brief)
                .collect(Collectors.joining("", "\"use strict\";\n(function () {\n", "})();\n"));
        String policy = "default-src 'none'; style-src '" + hash(styleSheet) + "'; script-src '" + hash(script)
                + "'; img-src data:; base-uri 'none'; form-action 'none'";
        return new PageShell(styleSheet, script, policy, null);
    }

    PageShell in(ShownUnits shown) {
        return shown == ShownUnits.MPA ? this : new PageShell(styleSheet, script, policy, shown.key());
    }

    /** Without indents, comments and blanks, which every page would carry. */
    static String brief(String script) {
        String bare = script.replaceAll("(?m)^[ \\t]+", "").replaceAll("(?m)^//.*\n", "");
        StringBuilder brief = new StringBuilder();
        Matcher kept = KEPT.matcher(bare);
        int from = 0;
        while (kept.find()) {
            brief.append(withoutBlanks(bare.substring(from, kept.start()))).append(kept.group());
            from = kept.end();
        }
        return brief.append(withoutBlanks(bare.substring(from))).toString();
    }

    private static String withoutBlanks(String code) {
        return code.replaceAll("/\\*[^*]*\\*/", "")
                .replaceAll(" ?([=+*/<>?:&|,{}()\\[\\];!%]) ?", "$1")
                .replaceAll("([,{(;])\n", "$1");
    }

    /** The SHA-256 of a text in UTF-8, as hexadecimal digits. */
    static String sha256(String text) {
        return HexFormat.of().formatHex(digest(text));
    }

    private static String hash(String text) {
        return "sha256-" + Base64.getEncoder().encodeToString(digest(text));
    }

    private static byte[] digest(String text) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    private static String resource(String name) {
        try (InputStream in = PageShell.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the jar lacks " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException("the jar cannot be read: " + name, e);
        }
    }

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
}
