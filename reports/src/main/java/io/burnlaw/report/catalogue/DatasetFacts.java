package io.burnlaw.report.catalogue;

import io.burnlaw.report.document.Characterization;
import io.burnlaw.report.document.Formulation;
import io.burnlaw.report.document.Law;
import io.burnlaw.report.document.Quantity;
import io.burnlaw.report.table.TypedTable;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** What each catalogue wants to know of a report, in the terms of schema.org. Nothing is said that the document does not say. */
final class DatasetFacts {

    private static final Pattern SPDX = Pattern.compile("[A-Za-z0-9.+-]+");

    private DatasetFacts() {}

    static String description(Characterization document) {
        List<String> sentences = new ArrayList<>();
        sentences.add("Burning-rate laws from " + document.firings().size() + " firings.");
        for (Formulation formulation : document.formulations()) {
            sentences.add(formulation.verdict());
        }
        return String.join(" ", sentences);
    }

    /** {@return the page of the licence in the SPDX list; empty where none, or none by its identifier, is stated} */
    static Optional<String> licence(Characterization document) {
        return Optional.ofNullable(document.campaign().licence())
                .filter(licence -> SPDX.matcher(licence).matches())
                .map(licence -> "https://spdx.org/licenses/" + licence);
    }

    /** {@return when the report was made, ISO 8601 with zone; empty in a reproducible one} */
    static Optional<String> created(Characterization document) {
        return Optional.ofNullable(document.created()).filter(DatasetFacts::isTime);
    }

    private static boolean isTime(String text) {
        try {
            OffsetDateTime.parse(text);
            return true;
        } catch (DateTimeException otherText) {
            return false;
        }
    }

    /** {@return which making of the report it is: when, or where that is left out, of which bytes} */
    static String version(Characterization document, String checksum) {
        return created(document).orElse("sha256-" + checksum.substring(0, 12));
    }

    static Map<String, Object> identifier(String checksum) {
        Map<String, Object> identifier = property("SHA-256 of burnlaw.json");
        identifier.put("propertyID", "https://www.rfc-editor.org/rfc/rfc6234");
        identifier.put("value", checksum);
        return identifier;
    }

    /** {@return coefficient, exponent and measured pressures of each law to design with, as PropertyValue} */
    static List<Map<String, Object>> values(Characterization document) {
        List<Map<String, Object>> values = new ArrayList<>();
        for (Formulation formulation : document.formulations()) {
            for (Law law : formulation.useLaws()) {
                String of = formulation.title() + (law.regime() == null ? "" : ", " + law.regime());
                values.add(value(
                        "coefficient a of the rate r = a P^n: " + of,
                        law.coefficient(),
                        law.coefficient().unit() + ", with P absolute in MPa"));
                values.add(value("pressure exponent n: " + of, law.exponent(), "1"));
                Map<String, Object> range = property("absolute pressure at which that law was measured: " + of);
                range.put("minValue", law.pressureLow().value());
                range.put("maxValue", law.pressureHigh().value());
                range.put("unitText", law.pressureLow().unit());
                values.add(range);
            }
        }
        return values;
    }

    private static Map<String, Object> value(String name, Quantity quantity, String unit) {
        Map<String, Object> value = property(name);
        value.put("value", quantity.value());
        if (quantity.low() != null && quantity.high() != null && quantity.level() != null) {
            value.put("minValue", quantity.low());
            value.put("maxValue", quantity.high());
            value.put("description", "from minValue to maxValue with a confidence of " + quantity.level());
        }
        value.put("unitText", unit);
        return value;
    }

    /** {@return the columns of a table with their units} */
    static List<Map<String, Object>> columns(TypedTable<?> table) {
        return table.published().stream()
                .map(column -> {
                    Map<String, Object> described = property(column.heading());
                    described.put("description", column.description());
                    if (column.unit() != null) {
                        described.put("unitText", column.unit());
                    }
                    return described;
                })
                .toList();
    }

    private static Map<String, Object> property(String name) {
        return entity(null, "PropertyValue", name);
    }

    static Map<String, Object> entity(@Nullable String id, String type, @Nullable String name) {
        Map<String, Object> entity = new LinkedHashMap<>();
        if (id != null) {
            entity.put("@id", id);
        }
        entity.put("@type", type);
        if (name != null) {
            entity.put("name", name);
        }
        return entity;
    }
}
