/**
 * When a burn began and ended. In goes a conditioned record; out come ignition, web burnout and the end of operation, each
 * with its uncertainty. Read {@link io.burnlaw.reduction.events.EventFinder} first.
 */
package io.burnlaw.reduction.events;
