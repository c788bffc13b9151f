/**
 * Which throat to drill next. Input: the law with its uncertainty, a motor and the pressure limit of its case. Output:
 * pressures with prediction intervals, throats, drills, and refusals with their reason. Read
 * {@link io.burnlaw.planning.Planner} first.
 */
package io.burnlaw.planning;
