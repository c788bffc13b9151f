package io.burnlaw.report.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringWriter;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ShownWriterTest {

    /** Plain letters, what hides or turns its neighbours, halves of characters, whole ones of two halves. */
    private static final String[] PARTS = {
        "a",
        "é",
        "<",
        "\n",
        "\t",
        "\r",
        "\u0000",
        "\u202e",
        "\u200d",
        "\u2028",
        "\ud834",
        "\udd73",
        "\ud834\udd73",
        "😀"
    };

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void aTextInAnyPiecesIsShownAsTheWholeText(long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 400; i++) {
            text.append(PARTS[random.nextInt(PARTS.length)]);
        }
        StringWriter shown = new StringWriter();
        try (ShownWriter writer = new ShownWriter(shown)) {
            int from = 0;
            while (from < text.length()) {
                int count = Math.min(random.nextInt(4), text.length() - from);
                switch (random.nextInt(3)) {
                    case 0 -> writer.write(text.toString(), from, count);
                    case 1 -> writer.write(text.toString().toCharArray(), from, count);
                    default -> {
                        count = 1;
                        writer.write(text.charAt(from));
                    }
                }
                from += count;
            }
        }
        assertThat(shown.toString()).isEqualTo(Invisible.shownInLines(text.toString()));
    }
}
