package io.burnlaw.campaign.reading;

import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.WrittenUnit;
import java.util.Optional;

/**
 * A pressure whose unit may say gauge or absolute, such as {@code 450 psig}.
 *
 * @param plain the text with the bare unit, {@code 450 psi}
 * @param kind  what it counts from, where the unit says so
 */
record WrittenPressure(String plain, Optional<PressureKind> kind) {

    static WrittenPressure of(String text) {
        int end = text.length();
        while (end > 0 && !Character.isDigit(text.charAt(end - 1))) {
            end--;
        }
        String number = text.substring(0, end);
        return WrittenUnit.of(text.substring(end))
                .filter(unit -> unit.kind().isPresent())
                .map(unit -> new WrittenPressure(number + " " + unit.unit().symbol(), unit.kind()))
                .orElseGet(() -> new WrittenPressure(text, Optional.empty()));
    }
}
