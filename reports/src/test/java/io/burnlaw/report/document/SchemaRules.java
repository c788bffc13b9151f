package io.burnlaw.report.document;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.burnlaw.report.document.Characterization.CampaignSummary;
import io.burnlaw.report.document.Characterization.Generator;
import io.burnlaw.report.document.Characterization.Input;
import io.burnlaw.report.document.Characterization.LeftOut;
import java.lang.reflect.RecordComponent;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What a schema demands beyond the types of the members: units, signs, closed lists of words, and what goes together.
 * Members are written {@code Record.component}; the patterns must match the whole of it.
 */
final class SchemaRules {

    /** Where a member that is unknown does no harm, and a later version may add one. A misspelt one of another is an error. */
    private static final Set<Class<?>> OPEN = Set.of(
            Characterization.class,
            Generator.class,
            CampaignSummary.class,
            Firing.class,
            Finding.class,
            Input.class,
            LeftOut.class);

    /** Absent in files of before the first release only. */
    private static final Pattern REQUIRED =
            Pattern.compile("Formulation\\.useLaws|UseLaw\\.(inchPerSecondPsi|metrePerSecondPascal)");

    private static final Pattern COVARIANCE = Pattern.compile(".*\\.(c|sharedC)ovariance");

    private static final Map<String, List<String>> WORDS = Map.ofEntries(
            Map.entry("Firing.status", List.of("used", "flagged", "rejected")),
            Map.entry("Firing.kind", List.of("strand")),
            Map.entry("Finding.severity", List.of("note", "caution", "rejection")),
            Map.entry("Break.kind", List.of("slope", "jump")),
            Map.entry("Regimes.claim", List.of("single-law", "smooth-curve", "bend", "break")),
            Map.entry("Regimes.shape", List.of("joined", "jumping")),
            Map.entry("FasterAnswer.reach", List.of("same-regime", "another-regime", "extrapolated", "out-of-reach")),
            Map.entry("Point.source", List.of("firing", "dwell", "strand", "point")),
            Map.entry("DrillChoice.series", List.of("metric", "number", "letter", "fraction")));

    /** The units of a quantity; one that no line names is a fault of this list. Pure numbers have none, or 1. */
    private static final Map<Pattern, Collection<String>> UNITS = Map.ofEntries(
            units(
                    "(?!UnitPair).*[pP]ressure(Limit|Low|High|Measured|Predicted)?|.*\\.(slowBelow|fastAbove|highestFired)",
                    Unit.MPA.codes()),
            units("UnitPair\\.pressureUnit", Unit.MPA.codes()),
            units(
                    "UnitPair\\.rateUnit|.*\\.(coefficient|rateAtReference|rate|massBalance|thicknessTime)",
                    Unit.MM_PER_S.codes()),
            units("Events\\..*|TimedSpan\\..*|.*\\.(at|burnTime.*|actionTime|specificImpulse)", Unit.SECOND.codes()),
            units("Throat\\..*|.*\\.(web|.*Diameter|.*Throat)", Unit.MM.codes()),
            units(".*\\.characteristicVelocity", Unit.M_PER_S.codes()),
            units(".*\\.(t|referenceT|grainT)emperature", Unit.KELVIN.codes()),
            units(".*\\.propellantMass", Set.of("g")),
            units(".*\\.density", Set.of("g/cm3", "kg/m3")),
            units(".*\\.freeVolume", Set.of("cm3")),
            units(".*\\.totalImpulse", Set.of("N.s")),
            units(".*\\.(sigmaP|piK)", Set.of("/K", "1/K")),
            units(
                    ".*\\.(exponent|exponentDifference|slope|thrustCoefficient|betweenStd|rateRatio|within|between)",
                    Set.of("1")));

    /** Quantities of which a negative value is no fault of the file, but of a record that gives no rate, or a zero. */
    private static final Pattern ANY_SIGN =
            Pattern.compile("(Events|TimedSpan|Firing|TemperatureSensitivity|WithinBetween)\\..*"
                    + "|.*\\.(at|.*[tT]emperature|exponent.*|slope)");

    private static final Pattern POSITIVE = Pattern.compile("(UnitPair|NextRate|RatioPoint|CurvePoint|ThroatTable"
            + "|GrainTable(?=\\.(?!start|mean|max|burnTime|ignition))"
            + "|InUnits)\\.(?!n|exponent).*|(Law|OtherFit|MethodInterval|LawWithout)\\.coefficient.*"
            + "|UseLaw\\.(pressure|referencePressure|rate).*|Propellant\\..*"
            + "|.*\\.(diameter|rateRatio|areaRatio(Start|Most)?|portToThroat|factor|safetyFactor|specificHeatRatio)");

    private static final Pattern NOT_NEGATIVE =
            Pattern.compile(".*(Std|std|Scatter|degreesOfFreedom|Degrees|statistic|contribution|bytes|median.*Error)");

    private static final Pattern SHARE =
            Pattern.compile(".*\\.(level|confidence|.*[pP]Value|share|fraction|additiveFraction)");

