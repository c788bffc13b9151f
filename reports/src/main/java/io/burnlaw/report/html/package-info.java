/**
 * The pages of a report. In comes the document, out go HTML texts that carry their data and ask nothing of a network.
 * Read {@link io.burnlaw.report.html.ReportPages} first.
 */
@org.jspecify.annotations.NullMarked
package io.burnlaw.report.html;
