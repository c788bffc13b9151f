/**
 * The record of a firing. In goes a file of a data logger; out comes pressure or thrust over time in SI, with what was
 * seen of the file. Read {@link io.burnlaw.trace.Trace} first.
 */
package io.burnlaw.trace;
