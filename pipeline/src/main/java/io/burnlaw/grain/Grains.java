package io.burnlaw.grain;

import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.campaign.GrainDescription.SurfacePoint;
import io.burnlaw.campaign.GrainKind;
import io.burnlaw.finding.Outcome;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Sentence;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Makes the geometry of a grain from its description in the firing log. */
public final class Grains {

    private static final int MOST_SEGMENTS = 1000;

    private Grains() {}

    /**
     * Builds the geometry of a grain.
     *
     * @param description as the log has it
     * @return the grain, or every reason why it cannot exist; never an exception for what a log can contain
     */
    public static Outcome<Grain, String> of(GrainDescription description) {
        List<String> reasons = new ArrayList<>();
        GrainKind kind = GrainKind.of(description.kind()).orElse(null);
        if (kind == null) {
            return new Outcome.Refused<>(List.of("no grain is called '" + description.kind() + "'; it is one of "
                    + String.join(", ", GrainKind.words())));
        }
        if (kind == GrainKind.TABLE) {
            return ofTable(description);
        }
        if (description.segments() < 1 || description.segments() > MOST_SEGMENTS) {
            return new Outcome.Refused<>(List.of(
                    "segments is " + description.segments() + "; a grain has 1 to " + MOST_SEGMENTS + " of them"));
        }
        checkInhibitedEnds(description, kind, reasons);
        List<Segment> segments = new ArrayList<>();
        for (int number = 1; number <= description.segments(); number++) {
            Segment segment = new Segment(description, kind, number);
            segment.check(kind.needs(), reasons);
            segments.add(segment);
        }
        return reasons.isEmpty()
                ? new Outcome.Given<>(assemble(description, kind, segments))
                : new Outcome.Refused<>(reasons.stream().distinct().toList());
    }

    private static void checkInhibitedEnds(GrainDescription description, GrainKind kind, List<String> reasons) {
        int ends = description.inhibitedEnds();
        int faces = 2 * description.segments();
        if (ends != 0 && kind != GrainKind.BATES) {
            reasons.add("inhibited_ends is " + ends + ", but only the ends of a bates grain burn");
        } else if (ends < 0 || ends > faces) {
            reasons.add("inhibited_ends is " + ends + ", but " + description.segments() + " segments have " + faces
                    + " end faces");
        }
    }

    private static Grain assemble(GrainDescription description, GrainKind kind, List<Segment> segments) {
        boolean equal = segments.stream().allMatch(segment -> segment.sizedAs(segments.get(0)));
        if (kind == GrainKind.BATES && equal && description.inhibitedEnds() == 0) {
            return new Bates(segments.size(), segments.get(0).tube(2));
        }
        List<Grain> pieces = segments.stream().map(Segment::piece).toList();
        return pieces.size() == 1 ? pieces.get(0) : new Stack(pieces);
    }

    private static Outcome<Grain, String> ofTable(GrainDescription description) {
        List<SurfacePoint> points = description.surface();
        String name = description.tableName().orElse("the surface table");
        List<String> reasons = new ArrayList<>();
        if (points.size() < 2) {
            reasons.add(name + " has " + points.size() + " rows; two are needed at least");
        }
        for (int i = 0; i < points.size(); i++) {
            SurfacePoint point = points.get(i);
            if (i == 0 && point.web() != 0) {
                reasons.add(name + " begins at a web of " + millimetres(point.web()) + "; it must begin at 0");
            }
            if (i > 0 && !(point.web() > points.get(i - 1).web())) {
                reasons.add(name + ", row " + (i + 1) + ": the web of " + millimetres(point.web())
                        + " is not above the one before it");
            }
            if (!(point.surface() >= 0)) {
                reasons.add(name + ", row " + (i + 1) + ": the area is negative");
            }
        }
        if (reasons.isEmpty() && points.stream().noneMatch(point -> point.surface() > 0)) {
            reasons.add(name + " has no area above zero");
        }
        if (!reasons.isEmpty()) {
            return new Outcome.Refused<>(reasons);
        }
        Measured web = description.dimensions().get("web");
        OptionalDouble std = web == null ? OptionalDouble.empty() : web.std();
        return new Outcome.Given<>(new SurfaceTable(points, std));
    }

    private static String millimetres(double metres) {
        return Sentence.of("%.4g mm", metres * 1000);
    }

    /** One segment of the description; a dimension with the segment's number behind it goes before the common one. */
    private record Segment(GrainDescription description, GrainKind kind, int number) {

        Measured dimension(String name) {
            Measured own = description.dimensions().get(name + "_" + number);
            return own == null ? description.dimensions().get(name) : own;
        }

        boolean sizedAs(Segment other) {
            return kind.needs().stream().allMatch(name -> same(dimension(name), other.dimension(name)));
        }

        private static boolean same(Measured one, Measured other) {
            return one.value() == other.value() && one.std().equals(other.std());
        }

        void check(List<String> needs, List<String> reasons) {
            for (String name : needs) {
                Measured value = dimension(name);
                if (value == null) {
                    reasons.add(name + " is missing; a " + description.kind() + " grain needs it");
                } else if (!(value.value() > 0)) {
                    reasons.add(name + " is " + millimetres(value.value()) + "; it must be above zero");
                }
            }
            below("core_diameter", "outer_diameter", needs, reasons);
            below("rod_diameter", "core_diameter", needs, reasons);
        }

