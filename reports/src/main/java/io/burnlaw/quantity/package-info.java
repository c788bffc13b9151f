/**
 * Quantities as people write them, and their units. Input: text such as {@code 12.7 mm} or {@code 450 psi}. Output: SI
 * values. Read {@link io.burnlaw.quantity.Measured} first.
 */
package io.burnlaw.quantity;
