package io.burnlaw.validation;

import static io.burnlaw.validation.LongRuns.number;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The rows that were copied by hand add up and speak of what is there. */
class LongRunsTest {

    @Test
    void eachMutantOfThePackagesThatMakeNumbersHasOneEnd() {
        assertThat(LongRuns.mutations())
                .extracting(LongRuns.Mutations::of)
                .containsExactlyInAnyOrder("ratelaw", "regime", "reduction");
        assertThat(LongRuns.mutations())
                .allSatisfy(row -> assertThat(row.killed() + row.timedOut() + row.survived() + row.uncovered())
                        .as(row.of())
                        .isEqualTo(row.made()));
    }

    @Test
    void everyReaderWithKeptInputsWasFuzzed() throws Exception {
        try (var folders = Files.list(Path.of("src", "test", "resources", "fuzz"))) {
            assertThat(LongRuns.fuzzing())
                    .extracting(LongRuns.Fuzzing::target)
                    .containsExactlyInAnyOrderElementsOf(folders.map(
                                    archive -> archive.getFileName().toString().replace(".zip", ""))
                            .toList());
        }
    }

    @Test
    void eachMutantOfACampaignOrDocumentWasAnsweredAndTheGuardCaughtNone() {
        assertThat(LongRuns.mutants()).isNotEmpty().allSatisfy(row -> {
            assertThat(number(row, "exit_0") + number(row, "exit_1") + number(row, "exit_2"))
                    .isEqualTo(number(row, "mutants"));
            assertThat(number(row, "other") + number(row, "guarded") + number(row, "wrong"))
                    .isZero();
        });
    }
}
