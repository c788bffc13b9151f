/**
 * Which throat to drill next. In go the law with its uncertainty, a motor and what its case can stand; out come pressures
 * with prediction intervals, throats, drills, and refusals with their reason. Read {@link io.burnlaw.planning.Planner}
 * first.
 */
package io.burnlaw.planning;
