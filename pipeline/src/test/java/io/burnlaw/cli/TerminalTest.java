package io.burnlaw.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TerminalTest {

    @ParameterizedTest
    @ValueSource(strings = {"\u001b[2J", "\u009b31m", "\r", "\b", "\u0007", "\u202e", "\u2066", "\u200f", "\u0000"})
    void nothingThatATerminalObeysComesThrough(String hostile) {
        assertThat(Terminal.safe("a" + hostile + "b"))
                .doesNotContain(hostile)
                .startsWith("a\ufffd")
                .endsWith("b");
    }

    @Test
    void aNumberKeepsItsSignOnATerminalOfAnyCharacterSet() {
        assertThat(Terminal.safe("n = \u22120.05")).isEqualTo("n = -0.05");
    }

    @ParameterizedTest
    @ValueSource(strings = {"plain", "two\nlines", "a\ttab", "r = a·Pⁿ ± 0.1 °C", "燃焼", "🚀"})
    void ordinaryTextStaysAsItIs(String text) {
        assertThat(Terminal.safe(text)).isEqualTo(text);
    }
}
