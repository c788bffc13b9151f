/**
 * From the published document to a folder of pages, pictures and tables. Input: a
 * {@link io.burnlaw.report.document.Characterization}, from a run or from a burnlaw.json. Output: a folder that is
 * whole at every moment. Read {@link io.burnlaw.report.ReportWriter} first.
 */
@org.jspecify.annotations.NullMarked
package io.burnlaw.report;