        private void below(String inner, String outer, List<String> needs, List<String> reasons) {
            Measured small = dimension(inner);
            Measured large = dimension(outer);
            if (needs.contains(inner) && small != null && large != null && !(small.value() < large.value())) {
                reasons.add(inner + " " + millimetres(small.value()) + " is not below " + outer + " "
                        + millimetres(large.value()));
            }
        }

        Grain piece() {
            return switch (kind) {
                case BATES -> tube(2 - inhibitedEnds());
                case TUBE -> tube(0);
                case TUBE_BOTH_SIDES ->
                    new BothSidesTube(
                            dimension("outer_diameter"), dimension("core_diameter"), dimension("segment_length"));
                case ROD -> new Rod(dimension("outer_diameter"), dimension("segment_length"));
                case ROD_AND_TUBE ->
                    new RodAndTube(tube(0), new Rod(dimension("rod_diameter"), dimension("segment_length")));
                case END_BURNER -> new EndBurner(dimension("outer_diameter"), dimension("segment_length"));
                case TABLE -> throw new IllegalArgumentException("a table has no segments");
            };
        }

        /** The inhibited faces go one to each segment from the first on, then round again. */
        private int inhibitedEnds() {
            int ends = description.inhibitedEnds();
            return (ends >= number ? 1 : 0) + (ends - description.segments() >= number ? 1 : 0);
        }

        Tube tube(int burningEnds) {
            return new Tube(
                    dimension("outer_diameter"), dimension("core_diameter"), dimension("segment_length"), burningEnds);
        }
    }

    /**
     * A hollow cylinder that burns at its core and on its outside; its ends do not burn. What the outside loses the
     * core gains, so the surface is level: S = pi (D + d) L.
     *
     * @param outerDiameter [m]
     * @param coreDiameter  [m], less than outerDiameter
     * @param length        [m]
     */
    record BothSidesTube(Measured outerDiameter, Measured coreDiameter, Measured length) implements Grain {

        public BothSidesTube {
            if (!(coreDiameter.value() > 0 && outerDiameter.value() > coreDiameter.value() && length.value() > 0)) {
                throw new IllegalArgumentException("no tube: outer diameter " + outerDiameter.value() + " m, core "
                        + coreDiameter.value() + " m, length " + length.value() + " m");
            }
        }

        @Override
        public double surface(double burned) {
            return burned < web().value()
                    ? Math.PI * (outerDiameter.value() + coreDiameter.value()) * length.value()
                    : 0;
        }

        @Override
        public double volume(double burned) {
            return surface(burned) * (web().value() - burned);
        }

        @Override
        public Measured web() {
            return Webs.part(Webs.halfDifference(outerDiameter, coreDiameter), 2);
        }

        @Override
        public OptionalDouble envelope() {
            return OptionalDouble.of(Math.PI / 4 * outerDiameter.value() * outerDiameter.value() * length.value());
        }
    }

    /**
     * A rod in the core of a tube: the rod burns on its outside, the tube at its core, no end burns. The surface stays
     * level as long as both burn.
     *
     * @param tube its ends do not burn
     * @param rod  thinner than the tube's core
     */
    record RodAndTube(Tube tube, Rod rod) implements Grain {

        public RodAndTube {
            if (!(rod.diameter().value() < tube.coreDiameter().value())) {
                throw new IllegalArgumentException("a rod of " + rod.diameter().value()
                        + " m does not go into a core of " + tube.coreDiameter().value() + " m");
            }
        }

        @Override
        public double surface(double burned) {
            return tube.surface(burned) + rod.surface(burned);
        }

        @Override
        public double volume(double burned) {
            return tube.volume(burned) + rod.volume(burned);
        }

        @Override
        public Measured web() {
            return Webs.larger(tube.web(), rod.web());
        }

        @Override
        public double burnout() {
            return Math.max(tube.burnout(), rod.burnout());
        }

        @Override
        public double[] breaks() {
            return Tube.union(tube.breaks(), rod.breaks());
        }

        @Override
        public OptionalDouble envelope() {
            return tube.envelope();
        }
    }

    /**
     * A full cylinder that burns from one end to the other; its web is its length.
     *
     * @param diameter [m]
     * @param length   [m]
     */
    public record EndBurner(Measured diameter, Measured length) implements Grain {

        public EndBurner {
            if (!(diameter.value() > 0 && length.value() > 0)) {
                throw new IllegalArgumentException(
                        "no end burner: diameter " + diameter.value() + " m, length " + length.value() + " m");
            }
        }

        @Override
        public double surface(double burned) {
            return burned < length.value() ? Math.PI / 4 * diameter.value() * diameter.value() : 0;
        }

        @Override
        public double volume(double burned) {
            return Math.PI / 4 * diameter.value() * diameter.value() * Math.max(0, length.value() - burned);
        }

        @Override
        public Measured web() {
            return length;
        }

        @Override
        public OptionalDouble envelope() {
            return OptionalDouble.of(volume(0));
        }
    }
}
