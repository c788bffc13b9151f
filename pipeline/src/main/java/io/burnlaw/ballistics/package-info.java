/**
 * The lumped chamber model. Input: a motor and a rate law. Output: equilibrium pressures, or the whole firing. Read
 * {@link io.burnlaw.ballistics.ForwardSimulation} first.
 */
package io.burnlaw.ballistics;
