package io.burnlaw.grain;

import io.burnlaw.quantity.Measured;
import java.util.OptionalDouble;

/**
 * The geometry of a burning grain: the burning surface by web burned. Every piece burns in parallel layers (Piobert's
 * law), so that {@code -dV/dx = surface(x)}.
 */
public interface Grain {

    /**
     * Burning surface.
     *
     * @param burned web burned [m], from 0; beyond {@link #burnout()} the surface is 0
     * @return [m2]
     */
    double surface(double burned);

    /** {@return web as the calipers give it, with its uncertainty [m]; the mean where it is uneven} */
    Measured web();

    /**
     * Propellant left.
     *
     * @param burned web burned [m], from 0
     * @return its volume [m3]; the integral of the surface from there to {@link #burnout()}
     */
    double volume(double burned);

    /** {@return web burned when the last of the surface goes out [m]; more than {@link #web()} where the web is uneven} */
    default double burnout() {
        return web().value();
    }

    /**
     * Where the surface jumps or bends, so that an integrator does not step across.
     *
     * @return webs burned [m], rising, the last of them {@link #burnout()}
     */
    default double[] breaks() {
        return new double[] {burnout()};
    }

    /** {@return volume of the cylinder around the grain, propellant and port [m3]; empty where the shape is not known} */
    default OptionalDouble envelope() {
        return OptionalDouble.empty();
    }
}
