package io.burnlaw.reduction.point;

import java.util.Arrays;
import java.util.function.Supplier;

/** Columns of numbers of one length, one behind the other in a store. */
final class KeptColumns {

    private final int rows;
    private final Supplier<double[]> numbers;

    private KeptColumns(int rows, Supplier<double[]> numbers) {
        this.rows = rows;
        this.numbers = numbers;
    }

    static KeptColumns of(double[]... columns) {
        int rows = columns[0].length;
        double[] all = new double[columns.length * rows];
        for (int i = 0; i < columns.length; i++) {
            if (columns[i].length != rows) {
                throw new IllegalArgumentException("columns of " + rows + " and of " + columns[i].length + " numbers");
            }
            System.arraycopy(columns[i], 0, all, i * rows, rows);
        }
        return new KeptColumns(rows, NumberStore.MEMORY.keep(all));
    }

    KeptColumns keptIn(NumberStore store) {
        return new KeptColumns(rows, store.keep(numbers.get()));
    }

    int rows() {
        return rows;
    }

    double[][] read() {
        double[] all = numbers.get();
        double[][] columns = new double[rows == 0 ? 0 : all.length / rows][];
        for (int i = 0; i < columns.length; i++) {
            columns[i] = Arrays.copyOfRange(all, i * rows, (i + 1) * rows);
        }
        return columns;
    }
}
