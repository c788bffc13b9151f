/**
 * Quantities as people write them, and their units. In goes text such as {@code 12.7 mm} or {@code 450 psi}; out come
 * SI values. Read {@link io.burnlaw.quantity.Measured} first.
 */
package io.burnlaw.quantity;
