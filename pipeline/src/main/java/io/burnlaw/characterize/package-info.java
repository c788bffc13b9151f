/**
 * The whole way from a campaign to its results. In goes a campaign in SI; out comes everything that is known of its
 * formulations and firings. Read {@link io.burnlaw.characterize.Characterizer} first.
 */
package io.burnlaw.characterize;
