/**
 * What was made and how it was measured. In goes a campaign folder; out comes a campaign in SI, or all problems of its
 * files at once. Read {@link io.burnlaw.campaign.Campaign} first.
 */
package io.burnlaw.campaign;
