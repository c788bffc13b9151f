package io.burnlaw.ballistics;

import io.burnlaw.grain.Grain;
import io.burnlaw.quantity.Measured;
import java.util.Arrays;
import java.util.stream.DoubleStream;

/**
 * A grain of which a part of the surface took fire before the rest: the part has burned deeper everywhere, so that the
 * web is uneven and burns through in two steps. Webs burned are those of the part.
 *
 * @param whole the grain as cast
 * @param share of the surface that took fire first [1]
 * @param ahead web that it had burned when the rest took fire [m]; infinite while the rest has not
 */
record PartAhead(Grain whole, double share, double ahead) implements Grain {

    @Override
    public double surface(double burned) {
        return share * whole.surface(burned) + (burned < ahead ? 0 : (1 - share) * whole.surface(burned - ahead));
    }

    @Override
    public Measured web() {
        return Measured.of(whole.web().value() + (Double.isInfinite(ahead) ? 0 : (1 - share) * ahead));
    }

    @Override
    public double volume(double burned) {
        return share * whole.volume(burned) + (1 - share) * whole.volume(Math.max(0, burned - ahead));
    }

    @Override
    public double burnout() {
        return whole.burnout() + (Double.isInfinite(ahead) ? 0 : ahead);
    }

    @Override
    public double[] breaks() {
        double[] first = whole.breaks();
        return Double.isInfinite(ahead)
                ? first
                : DoubleStream.concat(Arrays.stream(first), Arrays.stream(first).map(each -> each + ahead))
                        .sorted()
                        .distinct()
                        .toArray();
    }
}
