package io.burnlaw.planning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Twist drills that shops have: number sizes 1 to 97, letters A to Z, fractions of an inch by 64ths up to one inch, and
 * metric ones by tenths of a millimetre up to 14 mm and by halves up to 25 mm.
 *
 * <p><b>Source.</b> Number, letter and fractional sizes: ASME B94.11M; metric steps: common practice, no source. Nominal
 * sizes: a drilled hole is usually larger by 0.02 to 0.1 mm.
 */
public final class TwistDrills {

    /** [m], exact. */
    private static final double INCH = 0.0254;

    /** Ten-thousandths of an inch, from number 1 to number 97. */
    private static final int[] NUMBERS = {
        2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935, 1910, 1890, 1850, 1820, 1800, 1770, 1730, 1695,
        1660, 1610, 1590, 1570, 1540, 1520, 1495, 1470, 1440, 1405, 1360, 1285, 1200, 1160, 1130, 1110, 1100, 1065,
        1040, 1015, 995, 980, 960, 935, 890, 860, 820, 810, 785, 760, 730, 700, 670, 635, 595, 550, 520, 465, 430, 420,
        410, 400, 390, 380, 370, 360, 350, 330, 320, 310, 292, 280, 260, 250, 240, 225, 210, 200, 180, 160, 145, 135,
        130, 125, 120, 115, 110, 105, 100, 95, 91, 87, 83, 79, 75, 71, 67, 63, 59
    };

    /** Thousandths of an inch, from A to Z. */
    private static final int[] LETTERS = {
        234, 238, 242, 246, 250, 257, 261, 266, 272, 277, 281, 290, 295, 302, 316, 323, 332, 339, 348, 358, 368, 377,
        386, 397, 404, 413
    };

    private static final List<Drill> ALL = all();

    private TwistDrills() {}

    /** {@return all of them, by rising diameter} */
    public static List<Drill> sizes() {
        return ALL;
    }

    /**
     * The drill of each series that comes nearest to a diameter.
     *
     * @param diameter wanted [m]
     * @param allowed  which drills may be named
     * @return at most one a series, the nearest first
     */
    public static List<Drill> nearestOfEachSeries(double diameter, Predicate<Drill> allowed) {
        Comparator<Drill> nearer = Comparator.comparingDouble(each -> Math.abs(each.diameter() - diameter));
        Map<Drill.Series, Drill> nearest = new EnumMap<>(Drill.Series.class);
        for (Drill each : ALL) {
            if (allowed.test(each)) {
                nearest.merge(each.series(), each, (a, b) -> nearer.compare(b, a) < 0 ? b : a);
            }
        }
        return nearest.values().stream()
                // a thirtieth in diameter is near a tenth in pressure: further off is no drill for this throat
                .filter(each -> Math.abs(each.diameter() - diameter) <= diameter / 30)
                .sorted(nearer)
                .toList();
    }

    /**
     * The drill that comes nearest to a diameter.
     *
     * @param diameter wanted [m]
     * @param allowed  which drills may be named
     * @return the drill; empty where none comes within a thirtieth of it
     */
    public static Optional<Drill> nearest(double diameter, Predicate<Drill> allowed) {
        return nearestOfEachSeries(diameter, allowed).stream().findFirst();
    }

    private static List<Drill> all() {
        List<Drill> drills = new ArrayList<>();
        for (int i = 0; i < NUMBERS.length; i++) {
            drills.add(new Drill(Drill.Series.NUMBER, "#" + (i + 1), NUMBERS[i] * INCH / 10_000));
        }
        for (int i = 0; i < LETTERS.length; i++) {
            drills.add(new Drill(Drill.Series.LETTER, String.valueOf((char) ('A' + i)), LETTERS[i] * INCH / 1000));
        }
        for (int i = 1; i <= 64; i++) {
            int divisor = Integer.lowestOneBit(i);
            drills.add(new Drill(Drill.Series.FRACTION, i / divisor + "/" + 64 / divisor, i * INCH / 64));
        }
        for (int tenths = 5; tenths <= 140; tenths++) {
            drills.add(metric(tenths));
        }
        for (int tenths = 145; tenths <= 250; tenths += 5) {
            drills.add(metric(tenths));
        }
        drills.sort(Comparator.comparingDouble(Drill::diameter));
        return List.copyOf(drills);
    }

    private static Drill metric(int tenths) {
        return new Drill(Drill.Series.METRIC, tenths / 10 + "." + tenths % 10 + " mm", tenths / 10_000.0);
    }
}
