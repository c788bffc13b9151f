/**
 * Detects records that give no rate, or a doubtful one: no ignition, chuffing, a burst case, a blocked throat, a record
 * that was cut off. Read {@link io.burnlaw.reduction.screening.BurnScreening} first.
 */
package io.burnlaw.reduction.screening;
