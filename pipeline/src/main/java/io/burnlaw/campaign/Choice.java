package io.burnlaw.campaign;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** One word out of a closed list, written in kebab-case. */
public final class Choice {

    private Choice() {}

    /** {@return the constant that a word names, in upper or lower case; empty where the list has no such word} */
    public static <E extends Enum<E>> Optional<E> of(Class<E> type, String text) {
        String wanted = text.strip().toLowerCase(Locale.ROOT).replace('_', '-');
        return Arrays.stream(type.getEnumConstants())
                .filter(constant -> word(constant).equals(wanted))
                .findFirst();
    }

    /** {@return the words of a list as they are written, in its order} */
    public static <E extends Enum<E>> List<String> words(Class<E> type) {
        return Arrays.stream(type.getEnumConstants()).map(Choice::word).toList();
    }

    /** {@return a constant as it is written} */
    public static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
