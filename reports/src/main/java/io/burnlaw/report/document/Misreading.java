package io.burnlaw.report.document;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonMappingException;
import java.io.IOException;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Why a text is no document, in the words of the format and not in those of the library. */
final class Misreading {

    /** What the library says of the input of which it must say nothing. */
    private static final Pattern SOURCE = Pattern.compile("Source: REDACTED \\([^)]*\\); ");

    private static final Pattern OF_THE_LIBRARY =
            Pattern.compile("Cannot (?:deserialize|coerce|construct|map)|JsonToken|java\\.|io\\.burnlaw|Exception");

    private Misreading() {}

    static DocumentReading of(String name, String json, JsonProcessingException e) {
        JsonLocation at = e.getLocation();
        String place = at == null || at.getLineNr() < 1 ? name : name + ":" + at.getLineNr() + ":" + at.getColumnNr();
        if (cutOff(json)) {
            return new DocumentReading.Refused(
                    place,
                    "the document is cut off",
                    "the end of the file",
                    "the rest of the document",
                    DocumentFile.AGAIN);
        }
        boolean syntax = e instanceof JsonParseException;
        String said = SOURCE.matcher(e.getOriginalMessage().lines().findFirst().orElse(""))
                .replaceAll("");
        // A record that refuses its values says why in words of its own; what the library says of a member is in words
        // of
        // Java, and its place says enough.
        String own = e.getCause() instanceof IllegalArgumentException refusal && refusal.getMessage() != null
                ? refusal.getMessage()
                : said;
        String message = syntax
                ? said
                : (OF_THE_LIBRARY.matcher(own).find()
                                ? own.contains("too large")
                                        ? "a number that is too large"
                                        : "a member of another kind, or one that is missing"
                                : own)
                        + way(e);
        return new DocumentReading.Refused(
                place,
                syntax ? "not JSON" : "it does not follow the format",
                Invisible.shown(message),
                syntax ? "JSON, RFC 8259" : "what burnlaw-characterization-1.schema.json says",
                DocumentFile.AGAIN);
    }

    /** Asked of the text alone: while records are made of it, the end of the input comes wrapped in many ways. */
    private static boolean cutOff(String json) {
        try (JsonParser parser = DocumentMapper.MAPPER.createParser(json)) {
            while (parser.nextToken() != null) {
                parser.skipChildren();
            }
            return false;
        } catch (JsonProcessingException e) {
            // The library has a class of its own for only some of the places where a text can end too early.
            return e.getLocation() != null
                    && e.getLocation().getCharOffset() >= json.stripTrailing().length();
        } catch (IOException e) {
            throw new IllegalStateException("reading a string", e);
        }
    }

    private static String way(JsonProcessingException e) {
        if (!(e instanceof JsonMappingException mapping) || mapping.getPath().isEmpty()) {
            return "";
        }
        return " (at "
                + mapping.getPath().stream()
                        .map(step -> step.getFieldName() == null ? "[" + step.getIndex() + "]" : step.getFieldName())
                        .collect(Collectors.joining("."))
                + ")";
    }
}
