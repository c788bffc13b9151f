/**
 * Invented campaigns whose truth is known. Input: a scenario. Output: a whole campaign folder, measured with errors,
 * with the true values in it. Read {@link io.burnlaw.simulation.Scenario} first.
 */
package io.burnlaw.simulation;
