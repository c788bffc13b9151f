package io.burnlaw.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** The kept inputs of the fuzz targets: seeds, and each input that once found a fault. */
class FuzzCorpusTest {

    private static final Path CORPUS = Path.of("src", "test", "resources", "fuzz");

    static final Map<String, Consumer<byte[]>> TARGETS = new TreeMap<>(Map.of(
            "Quantity", QuantityTarget::fuzzerTestOneInput,
            "Trace", TraceTarget::fuzzerTestOneInput,
            "FiringLog", FiringLogTarget::fuzzerTestOneInput,
            "Campaign", CampaignTarget::fuzzerTestOneInput,
            "Document", DocumentTarget::fuzzerTestOneInput));

    @TestFactory
    Stream<DynamicTest> noKeptInputBreaksItsReader() {
        return TARGETS.entrySet().stream()
                .flatMap(target -> inputs(target.getKey()).entrySet().stream()
                        .map(input -> DynamicTest.dynamicTest(
                                target.getKey() + ": " + input.getKey(),
                                () -> target.getValue().accept(input.getValue()))));
    }

    /** One archive a target, its files in the order of their names. */
    static Map<String, byte[]> inputs(String target) {
        Map<String, byte[]> inputs = new TreeMap<>();
        try (ZipInputStream archive = new ZipInputStream(Files.newInputStream(CORPUS.resolve(target + ".zip")))) {
            for (ZipEntry entry = archive.getNextEntry(); entry != null; entry = archive.getNextEntry()) {
                inputs.put(entry.getName(), archive.readAllBytes());
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        if (inputs.isEmpty()) {
            throw new IllegalStateException("no inputs for " + target);
        }
        return inputs;
    }
}
