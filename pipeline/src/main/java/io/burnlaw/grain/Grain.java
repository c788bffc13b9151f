package io.burnlaw.grain;

import io.burnlaw.quantity.Measured;

/**
 * The geometry of a burning grain: what surface burns when how much web is gone. Every piece burns by parallel layers.
 */
public interface Grain {

    /**
     * Burning surface.
     *
     * @param burned web burned [m], from 0; beyond the web the surface is 0
     * @return [m2]
     */
    double surface(double burned);

    /** {@return web to burnout, with its uncertainty [m]} */
    Measured web();

    /**
     * Propellant left.
     *
     * @param burned web burned [m], from 0
     * @return its volume [m3]; the integral of the surface from there to the web, plus slivers if there are any
     */
    double volume(double burned);
}
