/**
 * From a campaign to all its results. Input: a campaign in SI. Output: all results for its formulations and firings.
 * Read {@link io.burnlaw.characterize.Characterizer} first.
 */
package io.burnlaw.characterize;
