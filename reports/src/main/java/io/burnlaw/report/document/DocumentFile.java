package io.burnlaw.report.document;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import io.burnlaw.report.document.Characterization.Input;
import io.burnlaw.report.document.Characterization.LeftOut;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads and writes burnlaw.json, and reads it from a page that contains it. */
public final class DocumentFile {

    /** The id of the script element in which a page carries its document. */
    public static final String ELEMENT_ID = "burnlaw-document";

    static final String AGAIN = "take an unedited burnlaw.json of a run, or its page index.html";

    private static final int MEGABYTE = 1_000_000;

    /** Some ten thousand firings with their traces; a longer file is taken for something else. */
    private static final int LONGEST = 400 * MEGABYTE;

    private DocumentFile() {}

    /** Loads what writing a document needs. */
    public static void prepare() {
        JsonWriter.prepare(Characterization.class);
    }

    /**
     * The document as text: members in the order of the records, doubles in full, {@code \n}, and a line end last. The
     * text may stand in an HTML script element as it is.
     *
     * @param document the document, or a part of it
     * @return JSON
     * @throws IllegalArgumentException if a number is NaN or infinite, with the way to it: a fault of the caller
     */
    public static String text(Object document) {
        StringWriter text = new StringWriter();
        try {
            write(document, text);
        } catch (IOException e) {
            throw new IllegalStateException("writing a string", e);
        }
        return text.toString();
    }

    /**
     * Writes the document as {@link #text} gives it, without holding the whole text.
     *
     * @param document the document, or a part of it
     * @param out      left open
     * @throws IOException if it cannot be written
     * @throws IllegalArgumentException if a number is NaN or infinite, with the way to it: a fault of the caller
     */
    public static void write(Object document, Writer out) throws IOException {
        JsonWriter.write(document, out);
        out.write("\n");
    }

    /**
     * Writes the document in as few bytes as JSON needs, for a page.
     *
     * @param document the document, or a part of it
     * @param out      left open
     * @throws IOException if it cannot be written
     * @throws IllegalArgumentException if a number is NaN or infinite, with the way to it: a fault of the caller
     */
    public static void writeShort(Object document, Writer out) throws IOException {
        JsonWriter.write(document, out, false);
    }

    /**
     * Reads a document from burnlaw.json or from an HTML page that embeds it. Where the page names what it leaves out, and
     * the burnlaw.json of that checksum is beside it, that file is read instead.
     *
     * @param file either
     * @return the document, or why the file is none
     */
    public static DocumentReading read(Path file) {
        return read(file, true);
    }

    private static DocumentReading whole(Path file, DocumentReading.Read page) {
        List<LeftOut> missing = page.document().leftOut();
        // no other name is looked for: a page that somebody sent must not have files read by their names
        Path beside = file.resolveSibling(LeftOut.WHOLE);
        if (missing == null || !Files.isRegularFile(beside)) {
            return page;
        }
        return read(beside, false) instanceof DocumentReading.Read whole
                        && missing.stream()
                                .anyMatch(each -> each.file().equals(LeftOut.WHOLE)
                                        && each.sha256().equals(whole.file().sha256()))
                ? whole
                : page;
    }

    private static DocumentReading read(Path file, boolean lookBeside) {
        String name = file.toString();
        try (InputStream in = Files.newInputStream(file)) {
            // one byte more than allowed tells a file that is too long, whatever its size is said to be
            byte[] bytes = in.readNBytes(LONGEST + 1);
            if (bytes.length > LONGEST) {
                return tooLong(name);
            }
            DocumentReading reading = read(name, bytes);
            return lookBeside && isPage(bytes) && reading instanceof DocumentReading.Read page
                    ? whole(file, page)
                    : reading;
        } catch (IOException e) {
            return new DocumentReading.Refused(
                    name,
                    "the file cannot be read",
                    reason(e),
                    "a text file in UTF-8",
                    "check the path and its permissions");
        }
    }

    private static boolean isPage(byte[] bytes) {
        int first = 0;
        while (first < bytes.length && Character.isWhitespace(bytes[first])) {
            first++;
        }
        return first < bytes.length && bytes[first] == '<';
    }

    private static DocumentReading tooLong(String name) {
        return new DocumentReading.Refused(
                name,
                "the file is too long for a document",
                "more than " + LONGEST / MEGABYTE + " MB",
                "a document of " + LONGEST / MEGABYTE + " MB at most",
                AGAIN);
    }

    /**
     * Reads a document from the bytes of its file.
     *
     * @param name  how messages call it
     * @param bytes of burnlaw.json or of a page
     * @return the document, or why the bytes are none
     */
    public static DocumentReading read(String name, byte[] bytes) {
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return read(name, text, new Input(name, sha256(bytes), bytes.length));
        } catch (CharacterCodingException e) {
            return new DocumentReading.Refused(
                    name, "not a burnlaw document", reason(e), "a text file in UTF-8", AGAIN);
        }
    }

    private static DocumentReading read(String name, String text, Input file) {
        String json = text.stripLeading().startsWith("<") ? embedded(text) : text;
        if (json == null) {
            return new DocumentReading.Refused(
                    name,
                    "the page contains no document",
                    "no element " + ELEMENT_ID,
                    "a page that burnlaw wrote",
                    AGAIN);
        }
        try {
            String format = format(json);
            if (!Characterization.FORMAT.equals(format)) {
                return otherFormat(name, format);
            }
            return new DocumentReading.Read(DocumentMapper.MAPPER.readValue(json, Characterization.class), file);
        } catch (JsonProcessingException e) {
            return Misreading.of(name, json, e);
        } catch (IOException e) {
            throw new IllegalStateException("reading a string", e);
        }
    }

    private static DocumentReading otherFormat(String name, @Nullable String format) {
        boolean newer = format != null && format.startsWith("burnlaw-characterization/");
        return new DocumentReading.Refused(
                name,
                newer ? "a document of another version" : "not a burnlaw document",
                format == null ? "no member format" : "format " + Invisible.shown(format),
                "format " + Characterization.FORMAT,
                newer ? "read it with the version of burnlaw that wrote it, or a newer one" : AGAIN);
    }

    /** The member format, wherever it stands, without building the rest. */
    private static @Nullable String format(String json) throws IOException {
        try (JsonParser parser = DocumentMapper.MAPPER.createParser(json)) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                return null;
            }
            while (parser.nextToken() == JsonToken.FIELD_NAME) {
                boolean wanted = parser.currentName().equals("format");
                if (parser.nextToken() == JsonToken.VALUE_STRING && wanted) {
                    return parser.getText();
                }
                parser.skipChildren();
            }
            return null;
        }
    }

    private static @Nullable String embedded(String page) {
        int id = page.indexOf("id=\"" + ELEMENT_ID + "\"");
        int start = id < 0 ? -1 : page.indexOf('>', id);
        int end = start < 0 ? -1 : page.indexOf("</script>", start);
        return end < 0 ? null : page.substring(start + 1, end);
    }

    private static String reason(IOException e) {
        return e instanceof CharacterCodingException
                ? "bytes that are no UTF-8"
                : e instanceof NoSuchFileException ? "no such file" : String.valueOf(e.getMessage());
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /**
     * The bytes of a text as all files of a report hold it.
     *
     * @param text any
     * @return UTF-8
     */
    public static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
