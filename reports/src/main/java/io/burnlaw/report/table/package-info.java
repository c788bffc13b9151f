/**
 * The tables of results, from which pages, terminal and CSV files are drawn. In comes the document, out go typed columns,
 * and rates.csv and laws.csv with their CSVW metadata. Read {@link io.burnlaw.report.table.TypedTable} first.
 */
@org.jspecify.annotations.NullMarked
package io.burnlaw.report.table;
