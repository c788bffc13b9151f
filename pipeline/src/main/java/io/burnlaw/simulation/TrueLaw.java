package io.burnlaw.simulation;

import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * The law by which an invented propellant burns: one power law, or several one above the other.
 *
 * @param pieces in rising order of pressure, at least one; the first one holds down to vacuum
 */
record TrueLaw(List<Piece> pieces) implements DoubleUnaryOperator {

    /**
     * One power law: rate · (P / at)^exponent.
     *
     * @param from     where it begins [Pa, absolute]
     * @param rate     at the pressure named next [m/s]
     * @param at       [Pa, absolute]
     * @param exponent [1]
     */
    record Piece(String name, double from, double rate, double at, double exponent) {

        double rate(double pressure) {
            return rate * StrictMath.pow(pressure / at, exponent);
        }
    }

    TrueLaw {
        pieces = List.copyOf(pieces);
        if (pieces.isEmpty()) {
            throw new IllegalArgumentException("a law has at least one piece");
        }
    }

    @Override
    public double applyAsDouble(double pressure) {
        Piece valid = pieces.get(0);
        for (Piece piece : pieces) {
            if (pressure >= piece.from()) {
                valid = piece;
            }
        }
        return valid.rate(pressure);
    }
}
