/**
 * The lumped chamber model. In go a motor and a rate law; out come equilibrium pressures, or the whole firing. Read
 * {@link io.burnlaw.ballistics.ForwardSimulation} first.
 */
package io.burnlaw.ballistics;
