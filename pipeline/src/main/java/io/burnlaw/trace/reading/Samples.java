package io.burnlaw.trace.reading;

import java.util.ArrayList;
import java.util.List;

/** A column of numbers that grows by blocks, so that nothing is copied until it is complete. */
final class Samples {

    private static final int BLOCK = 1 << 14;

    private final List<double[]> blocks = new ArrayList<>();
    private double[] block = new double[BLOCK];
    private int used;

    void add(double value) {
        if (used == BLOCK) {
            blocks.add(block);
            block = new double[BLOCK];
            used = 0;
        }
        block[used++] = value;
    }

    int size() {
        return blocks.size() * BLOCK + used;
    }

    double[] toArray() {
        double[] all = new double[size()];
        for (int i = 0; i < blocks.size(); i++) {
            System.arraycopy(blocks.get(i), 0, all, i * BLOCK, BLOCK);
        }
        System.arraycopy(block, 0, all, blocks.size() * BLOCK, used);
        return all;
    }
}
