/**
 * The complete list of findings: what can be wrong or odd in a trace, a burn or a law. The terminal, the document and
 * the page show the same findings. Read {@link io.burnlaw.finding.FindingCode} first.
 */
package io.burnlaw.finding;