    /** What belongs together, by the name of the record. */
    private static final Map<String, String> BETWEEN = Map.of(
            "Quantity",
            """
            {"dependentRequired": {"low": ["high", "level"], "high": ["low", "level"]}}""",
            "Regimes",
            """
            {"allOf": [{"properties": {"selected": {"minimum": 1, "maximum": 5}}}, %s, %s, %s, %s, %s]}""".formatted(regimes(1), regimes(2), regimes(3), regimes(4), regimes(5)),
            "Formulation",
            """
            {"allOf": [
              {"if": {"required": ["single_law"]}, "then": {"properties": {"use_laws": {"minItems": 1}}}},
              {"if": {"required": ["regimes"], "properties": {"regimes": {"required": ["selected"], "properties": {"selected": {"minimum": 2}}}}},
               "then": {"properties": {"use_laws": {"minItems": 2, "items": {"required": ["regime"]}}}}}
            ]}""",
            "Propellant",
            """
            {"if": {"properties": {"laws": {"contains": {"required": ["regime"]}}}},
             "then": {"properties": {"laws": {"minItems": 2, "items": {"required": ["regime"]}}}},
             "else": {"properties": {"laws": {"maxItems": 1}}}}""",
            "InUnits",
            """
            {"dependentRequired": {"a_low": ["a_high", "level"], "a_high": ["a_low", "level"]}}""");

    private SchemaRules() {}

    private static Map.Entry<Pattern, Collection<String>> units(String members, Collection<String> units) {
        return Map.entry(Pattern.compile(members), units.stream().sorted().toList());
    }

    private static String regimes(int count) {
        return """
            {"if": {"properties": {"selected": {"const": %1$d}}},
             "then": {"properties": {"laws": {"minItems": %1$d, "maxItems": %1$d}, "breaks": {"minItems": %2$d, "maxItems": %2$d}}%3$s}}""".formatted(count, count - 1, count > 1 ? ", \"required\": [\"shape\"]" : "");
    }

    static boolean open(Class<?> type) {
        return OPEN.contains(type);
    }

    static boolean required(RecordComponent component) {
        return REQUIRED.matcher(name(component)).matches();
    }

    static Optional<ObjectNode> between(Class<?> type) {
        return Optional.ofNullable(BETWEEN.get(type.getSimpleName())).map(SchemaRules::json);
    }

    static void narrow(RecordComponent component, ObjectNode member) {
        String name = name(component);
        Class<?> type = component.getType();
        if (type == Quantity.class) {
            quantity(name, member);
        } else if (type == String.class) {
            text(name, member);
        } else if (COVARIANCE.matcher(name).matches()) {
            member.setAll(json("""
                    {"minItems": 2, "maxItems": 2, "prefixItems": [
                      {"minItems": 2, "prefixItems": [{"minimum": 0}, {}]},
                      {"minItems": 2, "prefixItems": [{}, {"minimum": 0}]}],
                     "items": {"type": "array", "maxItems": 2, "items": {"type": "number"}}}"""));
        } else {
            number(name, type, type == List.class ? (ObjectNode) member.get("items") : member);
        }
    }

    private static void quantity(String name, ObjectNode member) {
        Collection<String> units = units(name).orElseThrow(() -> new IllegalStateException(name + ": in which unit?"));
        ObjectNode properties = member.putObject("properties");
        words(properties.putObject("unit"), units);
        if (!units.contains("1")) {
            member.putArray("required").add("unit");
        }
        if (!ANY_SIGN.matcher(name).matches()) {
            properties.putObject("value").put("exclusiveMinimum", 0);
            properties.putObject("low").put("exclusiveMinimum", 0);
        }
    }

    private static void text(String name, ObjectNode member) {
        if (name.endsWith(".id")) {
            member.put("minLength", 1);
        } else if (name.endsWith(".sha256")) {
            member.put("pattern", "^[0-9a-f]{64}$");
        } else if (name.endsWith(".created")) {
            member.put("format", "date-time");
        } else if (name.startsWith("UnitPair.")) {
            words(member, units(name).orElseThrow());
        } else if (WORDS.containsKey(name)) {
            words(member, WORDS.get(name));
        }
    }

    private static void number(String name, Class<?> type, ObjectNode member) {
        String json = member.path("type").asText();
        if (!json.equals("number") && !json.equals("integer")) {
            return;
        }
        if (SHARE.matcher(name).matches()) {
            member.put("minimum", 0).put("maximum", 1);
        } else if (POSITIVE.matcher(name).matches()) {
            member.put("exclusiveMinimum", 0);
        } else if (NOT_NEGATIVE.matcher(name).matches() || type == int.class || type == Integer.class) {
            member.put("minimum", 0);
        }
    }

    private static Optional<Collection<String>> units(String name) {
        return UNITS.entrySet().stream()
                .filter(each -> each.getKey().matcher(name).matches())
                .map(Map.Entry::getValue)
                .findFirst();
    }

    private static void words(ObjectNode member, Collection<String> words) {
        ArrayNode all = member.putArray("enum");
        words.forEach(all::add);
    }

    private static String name(RecordComponent component) {
        return component.getDeclaringRecord().getSimpleName() + "." + component.getName();
    }

    private static ObjectNode json(String text) {
        try {
            JsonNode parsed = new JsonMapper().readTree(text);
            return (ObjectNode) parsed;
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(text, e);
        }
    }
}
