package io.burnlaw.campaign;

import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Unit;
import java.util.List;
import java.util.Optional;

/**
 * A unit as written in a heading or after a number. A unit of pressure may say gauge or absolute: {@code psig},
 * {@code bar(a)}, {@code kPa abs}.
 *
 * @param unit the unit
 * @param kind what a pressure counts from, where the spelling says so
 */
public record WrittenUnit(Unit unit, Optional<PressureKind> kind) {

    private static final List<String> GAUGE =
            List.of(" gauge", " gage", "(gauge)", "(g)", "_g", " rel", " G", "G", "g");
    private static final List<String> ABSOLUTE =
            List.of(" absolute", " abs", "(abs)", "(absolute)", "(a)", "_a", " A", "A", "a");

    /**
     * Reads the spelling of a unit.
     *
     * @param text as written, without brackets around it
     * @return the unit; empty where the spelling is not known
     */
    public static Optional<WrittenUnit> of(String text) {
        String stripped = text.strip();
        return Unit.spelledInAnyCase(stripped)
                .map(unit -> new WrittenUnit(unit, Optional.empty()))
                .or(() -> withKind(stripped, GAUGE, PressureKind.GAUGE))
                .or(() -> withKind(stripped, ABSOLUTE, PressureKind.ABSOLUTE));
    }

    private static Optional<WrittenUnit> withKind(String text, List<String> endings, PressureKind kind) {
        return endings.stream()
                .filter(text::endsWith)
                .flatMap(ending -> Unit.spelledInAnyCase(text.substring(0, text.length() - ending.length())).stream())
                .filter(unit -> unit.dimension() == Dimension.PRESSURE)
                .findFirst()
                .map(unit -> new WrittenUnit(unit, Optional.of(kind)));
    }
}
