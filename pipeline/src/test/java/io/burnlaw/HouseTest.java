package io.burnlaw;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What DEVELOPERS.md says of the code is true, and what people read is plain. */
class HouseTest {

    private static final Path TOP = Path.of("..");

    private static final Pattern CALL = Pattern.compile("(?m)^\\d+\\. `(\\w+)\\.(\\w+)`");

    /** A method of the class itself: declared at its first level, not only called. */
    private static final String DECLARED = "(?m)^    (?:(?:public|private|static) )*\\w[\\w<>, ]* %s\\(";

    private static final Pattern STRING = Pattern.compile("\"(?:[^\"\\\\\\n]|\\\\.)*\"");

    /** Of a template or a script, where words stand between quotation marks or without any. */
    private static final Pattern LINE = Pattern.compile("(?m)^(?!\\s*//).+$");

    /** Characters of a line of prose in the docs. */
    private static final int WIDEST = 130;

    private static final Pattern CONVERTED =
            Pattern.compile("burnlaw.(campaign|planning|comparison|prediction|publish|characterize|ratelaw)\\b");

    /** Riddles, and data that talk: each was in a page or message once. Plain words say the same. */
    private static final Pattern RIDDLE = Pattern.compile(
            "in vain|nobody fired|bears it|speaks? for|acquit|no promise|foretold|foretell|set aside by the log"
                    + "|has no say|what the law leaves|nobody (?:knows|says|stated|burns)|tells? most"
                    + "|(?:is|are|was|were) told|passed over|t(?:aken|ook) off|cannot be meant|held against|this is no\\b"
                    + "|\\band no (?:page|report|folder|campaign)\\b|in all likelihood|gives? back|nothing is left to"
                    + "|\\bwhoever\\b|knows? no\\b|says? nothing|is there already|look whether|told apart"
                    + "|\\bl(?:ies|ie) off\\b|\\bstands? (?:beside|in its|in the)\\b|predicted less|beside it\\b"
                    + "|\\bone row a\\b|what (?:came|became) of it|what is true stands|asked of this",
            Pattern.CASE_INSENSITIVE);

    @Test
    void theWayOfOneFiringIsAsListed() throws IOException {
        List<MatchResult> calls = CALL.matcher(Files.readString(TOP.resolve("DEVELOPERS.md")))
                .results()
                .toList();
        assertThat(calls).hasSizeBetween(20, 25);
        Map<String, Path> sources =
                sources().collect(Collectors.toMap(HouseTest::name, path -> path, (one, other) -> one));
        for (MatchResult call : calls) {
            assertThat(sources).containsKey(call.group(1) + ".java");
            assertThat(Files.readString(sources.get(call.group(1) + ".java")))
                    .as(call.group())
                    .containsPattern(DECLARED.formatted(call.group(2)));
        }
    }

    @Test
    void messagesAndDocsArePlain() throws IOException {
        List<String> riddles = new ArrayList<>();
        for (Path doc : docs()) {
            RIDDLE.matcher(Files.readString(doc))
                    .results()
                    .forEach(found -> riddles.add(name(doc) + ": " + found.group()));
        }
        for (Path source : Stream.concat(sources(), scripts()).toList()) {
            (source.toString().endsWith(".java") ? STRING : LINE)
                    .matcher(Files.readString(source))
                    .results()
                    .filter(text -> RIDDLE.matcher(text.group()).find())
                    .forEach(text -> riddles.add(name(source) + ": " + text.group()));
        }
        assertThat(riddles).isEmpty();
    }

    /** Tables and programs as they come; validation.md is written by the studies, a paragraph a line. */
    @Test
    void linesOfTheDocsCanBeRead() throws IOException {
        List<String> wide = new ArrayList<>();
        for (Path doc : docs()) {
            boolean program = false;
            for (String line : Files.readAllLines(doc)) {
                program ^= line.strip().startsWith("```");
                boolean prose = !program && !line.startsWith("|") && !line.startsWith("![");
                if (prose && line.length() > WIDEST && !name(doc).equals("validation.md")) {
                    wide.add(name(doc) + ": " + line);
                }
            }
        }
        assertThat(wide).isEmpty();
    }

    @Test
    void aPressureBecomesMegapascalInQuantityAlone() throws IOException {
        List<String> factors = new ArrayList<>();
        for (Path source : sources()
                .filter(path -> CONVERTED.matcher(path.toString()).find())
                .toList()) {
            if (Files.readString(source).matches("(?s).*[/*] ?1e-?6\\b.*")) {
                factors.add(name(source));
            }
        }
        assertThat(factors).isEmpty();
    }

    private static List<Path> docs() throws IOException {
        try (Stream<Path> docs = Files.list(TOP.resolve("docs"))) {
            return Stream.concat(docs, Stream.of(TOP.resolve("README.md"), TOP.resolve("DEVELOPERS.md")))
                    .filter(path -> path.toString().endsWith(".md"))
                    .sorted()
                    .toList();
        }
    }

    private static Stream<Path> scripts() throws IOException {
        try (Stream<Path> files = Files.walk(TOP.resolve("reports/src/main/resources"))) {
            return files.filter(path -> path.toString().endsWith(".js")).toList().stream();
        }
    }

    private static String name(Path path) {
        return path.getFileName().toString();
    }

    private static Stream<Path> sources() {
        return Stream.of("pipeline", "reports")
                .map(module -> TOP.resolve(module).resolve("src/main"))
                .flatMap(folder -> {
                    try (Stream<Path> files = Files.walk(folder)) {
                        return files
                                .filter(path -> path.toString().endsWith(".java")
                                        || path.toString().endsWith(".jte"))
                                .toList()
                                .stream();
                    } catch (IOException failed) {
                        throw new UncheckedIOException(failed);
                    }
                });
    }
}
