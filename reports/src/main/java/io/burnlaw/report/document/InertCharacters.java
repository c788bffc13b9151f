package io.burnlaw.report.document;

import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.CharacterEscapes;
import com.fasterxml.jackson.core.io.SerializedString;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Writes as escapes what could end a script element of a page ({@code <}), and what turns or hides the text around it:
 * direction marks, other invisible controls, line separators. The text that is read back is the same.
 */
final class InertCharacters extends CharacterEscapes {

    private static final long serialVersionUID = 1;

    private final int[] ascii = CharacterEscapes.standardAsciiEscapesForJSON();

    InertCharacters() {
        for (char escaped : new char[] {'<', '>', '&', 0x7f}) {
            ascii[escaped] = CharacterEscapes.ESCAPE_CUSTOM;
        }
    }

    @Override
    public int[] getEscapeCodesForAscii() {
        return ascii.clone();
    }

    @Override
    public @Nullable SerializableString getEscapeSequence(int character) {
        boolean inert = character == '<' || character == '>' || character == '&' || Invisible.is(character);
        return inert ? new SerializedString(String.format(Locale.ROOT, "\\u%04x", character)) : null;
    }
}
