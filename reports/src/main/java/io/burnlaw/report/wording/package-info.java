/**
 * Numbers and units as people read them. In comes a quantity with all its digits, out goes text with those that mean
 * something. Read {@link io.burnlaw.report.wording.Numbers} first.
 */
@org.jspecify.annotations.NullMarked
package io.burnlaw.report.wording;
