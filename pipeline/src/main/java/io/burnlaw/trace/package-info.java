/**
 * The record of a firing. Input: a file of a data logger. Output: pressure or thrust over time in SI, with notes on how
 * the file was read. Read {@link io.burnlaw.trace.Trace} first.
 */
package io.burnlaw.trace;
