/**
 * How a campaign's files are read: YAML, CSV and spreadsheets with the place of every value, so that a problem names
 * its line. Read {@link io.burnlaw.campaign.reading.CampaignReader} first.
 */
package io.burnlaw.campaign.reading;
