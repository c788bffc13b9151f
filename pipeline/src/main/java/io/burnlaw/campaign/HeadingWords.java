package io.burnlaw.campaign;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** The headings that people write in a firing log in place of the names of its columns. Common practice, no source. */
final class HeadingWords {

    /** These can mean nothing else. */
    private static final Map<String, Pattern> CERTAIN = new LinkedHashMap<>();

    /** These may mean the column: its owner is asked. */
    private static final Map<String, Pattern> LIKELY = new LinkedHashMap<>();

    /** Letters that mean a dimension only where a unit stands beside them: ID is the name of a firing, too. */
    private static final Pattern LETTERS = Pattern.compile("i ?d|o ?d|d ?t|d ?e|d|l");

    static {
        certain("throat_diameter_after", "(nozzle )?throat diameter (after|post)( (firing|burn))?");
        certain("throat_diameter", "(nozzle )?throat diameter|diameter (nozzle )?throat|d throat");
        certain("exit_diameter", "(nozzle )?exit diameter|diameter (nozzle )?exit|d exit");
        certain("outer_diameter", "grain (outer|outside) diameter|(outer|outside) diameter|d outer");
        certain("core_diameter", "(grain )?core diameter|d core");
        certain("segments", "(number|no|nr|num|n) (of )?segments");
        certain("propellant_mass", "propellant weight|mass (of )?propellant|m propellant");
        likely("throat_diameter_after", "(nozzle )?throat( diameter)? (after|post|end|final|eroded).*");
        likely("throat_diameter", "(nozzle )?throat( (size|bore|d|before))?|d ?t|nozzle( diameter| bore)?");
        likely("exit_diameter", "(nozzle )?exit( .*)?|d ?e|nozzle (mouth|outlet)( .*)?");
        likely("outer_diameter", "o ?d|grain (od|diameter)|diameter|d|outer");
        likely("core_diameter", "i ?d|core( size)?|bore( diameter)?|port( diameter)?|(grain )?(inner|inside) diameter");
        likely("segment_length", "(grain |total )?length|l");
        likely("segments", "grains|segs|no grains|number of grains");
        likely("propellant_mass", "propellant|prop|(grain |prop )?(mass|weight)");
        likely("grain_temperature", "(grain |motor )?temp(erature)?");
    }

    private HeadingWords() {}

    /** {@return the column that a heading without its unit certainly means} */
    static Optional<String> certain(String heading) {
        return of(CERTAIN, words(heading));
    }

    /**
     * The column that a heading may mean. One that begins with "note" means none: so its owner says that it is not it.
     *
     * @param heading without its unit
     * @param hasUnit whether one stands beside it
     * @return the name of the column
     */
    static Optional<String> likely(String heading, boolean hasUnit) {
        String words = words(heading);
        return hasUnit || !LETTERS.matcher(words).matches() ? of(LIKELY, words) : Optional.empty();
    }

    private static Optional<String> of(Map<String, Pattern> all, String words) {
        return all.entrySet().stream()
                .filter(each -> each.getValue().matcher(words).matches())
                .map(Map.Entry::getKey)
                .findFirst();
    }

    private static String words(String heading) {
        return heading.toLowerCase(Locale.ROOT)
                .replaceAll("[øØ⌀]|\\bdiam?\\b", " diameter ")
                .replaceAll("[^a-z0-9]+", " ")
                .replaceAll("\\bdiam?\\b", "diameter")
                .strip();
    }

    private static void certain(String column, String pattern) {
        CERTAIN.put(column, Pattern.compile(pattern));
    }

    private static void likely(String column, String pattern) {
        LIKELY.put(column, Pattern.compile(pattern));
    }
}
