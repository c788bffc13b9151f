/**
 * The tables beside the report: rates.csv and laws.csv with their CSVW metadata. In comes the document, out goes text.
 * Read {@link io.burnlaw.report.table.PublishedTable} first.
 */
@org.jspecify.annotations.NullMarked
package io.burnlaw.report.table;
