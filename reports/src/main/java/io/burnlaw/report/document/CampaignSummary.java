package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was measured, by whom, and how.
 *
 * @param title what people read
 * @param preparedBy who made it
 * @param licence SPDX identifier of the data licence
 * @param note the campaign's remark
 * @param ambientPressure absolute
 * @param ambientAssumed whether nobody stated it
 * @param referenceTemperature to which rates are referred
 * @param casePressureLimit of the case, gauge
 * @param safetyFactor by which planned pressures stay below it [1]
 * @param reductionMethod such as {@code mass-balance}
 * @param weighting of the fits
 * @param confidence level of all intervals [1]
 * @param seed of every random number
 * @param notes what was guessed or assumed while reading, as sentences
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record CampaignSummary(
        String title,
        @Nullable String preparedBy,
        @Nullable String licence,
        @Nullable String note,
        Quantity ambientPressure,
        boolean ambientAssumed,
        @Nullable Quantity referenceTemperature,
        @Nullable Quantity casePressureLimit,
        @Nullable Double safetyFactor,
        String reductionMethod,
        String weighting,
        double confidence,
        long seed,
        List<String> notes) {

    public CampaignSummary {
        notes = List.copyOf(notes);
    }
}
