package io.burnlaw.grain;

import io.burnlaw.quantity.Measured;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Several pieces, equal or not, that burn in one chamber. The web is that of the piece that lasts longest.
 *
 * @param pieces at least one
 */
public record Stack(List<Grain> pieces) implements Grain {

    public Stack {
        pieces = List.copyOf(pieces);
        if (pieces.isEmpty()) {
            throw new IllegalArgumentException("a stack has at least one piece");
        }
    }

    @Override
    public double surface(double burned) {
        double sum = 0;
        for (Grain piece : pieces) {
            sum += piece.surface(burned);
        }
        return sum;
    }

    @Override
    public double volume(double burned) {
        double sum = 0;
        for (Grain piece : pieces) {
            sum += piece.volume(burned);
        }
        return sum;
    }

    @Override
    public Measured web() {
        return pieces.stream().map(Grain::web).reduce(Webs::larger).orElseThrow();
    }

    @Override
    public double burnout() {
        return pieces.stream().mapToDouble(Grain::burnout).max().orElseThrow();
    }

    @Override
    public double[] breaks() {
        return Tube.union(pieces.stream().map(Grain::breaks).toArray(double[][]::new));
    }

    @Override
    public OptionalDouble envelope() {
        double sum = 0;
        for (Grain piece : pieces) {
            if (piece.envelope().isEmpty()) {
                return OptionalDouble.empty();
            }
            sum += piece.envelope().getAsDouble();
        }
        return OptionalDouble.of(sum);
    }
}
