package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;

/**
 * Where the laws of a formulation were measured, and the warning that goes with every use beyond.
 *
 * @param pressureLow lowest pressure that was fired and fitted, absolute
 * @param pressureHigh highest pressure that was fired and fitted, absolute
 * @param warning a sentence for everybody who reads a rate off the laws
 * @param beyond what in this document reaches beyond these pressures, in words
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record ValidRange(Quantity pressureLow, Quantity pressureHigh, String warning, List<String> beyond) {

    public ValidRange {
        beyond = List.copyOf(beyond);
    }
}
