package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;

/**
 * What made the document.
 *
 * @param name always {@code burnlaw}
 * @param version of the tool
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record Generator(String name, String version) {}
