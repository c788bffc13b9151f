package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;

/**
 * How the rate follows the fraction of an additive.
 *
 * @param additive its name
 * @param baseline id
 * @param formulations ids, by rising fraction
 * @param slope change of ln rate per per cent by mass
 * @param pValue that there is none
 * @param sentence in words
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record DoseTrend(
        String additive, String baseline, List<String> formulations, Quantity slope, double pValue, String sentence) {

    public DoseTrend {
        formulations = List.copyOf(formulations);
    }
}
