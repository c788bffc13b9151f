/**
 * The propellant, its firings and how they were measured. Input: a campaign folder. Output: a campaign in SI, or all
 * problems of its files at once. Read {@link io.burnlaw.campaign.Campaign} first.
 */
package io.burnlaw.campaign;
