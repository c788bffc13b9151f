/**
 * The published document as immutable records, member for member what burnlaw.json holds. In comes nothing; out go
 * records that Jackson reads and writes. Read {@link io.burnlaw.report.document.Characterization} first.
 */
package io.burnlaw.report.document;
