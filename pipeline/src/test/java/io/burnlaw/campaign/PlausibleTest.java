package io.burnlaw.campaign;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class PlausibleTest {

    @Test
    void theTableOfTheMethodsHasEachBoundWithItsReason() throws IOException {
        String methods = Files.readString(Path.of("..", "docs", "methods.md"));
        assertThat(Plausible.values())
                .allSatisfy(
                        bound -> assertThat(methods).contains("| " + bound.words() + " | " + bound.reason() + " |"));
    }

    @Test
    void whatIsNoNumberIsDoubted() {
        assertThat(Plausible.values()).allSatisfy(bound -> {
            assertThat(bound.doubt(Double.NaN)).isPresent();
            assertThat(bound.doubt(bound.low())).isEmpty();
            assertThat(bound.doubt(bound.high() * 1.001)).isPresent();
        });
    }
}
