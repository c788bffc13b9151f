package io.burnlaw.campaign.reading;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * The text that bytes stand for: UTF-8, or UTF-16 with its mark, or what spreadsheets of older systems write.
 *
 * @param text without a byte order mark
 * @param note what was assumed, if anything
 */
record DecodedText(String text, Optional<String> note) {

    private static final Charset OLDER = Charset.forName("windows-1252");

    /** Empty where the bytes are no text. */
    static Optional<DecodedText> of(byte[] bytes) {
        if (startsWith(bytes, 0xFF, 0xFE)) {
            return strict(bytes, 2, StandardCharsets.UTF_16LE).map(text -> plain(text, "it was read as UTF-16"));
        }
        if (startsWith(bytes, 0xFE, 0xFF)) {
            return strict(bytes, 2, StandardCharsets.UTF_16BE).map(text -> plain(text, "it was read as UTF-16"));
        }
        for (byte b : bytes) {
            if (b == 0) {
                return Optional.empty();
            }
        }
        int skip = startsWith(bytes, 0xEF, 0xBB, 0xBF) ? 3 : 0;
        return strict(bytes, skip, StandardCharsets.UTF_8)
                .map(text -> new DecodedText(text, Optional.empty()))
                .or(() -> strict(bytes, skip, OLDER)
                        .map(text -> plain(text, "it is not UTF-8 and was read as Windows-1252")));
    }

    private static DecodedText plain(String text, String note) {
        return new DecodedText(text, Optional.of(note));
    }

    private static boolean startsWith(byte[] bytes, int... mark) {
        for (int i = 0; i < mark.length; i++) {
            if (bytes.length <= i || (bytes[i] & 0xFF) != mark[i]) {
                return false;
            }
        }
        return true;
    }

    private static Optional<String> strict(byte[] bytes, int from, Charset charset) {
        try {
            return Optional.of(charset.newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes, from, bytes.length - from))
                    .toString());
        } catch (CharacterCodingException e) {
            return Optional.empty();
        }
    }
}
