package io.burnlaw.report.html;

import io.burnlaw.report.chart.Ink;
import io.burnlaw.report.wording.ShownUnits;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What all pages share: style sheet, script, and the policy (W3C Content Security Policy, level 3) under which a
 * browser runs that script, applies that style sheet, and fetches nothing at all.
 *
 * @param styleSheet text
 * @param script text
 * @param policy content of the meta element
 * @param units that the page shows when it is opened; absent for those in which it is written
 */
public record PageShell(
        String styleSheet,
        String script,
        String policy,
        @Nullable String units) {

    static final PageShell INDEX =
            make("report.js", "explorer.js", "without.js", "course.js", "compare.js", "units.js");

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

    /** Without indents and lines of comment, which every page would carry. */
    private static String brief(String script) {
        return script.replaceAll("(?m)^[ \\t]+", "").replaceAll("(?m)^//.*\n", "");
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
}
