package io.burnlaw.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class OutcomeTest {

    private final Outcome<Integer, String> had = new Outcome.Given<>(3);
    private final Outcome<Integer, String> not = new Outcome.Refused<>(List.of("too short", "too thin"));

    @Test
    void whatWasHadIsThereAndCanBeChanged() {
        assertThat(had.map(value -> 2 * value).orElseThrow()).isEqualTo(6);
        assertThat(had.reasons()).isEmpty();
        assertThat(not.map(value -> 2 * value).reasons()).containsExactly("too short", "too thin");
        assertThat(not.value()).isEmpty();
    }

    @Test
    void whoInsistsIsGivenAllReasons() {
        assertThatThrownBy(not::orElseThrow)
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("too short")
                .hasMessageContaining("too thin");
    }

    @Test
    void aRefusalHasAReason() {
        assertThatThrownBy(() -> new Outcome.Refused<>(List.of())).hasMessageContaining("at least one reason");
    }
}
