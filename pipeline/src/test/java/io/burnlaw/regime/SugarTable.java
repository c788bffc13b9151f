package io.burnlaw.regime;

import io.burnlaw.ratelaw.FitPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** A published table of power laws side by side, as points that a strand burner might have given. */
final class SugarTable {

    private static final int LOW = 0;
    private static final int HIGH = 1;
    private static final int COEFFICIENT = 2;
    private static final int EXPONENT = 3;

    /** How the points lie along the pressures. */
    enum Spread {
        /** Evenly in ln P over the whole range. */
        EVEN,
        /** The same number in every row, evenly in ln P within it. */
        EACH_ROW
    }

    private final List<double[]> rows;

    private SugarTable(List<double[]> rows) {
        this.rows = rows;
    }

    static SugarTable read(String name) {
        return new SugarTable(Table.read(name));
    }

    int rows() {
        return rows.size();
    }

    /** {@return the pressure below which row {@code j} ends [MPa]} */
    double end(int j) {
        return rows.get(j)[HIGH];
    }

    double exponent(int j) {
        return rows.get(j)[EXPONENT];
    }

    /** {@return the geometric middle of row {@code j} [Pa]} */
    double middle(int j) {
        return 1e6 * Math.sqrt(rows.get(j)[LOW] * rows.get(j)[HIGH]);
    }

    /**
     * Points sampled from the table.
     *
     * @param count   how many
     * @param spread  along the pressures
     * @param scatter relative standard deviation [1]
     * @param seed    of the scatter
     */
    List<FitPoint> points(int count, Spread spread, double scatter, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<FitPoint> points = new ArrayList<>();
        double low = Math.log(rows.get(0)[LOW]);
        double high = Math.log(end(rows.size() - 1));
        for (int i = 0; i < count; i++) {
            int row;
            double pressure;
            if (spread == Spread.EVEN) {
                pressure = Math.exp(low + (high - low) * (i + 0.5) / count);
                row = 0;
                while (pressure > end(row)) {
                    row++;
                }
            } else {
                row = i * rows.size() / count;
                int each = count / rows.size();
                double share = (i % each + 0.5) / each;
                pressure = Math.exp(Math.log(rows.get(row)[LOW]) + share * Math.log(end(row) / rows.get(row)[LOW]));
            }
            double rate = 1e-3
                    * rows.get(row)[COEFFICIENT]
                    * Math.pow(pressure, exponent(row))
                    * Math.exp(scatter * random.nextGaussian());
            points.add(Simulated.point("p" + (i + 1), 1e6 * pressure, rate));
        }
        return points;
    }
}
