/**
 * The pictures of a report as SVG. In comes a part of the document, out go SVG texts whose marks XChart painted and
 * whose words stay words. Read {@link io.burnlaw.report.chart.Figure} first, then
 * {@link io.burnlaw.report.chart.LawChart}.
 */
@org.jspecify.annotations.NullMarked
package io.burnlaw.report.chart;
