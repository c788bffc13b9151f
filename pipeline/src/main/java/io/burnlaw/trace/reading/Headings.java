package io.burnlaw.trace.reading;

import io.burnlaw.campaign.Problem;
import io.burnlaw.quantity.Spelling;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * The headings of a record, among which columns are looked for.
 *
 * @param line     of the headings or of the first numbers, for messages
 * @param headings one for each column
 */
record Headings(String file, int line, List<TraceHeading> headings) {

    /** A column that the campaign names, with the unit of the file or of the campaign. */
    record Named(int index, TraceHeading heading) {

        String shown() {
            return heading.written();
        }
    }

    /** By its heading, or as {@code column 2}; the unit may stand in either place. */
    Named named(String role, String wanted) throws Refusal {
        TraceHeading asked = TraceHeading.of(wanted);
        int index = index(asked);
        if (index < 0) {
            List<String> known = headings.stream().map(TraceHeading::written).toList();
            throw refusal(
                    wanted,
                    "there is no such column",
                    String.join(" | ", known),
                    "the heading of the " + role,
                    Spelling.nearest(wanted, known)
                            .map(near -> "write   %s: \"%s\"   below trace: in campaign.yaml".formatted(role, near))
                            .orElse("write one of the headings of the file into campaign.yaml"));
        }
        TraceHeading there = headings.get(index);
        boolean contradict = there.unit().isPresent()
                && asked.unit().isPresent()
                && there.unit().get().unit() != asked.unit().get().unit();
        if (contradict) {
            throw refusal(
                    wanted,
                    "the file and the campaign name different units",
                    there.written(),
                    wanted,
                    "correct the one that is wrong");
        }
        return new Named(
                index,
                there.unit().isPresent() ? there : new TraceHeading(there.written(), there.name(), asked.unit()));
    }

    private int index(TraceHeading asked) {
        for (int i = 0; i < headings.size(); i++) {
            if (TraceHeading.fold(headings.get(i).written()).equals(TraceHeading.fold(asked.written()))) {
                return i;
            }
        }
        for (int i = 0; i < headings.size(); i++) {
            if (headings.get(i).isCalled(asked.name())) {
                return i;
            }
        }
        String name = TraceHeading.fold(asked.name());
        if (name.matches("column \\d{1,4}")) {
            int number = Integer.parseInt(name.substring("column ".length()));
            return number >= 1 && number <= headings.size() ? number - 1 : -1;
        }
        return -1;
    }

    Optional<Named> first(Predicate<TraceHeading> wanted) {
        return where(wanted).stream().findFirst();
    }

    List<Named> where(Predicate<TraceHeading> wanted) {
        return IntStream.range(0, headings.size())
                .filter(i -> wanted.test(headings.get(i)))
                .mapToObj(i -> new Named(i, headings.get(i)))
                .toList();
    }

    Refusal ambiguous(String role, List<Named> found) {
        return refusal(
                role,
                "several columns match",
                found.stream().map(Named::shown).collect(Collectors.joining(" | ")),
                "the heading of one of them in campaign.yaml",
                "write   %s: \"%s\"   below trace: in campaign.yaml"
                        .formatted(role, found.get(0).shown()));
    }

    Refusal refusal(String place, String what, String found, String expected, String mend) {
        return new Refusal(new Problem(file, line, place, what, found, expected, mend));
    }
}
