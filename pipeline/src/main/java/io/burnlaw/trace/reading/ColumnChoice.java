package io.burnlaw.trace.reading;

import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.Problem;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.campaign.WrittenUnit;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Spelling;
import io.burnlaw.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Which columns of a record hold time, pressure and thrust, and in which units.
 *
 * @param time     index of the column
 * @param timeUnit of its numbers; empty where it holds stamps of a clock
 * @param pressure column and unit, where there is one
 * @param thrust   column and unit, where there is one
 * @param kind     what the pressure counts from; empty where there is no pressure
 * @param notes    what was found without being asked for, as sentences
 */
record ColumnChoice(
        int time,
        Optional<Unit> timeUnit,
        Optional<SourceColumn> pressure,
        Optional<SourceColumn> thrust,
        Optional<PressureKind> kind,
        List<String> notes) {

    /**
     * A column of readings.
     *
     * @param index of the column, from 0
     * @param unit  of its numbers
     */
    record SourceColumn(int index, Unit unit) {}

    private static final List<String> TIME_NAMES =
            List.of("time", "t", "timestamp", "time stamp", "elapsed", "elapsed time", "zeit", "temps", "tiempo");

    /** A row of numbers that was taken for headings, since the rows below it are numbers by another convention only. */
    private static final Pattern FIGURES = Pattern.compile("[-+\u2212]?\\d+[.,]\\d+");

    private static final List<String> FORCE_NAMES = List.of("thrust", "load", "force", "weight", "cell");

    /**
     * Chooses the columns.
     *
     * @param file       for messages
     * @param line       of the headings or of the first numbers, for messages
     * @param headings   one for each column
     * @param firstCells one cell of each column
     * @param settings   what the campaign says
     * @return the columns
     * @throws Refusal where a column is missing, ambiguous, or has no unit or a wrong one
     */
    static ColumnChoice of(
            String file, int line, List<TraceHeading> headings, List<String> firstCells, TraceSettings settings)
            throws Refusal {
        return new Chooser(file, line, headings, firstCells, settings).choose();
    }

    private record Chooser(
            String file, int line, List<TraceHeading> headings, List<String> firstCells, TraceSettings settings) {

        /** A column that the campaign names, with the unit of the file or of the campaign. */
        private record Named(int index, TraceHeading heading) {}

        ColumnChoice choose() throws Refusal {
            List<String> notes = new ArrayList<>();
            Named time =
                    settings.time().isPresent() ? named("time", settings.time().get()) : foundTime(notes);
            boolean clock = time.index() < firstCells.size() && ClockTime.isStamp(firstCells.get(time.index()));
            Optional<Unit> timeUnit = clock ? Optional.empty() : Optional.of(unit("time", time, Dimension.TIME));
            Optional<Named> pressure = pressure(notes);
            Optional<Named> thrust = thrust(pressure.isPresent(), notes);
            if (pressure.isEmpty() && thrust.isEmpty()) {
                throw missing("pressure", "a column with a unit of pressure, such as pressure [MPa]");
            }
            Optional<PressureKind> kind = pressure.isPresent() ? Optional.of(kind(pressure.get())) : Optional.empty();
            Optional<SourceColumn> force =
                    thrust.isPresent() ? Optional.of(force(thrust.get(), notes)) : Optional.empty();
            Optional<SourceColumn> pressureChannel =
                    pressure.isPresent() ? Optional.of(pressureChannel(pressure.get(), notes)) : Optional.empty();
            return new ColumnChoice(time.index(), timeUnit, pressureChannel, force, kind, notes);
        }

        private Named foundTime(List<String> notes) throws Refusal {
            Optional<Named> found = first(heading -> heading.hasDimension(Dimension.TIME) && isTime(heading))
                    .or(() -> first(heading -> heading.hasDimension(Dimension.TIME)))
                    .or(this::firstClock)
                    .or(() -> first(Chooser::isTime));
            if (found.isEmpty()) {
                throw missing("time", "a column with a unit of time, such as time [s]");
            }
            notes.add("%s: time was taken from the column '%s'.".formatted(file, shown(found.get())));
            return found.get();
        }

        private static boolean isTime(TraceHeading heading) {
            return TIME_NAMES.contains(TraceHeading.fold(heading.name()));
        }

        private Optional<Named> firstClock() {
            return IntStream.range(0, Math.min(headings.size(), firstCells.size()))
                    .filter(i -> ClockTime.isStamp(firstCells.get(i)))
                    .mapToObj(i -> new Named(i, headings.get(i)))
                    .findFirst();
        }

        private Optional<Named> pressure(List<String> notes) throws Refusal {
            if (settings.pressure().isPresent()) {
                return Optional.of(named("pressure", settings.pressure().get()));
            }
            boolean thrustOnly = settings.thrust().isPresent()
                    && settings.calibration().isEmpty()
                    && settings.pressureKind().isEmpty();
            if (thrustOnly) {
                return Optional.empty();
            }
            Dimension dimension = calibrated().map(Unit::dimension).orElse(Dimension.PRESSURE);
            List<Named> found = all(heading -> heading.hasDimension(dimension));
            if (found.size() > 1) {
                throw ambiguous("pressure", found);
            }
            found.forEach(one -> notes.add("%s: pressure was taken from the column '%s'.".formatted(file, shown(one))));
            return found.stream().findFirst();
        }

        private Optional<Named> thrust(boolean optional, List<String> notes) throws Refusal {
            if (settings.thrust().isPresent()) {
                return Optional.of(named("thrust", settings.thrust().get()));
            }
            List<Named> found = all(heading ->
                    heading.hasDimension(Dimension.FORCE) || heading.hasDimension(Dimension.MASS) && isForce(heading));
            if (found.size() > 1 && optional) {
                notes.add("%s: several columns could be the thrust; none was taken.".formatted(file));
                return Optional.empty();
            }
            if (found.size() > 1) {
                throw ambiguous("thrust", found);
            }
            found.forEach(one -> notes.add("%s: thrust was taken from the column '%s'.".formatted(file, shown(one))));
            return found.stream().findFirst();
        }

        private static boolean isForce(TraceHeading heading) {
            String name = heading.name().toLowerCase(Locale.ROOT);
            return FORCE_NAMES.stream().anyMatch(name::contains);
        }

        private PressureKind kind(Named pressure) throws Refusal {
            Optional<PressureKind> byUnit = pressure.heading().unit().flatMap(WrittenUnit::kind);
            if (byUnit.isPresent() && settings.pressureKind().isPresent() && !byUnit.equals(settings.pressureKind())) {
                throw refusal(
                        shown(pressure),
                        "the unit of the heading and pressure_kind contradict each other",
                        shown(pressure),
                        "pressure_kind: " + byUnit.get().name().toLowerCase(Locale.ROOT),
                        "correct the one that is wrong");
            }
            return byUnit.or(settings::pressureKind)
                    .orElseThrow(() -> refusal(
                            shown(pressure),
                            "nobody says whether the pressure is gauge or absolute",
                            "",
                            "gauge (reads 0 in open air) or absolute",
                            "write   pressure_kind: gauge   below trace: in campaign.yaml"));
        }

        private SourceColumn pressureChannel(Named pressure, List<String> notes) throws Refusal {
            Optional<Unit> raw = calibrated();
            if (raw.isEmpty()) {
                return new SourceColumn(pressure.index(), unit("pressure", pressure, Dimension.PRESSURE));
            }
            if (pressure.heading().unit().isEmpty()) {
                notes.add("%s: the column '%s' was taken to be in %s, as the calibration is."
                        .formatted(file, shown(pressure), raw.get().symbol()));
                return new SourceColumn(pressure.index(), raw.get());
            }
            return new SourceColumn(
                    pressure.index(), unit("pressure", pressure, raw.get().dimension()));
        }

        private Optional<Unit> calibrated() {
            return settings.calibration().stream().findFirst().flatMap(point -> Unit.spelled(point.unit()));
        }

        private SourceColumn force(Named thrust, List<String> notes) throws Refusal {
            Optional<Unit> unit = thrust.heading().unit().map(WrittenUnit::unit);
            if (unit.filter(u -> u.dimension() == Dimension.MASS).isPresent()) {
                Optional<Unit> weight = unit.map(Unit::symbol).flatMap(symbol -> Unit.spelled(symbol + "f"));
                if (weight.isPresent()) {
                    notes.add("%s: '%s' was taken as a force in %s."
                            .formatted(file, shown(thrust), weight.get().symbol()));
                    return new SourceColumn(thrust.index(), weight.get());
                }
            }
            return new SourceColumn(thrust.index(), unit("thrust", thrust, Dimension.FORCE));
        }

        private Unit unit(String role, Named column, Dimension dimension) throws Refusal {
            Optional<Unit> unit = column.heading().unit().map(WrittenUnit::unit);
            if (unit.isPresent() && unit.get().dimension() == dimension) {
                return unit.get();
            }
            throw refusal(
                    shown(column),
                    unit.isEmpty()
                            ? "the column has no unit"
                            : "%s is the unit of %s, not of %s"
                                    .formatted(
                                            unit.get().symbol(),
                                            unit.get().dimension().noun(),
                                            dimension.noun()),
                    shown(column),
                    "%s, such as %s [%s]"
                            .formatted(dimension.noun(), role, dimension.usual().symbol()),
                    "write the unit it has below trace: in campaign.yaml, one of: "
                            + dimension.choicesWritten(
                                    role + ": \"" + column.heading().name() + " [%s]\""));
        }

        /** By its heading, or as {@code column 2}; the unit may stand in either place. */
        private Named named(String role, String wanted) throws Refusal {
            TraceHeading asked = TraceHeading.of(wanted);
            int index = index(asked);
            if (index < 0) {
                List<String> known =
                        headings.stream().map(TraceHeading::written).toList();
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

        private Optional<Named> first(Predicate<TraceHeading> wanted) {
            return all(wanted).stream().findFirst();
        }

        private List<Named> all(Predicate<TraceHeading> wanted) {
            return IntStream.range(0, headings.size())
                    .filter(i -> wanted.test(headings.get(i)))
                    .mapToObj(i -> new Named(i, headings.get(i)))
                    .toList();
        }

        private Refusal missing(String role, String expected) {
            if (headings.stream()
                    .allMatch(heading -> FIGURES.matcher(heading.written()).matches())) {
                return refusal(
                        "",
                        "some numbers have a decimal comma, others a decimal point",
                        headings.stream().map(TraceHeading::written).collect(Collectors.joining(" | ")),
                        "one decimal sign in the whole record",
                        "export the record again with one of the two");
            }
            return refusal(
                    role,
                    "no column for it was found",
                    headings.stream().map(TraceHeading::written).collect(Collectors.joining(" | ")),
                    expected,
                    "name it below trace: in campaign.yaml, as   %s: \"heading [unit]\"".formatted(role));
        }

        private Refusal ambiguous(String role, List<Named> found) {
            return refusal(
                    role,
                    "several columns could be it",
                    found.stream().map(this::shown).collect(Collectors.joining(" | ")),
                    "the heading of one of them in campaign.yaml",
                    "write   %s: \"%s\"   below trace: in campaign.yaml".formatted(role, shown(found.get(0))));
        }

        private String shown(Named column) {
            return column.heading().written();
        }

        private Refusal refusal(String place, String what, String found, String expected, String mend) {
            return new Refusal(new Problem(file, line, place, what, found, expected, mend));
        }
    }
}
