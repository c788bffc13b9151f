/**
 * From the results to the published document. Input: the results of {@code characterize}, in SI. Output: the document
 * in usual units. Read {@link io.burnlaw.publish.CharacterizationDocument} first.
 */
package io.burnlaw.publish;
