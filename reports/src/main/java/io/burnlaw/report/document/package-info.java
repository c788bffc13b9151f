/**
 * The published document as immutable records, member for member as in burnlaw.json, with its reader and its writer. Read
 * {@link io.burnlaw.report.document.Characterization} first.
 */
package io.burnlaw.report.document;
