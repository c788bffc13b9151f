package io.burnlaw.characterize;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What was guessed when the records were read; a guess that is the same for several records is reported once. */
public final class ReadingNotes {

    private static final int NAMED = 3;

    private final Map<String, List<String>> recordsByNote = new LinkedHashMap<>();
    private int records;

    /**
     * Adds what was said of one record.
     *
     * @param notes sentences, each with or without the path in front
     */
    public void add(String record, List<String> notes) {
        records++;
        for (String note : notes) {
            String prefix = record + ": ";
            String said = note.startsWith(prefix) ? note.substring(prefix.length()) : note;
            recordsByNote.computeIfAbsent(said, key -> new ArrayList<>()).add(record);
        }
    }

    /** {@return each sentence once, with the records that it holds for in front, in the order of first saying} */
    public List<String> merged() {
        return recordsByNote.entrySet().stream()
                .map(entry -> who(entry.getValue()) + ": " + entry.getKey())
                .toList();
    }

    private String who(List<String> named) {
        if (named.size() == records && records > 1) {
            return "all " + records + " records";
        }
        String first = String.join(", ", named.subList(0, Math.min(NAMED, named.size())));
        return named.size() > NAMED ? first + " and " + (named.size() - NAMED) + " more" : first;
    }
}
