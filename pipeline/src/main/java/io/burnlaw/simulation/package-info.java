/**
 * Invented campaigns whose truth is known. In goes a scenario; out comes a whole campaign folder, measured with errors,
 * and the truth beside it. Read {@link io.burnlaw.simulation.Scenario} first.
 */
package io.burnlaw.simulation;
