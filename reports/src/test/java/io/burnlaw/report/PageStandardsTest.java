package io.burnlaw.report;

import static org.assertj.core.api.Assertions.assertThat;

import io.burnlaw.report.document.Characterization;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every page and picture of a report, held against the standards and against what a report promises. */
class PageStandardsTest {

    private static final Pattern ADDRESS = Pattern.compile("(?i)(?:https?:)?//[a-z0-9]");

    static Stream<Named<Characterization>> documents() {
        return Stream.of(
                Named.of("rich", SampleDocument.rich()),
                Named.of("bare", SampleDocument.bare()),
                Named.of("hostile", HostileDocument.document()));
    }

    @ParameterizedTest
    @MethodSource("documents")
    void everyPageIsValid(Characterization document) {
        assertThat(HtmlCheck.complaints(pages(document))).isEmpty();
    }

    @Test
    void theCheckerSeesAFaultAmongTheRest() {
        String page = pages(SampleDocument.bare()).get("index.html");
        assertThat(HtmlCheck.complaints(Map.of("page", page.replace("<main ", "<main><p><div></p><main "))))
                .isNotEmpty();
    }

    @ParameterizedTest
    @MethodSource("documents")
    void everyPictureIsWellFormed(Characterization document) throws Exception {
        for (Map.Entry<String, String> file : files(document).entrySet()) {
            if (file.getKey().endsWith(".svg")) {
                DocumentBuilderFactory.newDefaultInstance()
                        .newDocumentBuilder()
                        .parse(new java.io.ByteArrayInputStream(file.getValue().getBytes(StandardCharsets.UTF_8)));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("documents")
    void nothingIsFetched(Characterization document) {
        pages(document).forEach((path, text) -> {
            Document page = Jsoup.parse(text);
            assertThat(page.select("[src], link[href]:not([href^=data:]), object, embed, iframe, video, audio, base"))
                    .as(path)
                    .isEmpty();
            assertThat(page.select("style").html())
                    .as(path)
                    .doesNotContain("@import")
                    .doesNotContain("@font-face")
                    .doesNotContain("url(");
            for (Element link : page.select("a[href]")) {
                assertThat(link.attr("href"))
                        .as(path)
                        .doesNotContainPattern(ADDRESS)
                        .doesNotContain("javascript:");
            }
        });
    }

    @ParameterizedTest
    @MethodSource("documents")
    void thePolicyAllowsThisScriptAndThisStyleSheetAndNothingElse(Characterization document) throws Exception {
        for (Map.Entry<String, String> file : pages(document).entrySet()) {
            Document page = Jsoup.parse(file.getValue());
            String policy =
                    page.select("meta[http-equiv=Content-Security-Policy]").attr("content");
            Element script = page.select("script:not([type])").first();
            assertThat(script).isNotNull();
            assertThat(policy)
                    .startsWith("default-src 'none';")
                    .contains("style-src '" + hash(page.select("style").first().data()) + "'")
                    .contains("script-src '" + hash(script.data()) + "'")
                    .contains("base-uri 'none'")
                    .contains("form-action 'none'")
                    .doesNotContain("unsafe");
            assertThat(page.select("script:not([type])")).hasSize(1);
            assertThat(page.select("[style]"))
                    .as("the policy would drop inline styles")
                    .isEmpty();
            assertThat(page.select("*").stream()
                            .flatMap(element -> element.attributes().asList().stream())
                            .filter(attribute -> attribute.getKey().startsWith("on")))
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("documents")
    void everyLinkOfAPageLeadsSomewhere(Characterization document) {
        Map<String, String> files = files(document);
        pages(document).forEach((path, text) -> {
            Document page = Jsoup.parse(text);
            for (Element link : page.select("a[href]")) {
                String href = link.attr("href");
                if (href.startsWith("#")) {
                    assertThat(page.getElementById(href.substring(1)))
                            .as(path + " " + href)
                            .isNotNull();
                } else {
                    String target = java.nio.file.Path.of(path)
                            .resolveSibling(href)
                            .normalize()
                            .toString();
                    assertThat(files).as(path + " " + href).containsKey(target);
                }
            }
        });
    }

    @ParameterizedTest
    @MethodSource("documents")
    void everyPictureSaysWhatItShows(Characterization document) {
        pages(document).forEach((path, text) -> {
            for (Element picture : Jsoup.parse(text).select("svg:not(svg svg)")) {
                boolean told = picture.attr("role").equals("img")
                        && picture.attr("aria-label").length() > 20;
                assertThat(told || picture.attr("aria-hidden").equals("true"))
                        .as(path)
                        .isTrue();
            }
        });
    }

    private static Map<String, String> pages(Characterization document) {
        Map<String, String> files = files(document);
        files.keySet().removeIf(path -> !path.endsWith(".html"));
        return files;
    }

    private static Map<String, String> files(Characterization document) {
        return new java.util.TreeMap<>(ReportWriter.files(document, ReportWriter.Options.EVERYTHING));
    }

    private static String hash(String text) throws Exception {
        return "sha256-"
                + Base64.getEncoder()
                        .encodeToString(
                                MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    }
}
