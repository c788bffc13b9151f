package io.burnlaw.characterize;

import io.burnlaw.closure.Closure;

/**
 * What the law of one formulation foretells.
 *
 * @param closure how well it foretold the firings that were made
 */
public record Outlook(Closure closure) {}
