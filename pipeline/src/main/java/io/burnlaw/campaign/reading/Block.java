package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.Choice;
import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.reading.YamlDocument.YamlNode;
import io.burnlaw.quantity.DecimalNumber;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Quantity;
import io.burnlaw.quantity.Quantity.QuantityReading;
import io.burnlaw.quantity.Spelling;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** One mapping of a YAML file, read key by key; whatever is wrong becomes a problem with its line. */
public final class Block implements Place {

    private final String file;
    private final String path;
    private final YamlNode.Mapping mapping;
    private final List<String> known;
    private final List<Problem> problems;

    /**
     * Opens a mapping and refuses the keys that it should not have.
     *
     * @param path     of the mapping in the file, empty text or ending with a full stop
     * @param known    keys that it may have
     * @param problems where what is wrong is added
     */
    public Block(String file, String path, YamlNode.Mapping mapping, List<String> known, List<Problem> problems) {
        this.file = file;
        this.path = path;
        this.mapping = mapping;
        this.known = known;
        this.problems = problems;
        mapping.entries().forEach((key, entry) -> {
            if (!known.contains(key)) {
                problems.add(new Problem(
                        file,
                        entry.line(),
                        path + key,
                        "the key is not known",
                        key,
                        "one of " + String.join(", ", known),
                        Spelling.mend(key, known, "delete it")));
            }
        });
    }

    /** {@return a text as written; empty where the key is not there} */
    @Override
    public Optional<String> text(String key) {
        return scalar(key, "a text");
    }

    /**
     * A text that must be there.
     *
     * @param mend what to write where it is missing
     * @return as written; empty text where it is missing
     */
    public String required(String key, String mend) {
        Optional<YamlNode.Entry> entry = entry(key);
        if (entry.isEmpty()) {
            problems.add(new Problem(file, mapping.line(), path + key, "the key is missing", "", "", mend));
        }
        return text(key).orElse("");
    }

    /** Reads the format that the file says it has; another one than the known is a problem. */
    public void format(String known) {
        String format = required("format", "write   format: " + known);
        if (!format.isEmpty() && !format.equals(known)) {
            wrong("format", "this version of the format is not known", format, known, "write   format: " + known);
        }
    }

    /**
     * A quantity with its unit.
     *
     * @param dimension that it must have
     * @return in SI; empty where the key is not there or cannot be read
     */
    public Optional<Measured> measured(String key, Dimension dimension) {
        return scalar(key, dimension.noun() + " with its unit")
                .flatMap(text -> kept(key, text, Quantity.read(text, dimension)));
    }

    /**
     * A pressure of which the key says what it counts from; the unit may say the same, but not the other.
     *
     * @param kind what it counts from
     * @return [Pa]; empty where the key is not there or cannot be read
     */
    public Optional<Measured> pressure(String key, PressureKind kind) {
        return scalar(key, "a pressure with its unit").flatMap(text -> {
            WrittenPressure written = WrittenPressure.of(text);
            if (written.kind().filter(other -> other != kind).isPresent()) {
                wrong(
                        key,
                        "this pressure must be " + Choice.word(kind),
                        text,
                        "a pressure " + (kind == PressureKind.GAUGE ? "above ambient" : "above vacuum"),
                        "convert the value");
                return Optional.empty();
            }
            return kept(key, text, Quantity.read(written.plain(), Dimension.PRESSURE));
        });
    }

    /**
     * A quantity above zero.
     *
     * @param dimension that it must have
     * @return in SI; empty where the key is not there or cannot be read
     */
    public Optional<Measured> positive(String key, Dimension dimension) {
        return above(key, measured(key, dimension), "correct it");
    }

    /**
     * A pressure above zero.
     *
     * @param kind what it counts from
     * @return [Pa]; empty where the key is not there or cannot be read
     */
    public Optional<Measured> positivePressure(String key, PressureKind kind) {
        return above(key, pressure(key, kind), "correct it");
    }

    /**
     * A bare number between two bounds, both allowed.
     *
     * @return the number; empty where the key is not there or cannot be read
     */
    public OptionalDouble number(String key, double low, double high) {
        String expected = "a number from %s to %s".formatted(plain(low), plain(high));
        return within(key, low, high, DecimalNumber::read, "number", expected);
    }

    /**
     * A share such as {@code 95 %} or {@code 0.95} between two bounds, both allowed.
     *
     * @param low  lowest [1]
     * @param high highest [1]
     * @return [1]; empty where the key is not there or cannot be read
     */
    public OptionalDouble share(String key, double low, double high) {
        String expected = "a share from %s %% to %s %%".formatted(plain(100 * low), plain(100 * high));
        return within(key, low, high, Block::fraction, "share", expected);
    }

    private static OptionalDouble fraction(String text) {
        OptionalDouble plain = DecimalNumber.read(text);
        return plain.isPresent()
                ? plain
                : Quantity.read(text, Dimension.FRACTION)
                        .match(
                                read -> OptionalDouble.of(read.quantity().si().value()),
                                misread -> OptionalDouble.empty());
    }

