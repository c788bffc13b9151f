package io.burnlaw.reduction;

import io.burnlaw.campaign.GrainDescription;
import io.burnlaw.campaign.GrainDescription.SurfacePoint;
import io.burnlaw.campaign.GrainKind;
import io.burnlaw.grain.Grain;
import io.burnlaw.grain.Grains;
import io.burnlaw.grain.SurfaceTable;
import io.burnlaw.quantity.Measured;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * The grain that was burned if the log holds one of the usual mistakes: ends or sides that burned or did not, a radius for
 * a diameter, the length of all segments for that of one, a length in centimetres.
 *
 * @param words what differs from the log
 */
record LogMistake(String words, Grain grain) {

    /**
     * The grains that could have been meant.
     *
     * @param log the grain as logged
     * @return one for each mistake that makes a possible grain, each once
     */
    static List<LogMistake> of(GrainDescription log) {
        List<LogMistake> all = new ArrayList<>();
        GrainKind kind = GrainKind.of(log.kind()).orElse(GrainKind.TABLE);
        int faces = 2 * log.segments();
        if (kind == GrainKind.BATES || kind == GrainKind.TUBE) {
            int stated = kind == GrainKind.TUBE ? faces : log.inhibitedEnds();
            for (int ends : new int[] {0, 1, 2, log.segments(), faces - 1, faces}) {
                if (ends != stated) {
                    add(
                            all,
                            ends == 0
                                    ? "all ends burned"
                                    : ends == faces
                                            ? "no end burned"
                                            : ends + " of the " + faces + " ends did not burn",
                            with(log, GrainKind.BATES, ends, log.dimensions()));
                }
            }
            add(
                    all,
                    "the outside burned and the ends did not",
                    with(log, GrainKind.TUBE_BOTH_SIDES, 0, log.dimensions()));
        }
        if (kind == GrainKind.TUBE_BOTH_SIDES) {
            add(all, "the outside did not burn", with(log, GrainKind.TUBE, 0, log.dimensions()));
        }
        if (kind == GrainKind.END_BURNER) {
            Map<String, Measured> sizes = log.dimensions();
            if (sizes.containsKey("outer_diameter") && sizes.containsKey("segment_length")) {
                all.add(new LogMistake(
                        "the side burned as well",
                        litSide(
                                sizes.get("outer_diameter").value() / 2,
                                sizes.get("segment_length").value())));
            }
        }
        lengths(log, all);
        return all.stream().distinct().toList();
    }

    private static void lengths(GrainDescription log, List<LogMistake> all) {
        List<String> diameters = log.dimensions().keySet().stream()
                .filter(name -> name.contains("diameter"))
                .toList();
        all.addAll(scaled(log, "the diameters are radii", diameters, 2));
        for (String name : log.dimensions().keySet()) {
            String words = name.replace('_', ' ');
            if (diameters.contains(name)) {
                all.addAll(scaled(log, "the " + words + " is a radius", List.of(name), 2));
            } else if (log.segments() > 1) {
                all.addAll(
                        scaled(log, "the " + words + " is that of all segments", List.of(name), 1.0 / log.segments()));
            }
            all.addAll(scaled(log, "the " + words + " is in [cm]", List.of(name), 10));
        }
    }

    private static List<LogMistake> scaled(GrainDescription log, String words, List<String> names, double factor) {
        Map<String, Measured> other = new TreeMap<>(log.dimensions());
        names.forEach(name ->
                other.computeIfPresent(name, (n, value) -> new Measured(value.value() * factor, value.std())));
        List<LogMistake> made = new ArrayList<>();
        GrainKind.of(log.kind())
                .filter(kind -> kind != GrainKind.TABLE && !names.isEmpty())
                .ifPresent(kind -> add(made, words, with(log, kind, log.inhibitedEnds(), other)));
        return made;
    }

    private static GrainDescription with(
            GrainDescription log, GrainKind kind, int inhibited, Map<String, Measured> dimensions) {
        return new GrainDescription(kind.word(), log.segments(), inhibited, dimensions, List.of(), Optional.empty());
    }

    private static void add(List<LogMistake> all, String words, GrainDescription description) {
        Grains.of(description).value().ifPresent(grain -> all.add(new LogMistake(words, grain)));
    }

    /** An end burner whose side is lit as well: a rod that burns at its side and at one end. */
    static Grain litSide(double radius, double length) {
        List<SurfacePoint> points = new ArrayList<>();
        double web = Math.min(radius, length);
        for (int i = 0; i <= 64; i++) {
            double x = web * i / 64;
            double r = radius - x;
            points.add(new SurfacePoint(x, Math.PI * r * r + 2 * Math.PI * r * (length - x)));
        }
        return new SurfaceTable(points, OptionalDouble.empty());
    }
}
