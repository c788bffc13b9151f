package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * A file that the document was made from.
 *
 * @param path below the campaign folder
 * @param sha256 of its bytes
 * @param bytes its size
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record Input(String path, String sha256, long bytes) {}
