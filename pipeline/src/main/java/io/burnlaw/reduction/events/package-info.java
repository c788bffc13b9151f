/**
 * The times at which a burn begins and ends. Input: a conditioned record. Output: ignition, web burnout and the end of
 * operation, each with its uncertainty. Read {@link io.burnlaw.reduction.events.EventFinder} first.
 */
package io.burnlaw.reduction.events;
