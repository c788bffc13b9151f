/**
 * The mass balance of the chamber: what burned, what left through the throat, what is still in the chamber. Read
 * {@link io.burnlaw.reduction.balance.MassBalance} first.
 */
package io.burnlaw.reduction.balance;
