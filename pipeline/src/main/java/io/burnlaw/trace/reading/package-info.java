/**
 * Records as loggers write them: text of any layout, workbooks, MATLAB files. In goes a file; out come its samples in SI,
 * or what is wrong with it and where. Read {@link io.burnlaw.trace.reading.TraceReader} first.
 */
package io.burnlaw.trace.reading;
