package io.burnlaw.grain;

import io.burnlaw.quantity.Measured;
import java.util.OptionalDouble;

/**
 * A rod in the core of a tube: the rod burns on its outside, the tube at its core, no end burns. The surface stays level
 * as long as both burn.
 *
 * @param tube its ends do not burn
 * @param rod  thinner than the tube's core
 */
public record RodAndTube(Tube tube, Rod rod) implements Grain {

    public RodAndTube {
        if (!(rod.diameter().value() < tube.coreDiameter().value())) {
            throw new IllegalArgumentException("a rod of " + rod.diameter().value() + " m does not go into a core of "
                    + tube.coreDiameter().value() + " m");
        }
    }

    @Override
    public double surface(double burned) {
        return tube.surface(burned) + rod.surface(burned);
    }

    @Override
    public double volume(double burned) {
        return tube.volume(burned) + rod.volume(burned);
    }

    @Override
    public Measured web() {
        return Webs.larger(tube.web(), rod.web());
    }

    @Override
    public double burnout() {
        return Math.max(tube.burnout(), rod.burnout());
    }

    @Override
    public double[] breaks() {
        return Tube.union(tube.breaks(), rod.breaks());
    }

    @Override
    public OptionalDouble envelope() {
        return tube.envelope();
    }
}
