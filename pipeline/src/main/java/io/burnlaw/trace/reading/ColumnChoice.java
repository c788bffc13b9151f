package io.burnlaw.trace.reading;

import io.burnlaw.campaign.PressureKind;
import io.burnlaw.campaign.TraceSettings;
import io.burnlaw.campaign.WrittenUnit;
import io.burnlaw.quantity.Dimension;
import io.burnlaw.quantity.Unit;
import io.burnlaw.trace.reading.Headings.Named;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
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
     * @param line       of the headings or of the first numbers, for messages
     * @param headings   one for each column
     * @param rows     the first rows as written; none where they are not text
     * @param settings   what the campaign says
     * @throws Refusal where a column is missing, ambiguous, or has no unit or a wrong one
     */
    static ColumnChoice of(
            String file, int line, List<TraceHeading> headings, List<List<String>> rows, TraceSettings settings)
            throws Refusal {
        return new Chooser(new Headings(file, line, headings), rows, settings).choose();
    }

    private record Chooser(Headings all, List<List<String>> rows, TraceSettings settings) {

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
                return Optional.of(all.named("time", settings.time().get()));
            }
            boolean stated = settings.interval().isPresent();
            Optional<Named> found = all.first(heading -> heading.hasDimension(Dimension.TIME) && isTime(heading))
                    .or(() -> all.first(heading -> heading.hasDimension(Dimension.TIME)))
                    .or(this::firstClock)
                    .or(() -> stated ? sampleNumbers() : all.first(Chooser::isTime));
            if (found.isEmpty() && !stated) {
                throw missing("time");
            }
            notes.add(
                    found.isEmpty()
                            ? "%s: the samples were counted; the time follows from the stated rate."
                                    .formatted(all.file())
                            : "%s: time was taken from the column '%s'."
                                    .formatted(all.file(), found.get().shown()));
            return found;
        }

        private Optional<Named> sampleNumbers() {
            ColumnAdvice advice = advice();
            return advice.time().stream()
                    .filter(advice::counts)
                    .mapToObj(i -> new Named(i, all.headings().get(i)))
                    .findFirst();
        }

        private ColumnAdvice advice() {
            return new ColumnAdvice(all.file(), all.line(), all.headings(), rows, settings);
        }

        private static boolean isTime(TraceHeading heading) {
            return TIME_NAMES.contains(TraceHeading.fold(heading.name()));
        }

        private Optional<Named> firstClock() {
            return IntStream.range(0, all.headings().size())
                    .filter(this::isClock)
                    .mapToObj(i -> new Named(i, all.headings().get(i)))
                    .findFirst();
        }

        private boolean isClock(int column) {
            return !rows.isEmpty()
                    && column < rows.get(0).size()
                    && ClockTime.isStamp(rows.get(0).get(column));
        }

        private Optional<Named> pressure(Optional<Named> time, List<String> notes) throws Refusal {
            if (settings.pressure().isPresent()) {
                return Optional.of(all.named("pressure", settings.pressure().get()));
            }
            boolean thrustOnly = settings.thrust().isPresent()
                    && settings.calibration().isEmpty()
                    && settings.pressureKind().isEmpty();
            if (thrustOnly) {
                return Optional.empty();
            }
            Dimension dimension = calibrated().map(Unit::dimension).orElse(Dimension.PRESSURE);
            List<Named> exact = all.where(heading -> heading.hasDimension(dimension));
            List<Named> found = exact.isEmpty() && calibrated().isPresent() ? unlabelled(time) : exact;
            if (found.size() > 1) {
                throw all.ambiguous("pressure", found);
            }
            found.forEach(one ->
                    notes.add("%s: pressure was taken from the column '%s'.".formatted(all.file(), one.shown())));
            return found.stream().findFirst();
        }

        /** What a calibration can belong to where no heading has its unit: the columns without one, beside the time. */
        private List<Named> unlabelled(Optional<Named> time) {
            int timed = time.map(Named::index).orElse(-1);
            return all.where(heading -> heading.unit().isEmpty()).stream()
                    .filter(column -> column.index() != timed)
                    .toList();
        }

        private Optional<Named> thrust(boolean optional, List<String> notes) throws Refusal {
            if (settings.thrust().isPresent()) {
                return Optional.of(all.named("thrust", settings.thrust().get()));
            }
            List<Named> found = all.where(heading ->
                    heading.hasDimension(Dimension.FORCE) || heading.hasDimension(Dimension.MASS) && isForce(heading));
            if (found.size() > 1 && optional) {
                notes.add("%s: several columns could be the thrust; none was used.".formatted(all.file()));
                return Optional.empty();
            }
            if (found.size() > 1) {
                throw all.ambiguous("thrust", found);
            }
            found.forEach(
                    one -> notes.add("%s: thrust was taken from the column '%s'.".formatted(all.file(), one.shown())));
            return found.stream().findFirst();
        }

        private static boolean isForce(TraceHeading heading) {
            String name = heading.name().toLowerCase(Locale.ROOT);
            return FORCE_NAMES.stream().anyMatch(name::contains);
        }

        private PressureKind kind(Named pressure) throws Refusal {
            Optional<PressureKind> byUnit = pressure.heading().unit().flatMap(WrittenUnit::kind);
            if (byUnit.isPresent() && settings.pressureKind().isPresent() && !byUnit.equals(settings.pressureKind())) {
                throw all.refusal(
                        pressure.shown(),
                        "the unit of the heading and pressure_kind contradict each other",
                        pressure.shown(),
                        "pressure_kind: " + byUnit.get().name().toLowerCase(Locale.ROOT),
                        "correct the one that is wrong");
            }
            return byUnit.or(settings::pressureKind)
                    .orElseThrow(() -> all.refusal(
                            pressure.shown(),
                            "it is not stated whether the pressure is gauge or absolute",
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
                        .formatted(all.file(), pressure.shown(), raw.get().symbol()));
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
                            .formatted(all.file(), thrust.shown(), weight.get().symbol()));
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
                throw new Refusal(advice().problem("the column '" + column.shown() + "' has no unit"));
            }
            throw all.refusal(
                    column.shown(),
                    unit.isEmpty()
                            ? "the column has no unit"
                            : "%s is the unit of %s, not of %s"
                                    .formatted(
                                            unit.get().symbol(),
                                            unit.get().dimension().noun(),
                                            dimension.noun()),
                    column.shown(),
                    "%s, such as %s [%s]"
                            .formatted(dimension.noun(), role, dimension.usual().symbol()),
                    "write the unit it has below trace: in campaign.yaml, one of: "
                            + dimension.choicesWritten(
                                    role + ": \"" + column.heading().name() + " [%s]\""));
        }

        private Refusal missing(String role) {
            if (all.headings().stream()
                    .allMatch(heading -> FIGURES.matcher(heading.written()).matches())) {
                return all.refusal(
                        "",
                        "some numbers have a decimal comma, others a decimal point",
                        all.headings().stream().map(TraceHeading::written).collect(Collectors.joining(" | ")),
                        "one decimal sign in the whole record",
                        "export the record again with one of the two");
            }
            return new Refusal(advice().problem(
                            all.headings().size() == 1 && role.equals("time")
                                    ? "each row has one reading and no time"
                                    : "no column with a unit of " + role + " was found"));
        }
    }
}
