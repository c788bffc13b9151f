package io.burnlaw.fuzz;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The kept inputs with a few bytes changed, cut, doubled or replaced by words that readers stumble over. */
class MutatedInputsTest {

    /** Few each day; many for a search (-Dburnlaw.mutations=1000000). */
    private static final int MUTATIONS = Integer.getInteger("burnlaw.mutations", 400);

    private static final long SEED = Long.getLong("burnlaw.mutationSeed", 20260601L);

    private static final List<String> WORDS = List.of(
            "NaN",
            "null",
            "1e999",
            "-1",
            "0",
            "1e-320",
            "9223372036854775808",
            "\"",
            "\0",
            "\u202e",
            "\r",
            "[",
            "{",
            "]",
            "}",
            ",",
            ";",
            "\t",
            ":",
            "&a ",
            "*a ",
            "!!x ",
            "<!--",
            "°C",
            "±",
            "%",
            "",
            "true",
            "\"x\"",
            "[]",
            "{}",
            "1.5");

    @ParameterizedTest
    @ValueSource(strings = {"Quantity", "Trace", "FiringLog", "Campaign", "Document"})
    void aChangedInputIsReadOrRefused(String target) {
        run(target, MUTATIONS, SEED);
    }

    static void run(String target, int mutations, long seed) {
        List<byte[]> seeds = List.copyOf(FuzzCorpusTest.inputs(target).values());
        Consumer<byte[]> reader = FuzzCorpusTest.TARGETS.get(target);
        for (int i = 0; i < mutations; i++) {
            SplittableRandom random = new SplittableRandom(seed + i);
            byte[] input = seeds.get(random.nextInt(seeds.size()));
            for (int changes = 1 + random.nextInt(3); changes > 0; changes--) {
                input = changed(input, random);
            }
            try {
                reader.accept(input);
            } catch (RuntimeException | Error fault) {
                throw new AssertionError(
                        target + " with seed " + (seed + i) + ": " + new String(input, StandardCharsets.UTF_8), fault);
            }
        }
    }

    private static byte[] changed(byte[] input, SplittableRandom random) {
        int from = random.nextInt(input.length + 1);
        int to = Math.min(input.length, from + random.nextInt(1 + random.nextInt(40)));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(input, 0, from);
        switch (random.nextInt(5)) {
            case 0 -> out.write(random.nextInt(256));
            case 1 -> { // the piece is left out
            }
            case 2 -> {
                out.write(input, from, to - from);
                out.write(input, from, to - from);
            }
            case 3 -> {
                int other = random.nextInt(input.length + 1);
                out.write(input, other, Math.min(to - from, input.length - other));
            }
            default -> out.writeBytes(WORDS.get(random.nextInt(WORDS.size())).getBytes(StandardCharsets.UTF_8));
        }
        out.write(input, to, input.length - to);
        return out.toByteArray();
    }
}
