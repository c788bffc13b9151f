/**
 * From the results to the published document. In goes what {@code characterize} found, in SI; out comes the document in
 * the units that people design with. Read {@link io.burnlaw.publish.CharacterizationDocument} first.
 */
package io.burnlaw.publish;
