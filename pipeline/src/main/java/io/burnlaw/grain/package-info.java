/**
 * The geometry of burning grains. Input: the dimensions of the log. Output: burning surface, web and propellant left by
 * web burned. Read {@link io.burnlaw.grain.Grain} first.
 */
package io.burnlaw.grain;
