/**
 * The closed list of what can be seen in a trace, a burn or a law. In comes nothing; out go findings, the same in
 * terminal, document and page. Read {@link io.burnlaw.finding.FindingCode} first.
 */
package io.burnlaw.finding;
