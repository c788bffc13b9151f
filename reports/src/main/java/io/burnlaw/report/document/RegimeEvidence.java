package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Why that number of regimes.
 *
 * @param pValue of the selected count against one less, by seeded bootstrap
 * @param statistic sup-F
 * @param bicByCount for 1, 2, … regimes
 * @param sequentialAnswer regimes by sequential tests
 * @param criterionAnswer regimes by the information criterion
 * @param replicates of the bootstrap
 * @param rivals smooth curves that were tried
 * @param sentence the evidence in words
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record RegimeEvidence(
        @Nullable Double pValue,
        @Nullable Double statistic,
        List<Double> bicByCount,
        int sequentialAnswer,
        int criterionAnswer,
        int replicates,
        List<Rival> rivals,
        String sentence) {

    public RegimeEvidence {
        bicByCount = List.copyOf(bicByCount);
        rivals = List.copyOf(rivals);
    }
}
