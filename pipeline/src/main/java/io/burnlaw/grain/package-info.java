/**
 * The geometry of burning grains. In go the dimensions of the log; out come burning surface, web and propellant left by
 * web burned. Read {@link io.burnlaw.grain.Grain} first.
 */
package io.burnlaw.grain;
