package io.burnlaw.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** The kept inputs of the fuzz targets: seeds, and each input that once found a fault. */
class FuzzCorpusTest {

    static final Path CORPUS = Path.of("src", "test", "resources", "fuzz");

    static final Map<String, Consumer<byte[]>> TARGETS = new TreeMap<>(Map.of(
            "Quantity", QuantityTarget::fuzzerTestOneInput,
            "Trace", TraceTarget::fuzzerTestOneInput,
            "FiringLog", FiringLogTarget::fuzzerTestOneInput,
            "Campaign", CampaignTarget::fuzzerTestOneInput,
            "Document", DocumentTarget::fuzzerTestOneInput));

    @TestFactory
    Stream<DynamicTest> noKeptInputBreaksItsReader() {
        return TARGETS.entrySet().stream()
                .flatMap(target -> inputs(target.getKey())
                        .map(input -> DynamicTest.dynamicTest(
                                target.getKey() + ": " + input.getFileName(),
                                () -> target.getValue().accept(Files.readAllBytes(input)))));
    }

    private static Stream<Path> inputs(String target) {
        try (Stream<Path> files = Files.list(CORPUS.resolve(target))) {
            List<Path> sorted = files.sorted().toList();
            if (sorted.isEmpty()) {
                throw new IllegalStateException("no inputs for " + target);
            }
            return sorted.stream();
        } catch (IOException failed) {
            throw new IllegalStateException(failed);
        }
    }
}
