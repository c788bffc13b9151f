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
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Which columns of a record hold time, pressure and thrust, and in which units.
 *
 * @param time     index of the column; -1 where there is none and the samples are counted
 * @param timeUnit of its numbers; empty where it holds stamps of a clock
 * @param interval where the times are numbers of samples: between two samples [s]
 * @param pressure column and unit, where there is one
 * @param thrust   column and unit, where there is one
 * @param kind     what the pressure counts from; empty where there is no pressure
 * @param notes    what was found without being asked for, as sentences
 */
record ColumnChoice(
        int time,
        Optional<Unit> timeUnit,
        OptionalDouble interval,
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

    static final List<String> TIME_NAMES =
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
     * @param rows     the first rows as written; none where they are not text
     * @param settings   what the campaign says
     * @return the columns
     * @throws Refusal where a column is missing, ambiguous, or has no unit or a wrong one
     */
    static ColumnChoice of(
            String file, int line, List<TraceHeading> headings, List<List<String>> rows, TraceSettings settings)
            throws Refusal {
        return new Chooser(file, line, headings, rows, settings).choose();
    }

    private record Chooser(
            String file, int line, List<TraceHeading> headings, List<List<String>> rows, TraceSettings settings) {

        /** A column that the campaign names, with the unit of the file or of the campaign. */
        private record Named(int index, TraceHeading heading) {}

        ColumnChoice choose() throws Refusal {
            List<String> notes = new ArrayList<>();
            Optional<Named> time = time(notes);
            boolean clock = time.filter(column -> isClock(column.index())).isPresent();
            boolean counted = settings.interval().isPresent()
                    && !clock
                    && time.filter(column -> column.heading().hasDimension(Dimension.TIME))
                            .isEmpty();
            Optional<Unit> timeUnit = clock
                    ? Optional.empty()
                    : Optional.of(counted ? Unit.SECOND : unit("time", time.orElseThrow(), Dimension.TIME));
            Optional<Named> pressure = pressure(time, notes);
            Optional<Named> thrust = thrust(pressure.isPresent(), notes);
            if (pressure.isEmpty() && thrust.isEmpty()) {
                throw missing("pressure");
            }
            Optional<PressureKind> kind = pressure.isPresent() ? Optional.of(kind(pressure.get())) : Optional.empty();
            Optional<SourceColumn> force =
                    thrust.isPresent() ? Optional.of(force(thrust.get(), notes)) : Optional.empty();
            Optional<SourceColumn> pressureChannel =
                    pressure.isPresent() ? Optional.of(pressureChannel(pressure.get(), notes)) : Optional.empty();
            return new ColumnChoice(
                    time.map(Named::index).orElse(-1),
                    timeUnit,
                    counted ? settings.interval() : OptionalDouble.empty(),
                    pressureChannel,
                    force,
                    kind,
                    notes);
        }

        /** The column of the times or of numbers of samples; empty where samples are counted at the stated rate. */
        private Optional<Named> time(List<String> notes) throws Refusal {
            if (settings.time().isPresent()) {
                return Optional.of(named("time", settings.time().get()));
            }
            boolean stated = settings.interval().isPresent();
            Optional<Named> found = first(heading -> heading.hasDimension(Dimension.TIME) && isTime(heading))
                    .or(() -> first(heading -> heading.hasDimension(Dimension.TIME)))
                    .or(this::firstClock)
                    .or(() -> stated ? sampleNumbers() : first(Chooser::isTime));
            if (found.isEmpty() && !stated) {
                throw missing("time");
            }
            notes.add(
                    found.isEmpty()
                            ? "%s: the samples were counted; the time follows from the stated rate.".formatted(file)
                            : "%s: time was taken from the column '%s'.".formatted(file, shown(found.get())));
            return found;
        }

        private Optional<Named> sampleNumbers() {
            ColumnAdvice advice = advice();
            return advice.time().stream()
                    .filter(advice::counts)
                    .mapToObj(i -> new Named(i, headings.get(i)))
                    .findFirst();
        }

        private ColumnAdvice advice() {
            return new ColumnAdvice(file, line, headings, rows, settings);
        }

        private static boolean isTime(TraceHeading heading) {
            return TIME_NAMES.contains(TraceHeading.fold(heading.name()));
        }

        private Optional<Named> firstClock() {
            return IntStream.range(0, headings.size())
                    .filter(this::isClock)
                    .mapToObj(i -> new Named(i, headings.get(i)))
                    .findFirst();
        }

        private boolean isClock(int column) {
            return !rows.isEmpty()
                    && column < rows.get(0).size()
                    && ClockTime.isStamp(rows.get(0).get(column));
        }

        private Optional<Named> pressure(Optional<Named> time, List<String> notes) throws Refusal {
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
            List<Named> exact = all(heading -> heading.hasDimension(dimension));
            List<Named> found = exact.isEmpty() && calibrated().isPresent() ? unlabelled(time) : exact;
            if (found.size() > 1) {
                throw ambiguous("pressure", found);
            }
            found.forEach(one -> notes.add("%s: pressure was taken from the column '%s'.".formatted(file, shown(one))));
            return found.stream().findFirst();
        }

        /** What a calibration can belong to where no heading has its unit: the columns without one, beside the time. */
        private List<Named> unlabelled(Optional<Named> time) {
            int timed = time.map(Named::index).orElse(-1);
            return all(heading -> heading.unit().isEmpty()).stream()
                    .filter(column -> column.index() != timed)
                    .toList();
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
            if (unit.isEmpty() && !advice().lines().isEmpty()) {
                throw new Refusal(advice().problem("the column '" + shown(column) + "' has no unit"));
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

        private Refusal missing(String role) {
            if (headings.stream()
                    .allMatch(heading -> FIGURES.matcher(heading.written()).matches())) {
                return refusal(
                        "",
                        "some numbers have a decimal comma, others a decimal point",
                        headings.stream().map(TraceHeading::written).collect(Collectors.joining(" | ")),
                        "one decimal sign in the whole record",
                        "export the record again with one of the two");
            }
            return new Refusal(advice().problem(
                            headings.size() == 1 && role.equals("time")
                                    ? "there is one reading in each row, and no time"
                                    : "no column with a unit of " + role + " was found"));
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