    private OptionalDouble within(
            String key,
            double low,
            double high,
            Function<String, OptionalDouble> reader,
            String what,
            String expected) {
        Optional<String> text = scalar(key, expected);
        OptionalDouble value = text.map(reader).orElse(OptionalDouble.empty());
        if (text.isEmpty() || value.isPresent() && value.getAsDouble() >= low && value.getAsDouble() <= high) {
            return value;
        }
        boolean percent = what.equals("share") && !text.get().contains("%");
        wrong(key, "this is not an allowed " + what, text.get(), expected, percent ? "write it with %" : "correct it");
        return OptionalDouble.empty();
    }

    /** True or false; otherwise where it is not there. */
    public boolean flag(String key, boolean otherwise) {
        Optional<String> text = scalar(key, "true or false");
        if (text.isEmpty()) {
            return otherwise;
        }
        return switch (text.get()) {
            case "true", "yes" -> true;
            case "false", "no" -> false;
            default -> {
                wrong(key, "this is neither true nor false", text.get(), "true or false", "write one of the two");
                yield otherwise;
            }
        };
    }

    /** {@return one word of a list; empty where the key is not there} */
    public <E extends Enum<E>> Optional<E> choice(String key, Class<E> type) {
        List<String> words = Choice.words(type);
        return scalar(key, String.join(" or ", words)).flatMap(text -> {
            Optional<E> choice = Choice.of(type, text);
            if (choice.isEmpty()) {
                wrong(
                        key,
                        "the word is not known",
                        text,
                        "one of " + String.join(", ", words),
                        Spelling.mend(text, words, "write one of them"));
            }
            return choice;
        });
    }

    /** The mapping behind a key, to be read by the keys that it may have; an empty one where the key is not there. */
    public Block block(String key, List<String> keys) {
        return new Block(file, path + key + ".", mapping(key), keys, problems);
    }

    /**
     * The mappings behind a key whose own keys are ids, in the order of the file.
     *
     * @param keys that each of them may have
     */
    public Map<String, Block> blocks(String key, List<String> keys) {
        Map<String, Block> blocks = new LinkedHashMap<>();
        mapping(key).entries().forEach((id, entry) -> {
            boolean bare = entry.value() instanceof YamlNode.Scalar scalar && scalar.empty();
            if (!bare && !(entry.value() instanceof YamlNode.Mapping)) {
                problems.add(new Problem(
                        file,
                        entry.line(),
                        path + key + "." + id,
                        "keys and values are expected here",
                        "",
                        "an indented list of keys",
                        "write them in the lines below it"));
            }
            YamlNode.Mapping body = entry.value() instanceof YamlNode.Mapping inner
                    ? inner
                    : new YamlNode.Mapping(entry.line(), Map.of());
            blocks.put(id, new Block(file, path + key + "." + id + ".", body, keys, problems));
        });
        return blocks;
    }

    /** {@return whether a key is there, one of the known ones} */
    public boolean has(String key) {
        return entry(key).isPresent();
    }

    /** {@return the mapping behind a key as read; an empty one where the key is not there} */
    public YamlNode.Mapping mapping(String key) {
        Optional<YamlNode.Entry> entry = entry(key);
        if (entry.isPresent() && entry.get().value() instanceof YamlNode.Mapping inner) {
            return inner;
        }
        boolean empty = entry.isEmpty() || entry.get().value() instanceof YamlNode.Scalar s && s.empty();
        if (!empty) {
            wrong(key, "keys and values are expected here", "", "an indented list of keys", "see docs/formats.md");
        }
        return new YamlNode.Mapping(entry.map(YamlNode.Entry::line).orElse(mapping.line()), Map.of());
    }

    /** Adds a problem at a key. */
    @Override
    public void wrong(String key, String what, String found, String expected, String mend) {
        int line = entry(key).map(YamlNode.Entry::line).orElse(mapping.line());
        problems.add(new Problem(file, line, path + key, what, found, expected, mend));
    }

    private Optional<String> scalar(String key, String expected) {
        Optional<YamlNode.Entry> entry = entry(key);
        if (entry.isEmpty()) {
            return Optional.empty();
        }
        if (entry.get().value() instanceof YamlNode.Scalar scalar) {
            if (scalar.text().isEmpty()) {
                wrong(key, "the key has no value", "", expected, "write it, or delete the key");
                return Optional.empty();
            }
            return Optional.of(scalar.text());
        }
        wrong(key, "a single value is expected here", "", expected, "write it after the colon");
        return Optional.empty();
    }

    private Optional<YamlNode.Entry> entry(String key) {
        if (!known.contains(key)) {
            throw new IllegalArgumentException("the key " + key + " is not among " + known);
        }
        return Optional.ofNullable(mapping.entries().get(key));
    }

    private Optional<Measured> kept(String key, String text, QuantityReading reading) {
        return reading.match(read -> Optional.of(read.quantity().si()), misread -> {
            wrong(key, misread.what(), text, misread.expected(), misread.mend());
            return Optional.empty();
        });
    }

    private static String plain(double value) {
        return new BigDecimal(String.valueOf((float) value))
                .stripTrailingZeros()
                .toPlainString();
    }
}
