package io.burnlaw.reduction.balance;

import io.burnlaw.grain.Grain;

/**
 * The inverse geometry of a grain: web burned, from the volume of propellant burned. Tabulated once for each firing;
 * linear interpolation in volume is exact to 1e-6 of the web.
 */
public final class WebTable {

    private static final int CELLS = 1024;

    private final double web;
    private final double[] burned = new double[CELLS + 1];
    private final double[] surface = new double[CELLS + 1];

    /** Tabulates a grain. */
    WebTable(Grain grain) {
        web = grain.web().value();
        double whole = grain.volume(0);
        for (int i = 0; i <= CELLS; i++) {
            double x = web * i / CELLS;
            // At the web itself the surface is 0 by definition; the table wants its limit from below.
            surface[i] = grain.surface(i == CELLS ? web * (1 - 1e-9) : x);
            burned[i] = i == CELLS ? whole : whole - grain.volume(x);
        }
    }

    /** {@return web to burnout [m]} */
    public double web() {
        return web;
    }

    /** {@return volume of the whole grain [m3]} */
    public double volume() {
        return burned[CELLS];
    }

    /**
     * Surface at a web burned.
     *
     * @param x web burned [m], cut to the web
     * @return [m2]
     */
    public double surface(double x) {
        return interpolate(surface, x);
    }

    /**
     * Volume gone at a web burned.
     *
     * @param x web burned [m], cut to the web
     * @return [m3]
     */
    double burnedVolume(double x) {
        return interpolate(burned, x);
    }

    /**
     * Volume left, summed over the rest of the web.
     *
     * @param x web burned [m]
     * @return integral from there to the web of the volume left [m4]
     */
    double volumeMoment(double x) {
        int steps = 64;
        double width = (web - x) / steps;
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            sum += (volume() - burnedVolume(x + (i + 0.5) * width)) * width;
        }
        return sum;
    }

    private double interpolate(double[] table, double x) {
        double place = Math.max(0, Math.min(CELLS, x / web * CELLS));
        int cell = Math.min((int) place, CELLS - 1);
        return table[cell] + (place - cell) * (table[cell + 1] - table[cell]);
    }

    /**
     * Web burned when a volume is gone.
     *
     * @param volume [m3]; what is outside of the grain's is cut to it
     * @param near   a web close to the answer [m]: the search begins there
     * @return [m], from 0 to the web
     */
    double webBurned(double volume, double near) {
        int at = (int) Math.max(0, Math.min(CELLS - 1.0, near / web * CELLS));
        if (!(volume > 0)) {
            return 0;
        }
        if (volume >= burned[CELLS]) {
            return web;
        }
        int low = at;
        while (low > 0 && burned[low] > volume) {
            low--;
        }
        while (low < CELLS - 1 && burned[low + 1] <= volume) {
            low++;
        }
        int high = low + 1;
        double span = burned[high] - burned[low];
        return web / CELLS * (low + (span > 0 ? (volume - burned[low]) / span : 0));
    }
}
