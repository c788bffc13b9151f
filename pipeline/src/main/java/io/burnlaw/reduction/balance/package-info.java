/**
 * The mass balance of the chamber: the mass burned, the mass that left through the throat, and the gas in the chamber.
 * Read {@link io.burnlaw.reduction.balance.MassBalance} first.
 */
package io.burnlaw.reduction.balance;
