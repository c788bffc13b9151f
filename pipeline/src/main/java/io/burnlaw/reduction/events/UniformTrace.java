package io.burnlaw.reduction.events;

/**
 * A stretch of a record on an even grid. Each value is the mean of the unsmoothed record over its own cell, so that
 * integrals over the grid equal those of the record, even if it was sampled unevenly.
 */
public final class UniformTrace {

    /** More cells than this resolve nothing that the reduction needs, and cost time. */
    private static final int MOST_CELLS = 4096;

    private static final int FEWEST_CELLS = 200;

    private final double start;
    private final double step;
    private final double samplesPerCell;
    private final double[] pressure;

    private UniformTrace(double start, double step, double samplesPerCell, double[] pressure) {
        this.start = start;
        this.step = step;
        this.samplesPerCell = samplesPerCell;
        this.pressure = pressure;
    }

    /**
     * Cuts a stretch out of a record.
     *
     * @param time     [s], rising
     * @param pressure [Pa]
     * @param from     begin of the stretch [s]
     * @param to       its end [s], after the begin
     */
    public static UniformTrace of(double[] time, double[] pressure, double from, double to) {
        return of(time, pressure, from, to, 1);
    }

    /**
     * Cuts a stretch out of a record, each cell the mean of so many samples that its noise is small.
     *
     * @param time     [s], rising
     * @param pressure [Pa]
     * @param from     begin of the stretch [s]
     * @param to       its end [s], after the begin
     * @param together samples that a cell must hold, as far as 200 cells are left
     */
    public static UniformTrace of(double[] time, double[] pressure, double from, double to, double together) {
        double first = Math.max(from, time[0]);
        double last = Math.min(to, time[time.length - 1]);
        int within = 0;
        for (double t : time) {
            if (t >= first && t <= last) {
                within++;
            }
        }
        int cells = Math.max(FEWEST_CELLS, (int) Math.min(MOST_CELLS, within / Math.max(1, together)));
        double step = (last - first) / cells;
        double[] means = new double[cells];
        int i = 0;
        double before = first;
        double sum = 0;
        double pBefore = at(time, pressure, first);
        while (i < time.length && time[i] <= first) {
            i++;
        }
        for (int cell = 0; cell < cells; cell++) {
            double edge = cell == cells - 1 ? last : first + (cell + 1) * step;
            while (i < time.length && time[i] < edge) {
                sum += 0.5 * (pressure[i] + pBefore) * (time[i] - before);
                before = time[i];
                pBefore = pressure[i];
                i++;
            }
            double pEdge = pBefore;
            if (i < time.length && time[i] > before) {
                pEdge = pBefore + (pressure[i] - pBefore) * (edge - before) / (time[i] - before);
            }
            sum += 0.5 * (pEdge + pBefore) * (edge - before);
            before = edge;
            pBefore = pEdge;
            means[cell] = sum / step;
            sum = 0;
        }
        return new UniformTrace(first, step, (double) within / cells, means);
    }

    private static double at(double[] time, double[] value, double when) {
        int i = java.util.Arrays.binarySearch(time, when);
        if (i >= 0) {
            return value[i];
        }
        int next = -i - 1;
        if (next == 0) {
            return value[0];
        }
        if (next == time.length) {
            return value[time.length - 1];
        }
        double share = (when - time[next - 1]) / (time[next] - time[next - 1]);
        return value[next - 1] + share * (value[next] - value[next - 1]);
    }

    /** {@return number of cells} */
    public int size() {
        return pressure.length;
    }

    /** {@return samples that a cell is the mean of; below 1 where the record was sampled more coarsely than the grid} */
    public double samplesPerCell() {
        return samplesPerCell;
    }

    /** {@return width of a cell [s]} */
    public double step() {
        return step;
    }

    /**
     * Middle of a cell.
     *
     * @param cell from 0
     * @return [s]
     */
    public double time(int cell) {
        return start + (cell + 0.5) * step;
    }

    /**
     * The cell that a time falls into, counted in fractions from the middle of the first.
     *
     * @param time [s]
     * @return 0 at the middle of the first cell, 1 at that of the second
     */
    public double place(double time) {
        return (time - start) / step - 0.5;
    }

    /**
     * Nearest cell.
     *
     * @param time [s]
     * @return from 0 to the last
     */
    public int cell(double time) {
        return (int) Math.max(0, Math.min(pressure.length - 1, Math.round(place(time))));
    }

    /**
     * Mean pressure of a cell.
     *
     * @param cell from 0
     * @return [Pa]
     */
    public double pressure(int cell) {
        return pressure[cell];
    }

    /**
     * Mean pressure of a stretch.
     *
     * @param from begin [s]
     * @param to   end [s]
     * @return mean of the cells whose middles lie in it, at least of the nearest one [Pa]
     */
    public double mean(double from, double to) {
        int first = cell(from + 0.5 * step);
        int last = Math.max(first, cell(to - 0.5 * step));
        double sum = 0;
        for (int i = first; i <= last; i++) {
            sum += pressure[i];
        }
        return sum / (last - first + 1);
    }

    /** {@return all of them [Pa]} */
    public double[] pressures() {
        return pressure.clone();
    }

    /**
     * The same stretch on a coarser grid, each new cell the mean of some old ones.
     *
     * @param most cells that it may have, at least 1
     * @return the stretch; itself where it is no finer; some cells fewer at its end where the numbers do not divide
     */
    public UniformTrace coarser(int most) {
        int together = (pressure.length + most - 1) / most;
        if (together <= 1) {
            return this;
        }
        double[] means = new double[pressure.length / together];
        for (int cell = 0; cell < means.length; cell++) {
            double sum = 0;
            for (int i = 0; i < together; i++) {
                sum += pressure[cell * together + i];
            }
            means[cell] = sum / together;
        }
        return new UniformTrace(start, step * together, samplesPerCell * together, means);
    }

    /**
     * The same stretch with a constant added.
     *
     * @param offset [Pa]
     */
    public UniformTrace shifted(double offset) {
        double[] other = pressure.clone();
        for (int i = 0; i < other.length; i++) {
            other[i] += offset;
        }
        return new UniformTrace(start, step, samplesPerCell, other);
    }
}
